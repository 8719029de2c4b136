import { fittingScale, sizeAt } from '../drawing/fitScale.ts'
import type { Drawing } from '../drawing/drawing.ts'
import { stacked, type Block } from './flow.ts'
import { prose, type ProseLook } from './quotationLook.ts'
import type { PriceRoom } from './quotationPrice.ts'

/** Where the gate is shown: the page's width, what the first page leaves free in height, mm, and the share of its most height that a drawing gets. */
export type GateRoom = PriceRoom & { height: number; share: number }

/** Width of a drawing beside its words and the space between, mm. */
export const [besideWidth, between] = [88, 7]

/** A drawing set in a width at a scale, centred. */
export const drawn = (drawing: Drawing, width: number, scale: number): Block => {
  const { height } = sizeAt(drawing, scale)
  return {
    height,
    above: 3,
    marks: (x, y) => [{ kind: 'drawing', x, y, width, height, scale, drawing }],
  }
}

/** Sentences under one another, each by itself. */
export const sentences = (told: readonly string[], look: ProseLook): Block[] =>
  told.flatMap((text, i) => prose(text, { ...look, above: i === 0 ? 0 : 1.8 }))

/** A drawing at a scale with a column of words at its right. */
export function besideWords(drawing: Drawing, scale: number, column: Block): Block {
  const left = drawn(drawing, besideWidth, scale)
  return {
    height: Math.max(left.height, column.height + 4),
    above: 4,
    marks: (x, y) => [...left.marks(x, y), ...column.marks(x + besideWidth + between, y + 4)],
  }
}

/**
 * One gate: its drawing beside its words where that shows it as large as across the page and both fit, else across the page with the
 * words under it.
 */
export function gateWithWords(drawing: Drawing, told: readonly string[], room: GateRoom): Block[] {
  const { width, measure } = room
  const most = Math.max(60, Math.min(room.height - 4, 165))
  const across = { width, height: Math.min(most, 122) * room.share }
  const beside = { width: besideWidth, height: most * room.share }
  const [wide, tall] = [fittingScale(drawing, across), fittingScale(drawing, beside)]
  const narrow = { width: width - besideWidth - between, measure }
  const column = stacked(sentences(told, narrow))
  if (tall <= wide && column.height <= most) return [besideWords(drawing, tall, column)]
  const [lead = '', ...rest] = told
  return [
    drawn(drawing, width, wide),
    ...prose(lead, { width, measure, above: 3 }),
    ...(rest.length === 0 ? [] : prose(rest.join(' '), { width, measure })),
  ]
}
