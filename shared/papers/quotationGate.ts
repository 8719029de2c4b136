import { fittingScale, sizeAt } from '../drawing/fitScale.ts'
import type { Drawing } from '../drawing/drawing.ts'
import type { QuotedOption } from '../pricing/quotation.ts'
import { stacked, type Block } from './flow.ts'
import { forColumn, quotationFace } from './quotationFace.ts'
import type { QuotationInput } from './quotationInput.ts'
import { kept, prose, section, type, type ProseLook } from './quotationLook.ts'
import { mostAcross, optionName, rowsOf, type PriceRoom } from './quotationPrice.ts'

/** Where the gate is shown: the page's width, and what the first page leaves free in height, mm. */
export type GateRoom = PriceRoom & { height: number }

/** Width of a drawing beside its words and the space between, mm. */
const [besideWidth, between] = [88, 7]

/** A drawing set in a width at a scale, centred. */
const drawn = (drawing: Drawing, width: number, scale: number): Block => {
  const { height } = sizeAt(drawing, scale)
  return {
    height,
    above: 3,
    marks: (x, y) => [{ kind: 'drawing', x, y, width, height, scale, drawing }],
  }
}

const sentences = (told: readonly string[], look: ProseLook): Block[] =>
  told.flatMap((text, i) => prose(text, { ...look, above: i === 0 ? 0 : 1.8 }))

/**
 * One gate: its drawing beside its words where that shows it as large as across the page and both fit, else across the page with the
 * words under it.
 */
function gateWithWords(drawing: Drawing, told: readonly string[], room: GateRoom): Block[] {
  const { width, measure } = room
  const most = Math.max(60, Math.min(room.height - 4, 165))
  const across = { width, height: Math.min(most, 122) }
  const beside = { width: besideWidth, height: most }
  const [wide, tall] = [fittingScale(drawing, across), fittingScale(drawing, beside)]
  const narrow = { width: width - besideWidth - between, measure }
  const column = stacked(sentences(told, narrow))
  if (tall <= wide && column.height <= most) {
    const left = drawn(drawing, besideWidth, tall)
    return [
      {
        height: Math.max(left.height, column.height + 4),
        above: 4,
        marks: (x, y) => [...left.marks(x, y), ...column.marks(x + besideWidth + between, y + 4)],
      },
    ]
  }
  const [lead = '', ...rest] = told
  return [
    drawn(drawing, width, wide),
    ...prose(lead, { width, measure, above: 3 }),
    ...(rest.length === 0 ? [] : prose(rest.join(' '), { width, measure })),
  ]
}

/** Blocks beside one another in columns of one width. */
function columns(blocks: readonly Block[], step: number): Block {
  return {
    height: Math.max(0, ...blocks.map(({ height }) => height)),
    above: 4,
    marks: (x, y) => blocks.flatMap((block, i) => block.marks(x + i * step, y)),
  }
}

/** What is said of every option, and what is said of each alone. */
function differing(options: readonly QuotedOption[]): { common: string[]; own: string[][] } {
  const [first] = options
  const common = (first?.description ?? []).filter((text) =>
    options.every(({ description }) => description.includes(text)),
  )
  return {
    common,
    own: options.map(({ description }) => description.filter((text) => !common.includes(text))),
  }
}

type Shown = { name: string; own: string[]; drawing: Drawing | null }

/** Options side by side: name, drawing where theirs differ, and what is said of each alone. */
function optionRow(shown: Shown[], room: GateRoom): Block[] {
  const { measure } = room
  const width = (room.width - (mostAcross - 1) * between) / mostAcross
  const look = { width, measure, size: type.small }
  const drawings = shown.flatMap(({ drawing }) => (drawing ? [drawing] : []))
  const scale = Math.max(1, ...drawings.map((drawing) => fittingScale(drawing, { width, height: 92 })))
  const names = columns(
    shown.map(({ name }) => stacked(prose(name, { width, measure, size: type.heading, weight: 'semibold' }))),
    width + between,
  )
  const faces =
    drawings.length === 0
      ? []
      : [
          columns(
            shown.map(({ drawing }) => (drawing ? drawn(drawing, width, scale) : stacked([]))),
            width + between,
          ),
        ]
  const told = columns(
    shown.map(({ own }) => stacked(sentences(own, look))),
    width + between,
  )
  if (told.height > mostBeside)
    return shown.flatMap(({ name, own, drawing }) => [
      section(name),
      ...(drawing ? [drawn(drawing, room.width, scale)] : []),
      ...prose(own.join(' '), { width: room.width, measure }),
    ])
  return [
    { ...names, above: 5, withNext: true },
    ...faces.map((block): Block => ({ ...block, above: 1, withNext: told.height > 0 })),
    ...(told.height > 0 ? [{ ...told, above: 1.5 }] : []),
  ]
}

/** Most that columns of words may take in height, mm: past that they are set across the page, where they may go on over it. */
const mostBeside = 150

const ways = ['', '', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten']

/** The gate as offered, drawn and told; several ways of it side by side, what they share said once. */
export function gateBlocks({ money, unit }: QuotationInput, room: GateRoom): Block[] {
  const { options } = money
  const faces = options.map(({ spec }) => quotationFace(spec, unit))
  const [face] = faces
  const [first] = options
  if (!face || !first) throw new RangeError('a quotation needs at least one option')
  if (options.length === 1) return gateWithWords(face, first.description, room)
  const alike = faces.every((other) => JSON.stringify(other) === JSON.stringify(face))
  const { common, own } = differing(options)
  const shown = options.map((option, i): Shown => ({
    name: optionName(option, i),
    own: own[i] ?? [],
    drawing: alike || !faces[i] ? null : forColumn(faces[i]),
  }))
  const intro = prose(
    `${ways[options.length] ?? options.length} ways of making it, for you to choose from.`,
    { ...room, above: 2 },
  )
  const shared = alike
    ? gateWithWords(face, common, room)
    : common.length === 0
      ? []
      : [
          ...prose('All of them', { ...room, weight: 'semibold', above: 5 }).map(kept),
          ...prose(common.join(' '), room),
        ]
  const rows = rowsOf(shown).flatMap((row) => optionRow(row, room))
  return alike ? [...intro, ...shared, ...rows] : [...intro, ...rows, ...shared]
}
