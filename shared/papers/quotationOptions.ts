import { fittingScale } from '../drawing/fitScale.ts'
import type { Drawing } from '../drawing/drawing.ts'
import type { QuotedOption } from '../pricing/quotation.ts'
import { stacked, type Block } from './flow.ts'
import { forColumn, quotationFace } from './quotationFace.ts'
import {
  besideWidth,
  besideWords,
  between,
  drawn,
  gateWithWords,
  sentences,
  type GateRoom,
} from './quotationGate.ts'
import type { QuotationInput } from './quotationInput.ts'
import { kept, prose, section, type } from './quotationLook.ts'
import { fitWords } from './words.ts'
import { mostAcross, optionName, rowsOf } from './quotationPrice.ts'

/** Blocks beside one another in columns of one width. */
function columns(blocks: readonly Block[], step: number): Block {
  return {
    height: Math.max(0, ...blocks.map(({ height }) => height)),
    above: 1.5,
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

/** An option as it is shown: its name, what is said of it alone, its own drawing where options look different. */
type Shown = { name: string; own: string[]; drawing: Drawing | null }

/** Height of a drawing in a column, and of one beside its words, mm; the smallest scale worth drawing a column at. */
const [columnHeight, besideHeight, leastColumnScale] = [92, 96, 30]

/** Most height of an option's words in a column, mm: past that they are set across the page, where they may go on over it. */
const mostWords = 150

/** One scale for all, the largest at which each fits. */
const oneScale = (drawings: readonly Drawing[], box: { width: number; height: number }): number =>
  Math.max(1, ...drawings.map((drawing) => fittingScale(drawing, box)))

/** Up to three options in columns: their names, drawings and own words. */
function optionColumns(shown: readonly Shown[], scale: number, { measure, ...room }: GateRoom): Block[] {
  const width = columnWidth(room)
  const across = (of: (option: Shown) => Block) => columns(shown.map(of), width + between)
  const names = across(({ name }) =>
    stacked(prose(name, { width, measure, size: type.heading, weight: 'semibold' })),
  )
  const faces = across(({ drawing }) => (drawing ? drawn(forColumn(drawing), width, scale) : stacked([])))
  const told = across(({ own }) => stacked(sentences(own, { width, measure, size: type.small })))
  const below = [faces, told].filter(({ height }) => height > 0)
  return below.length === 0
    ? []
    : [
        { ...names, above: 5, withNext: true },
        ...below.map((block, i) => (i < below.length - 1 ? kept(block) : block)),
      ]
}

const columnWidth = ({ width }: Pick<GateRoom, 'width'>): number =>
  (width - (mostAcross - 1) * between) / mostAcross

/** Options one under another, each drawing with its words beside it, or under it where they are long. */
function optionRows(shown: readonly Shown[], { width, measure, share }: GateRoom): Block[] {
  const drawings = shown.flatMap(({ drawing }) => (drawing ? [drawing] : []))
  const scale = oneScale(drawings, { width: besideWidth, height: besideHeight * share })
  return shown.flatMap(({ name: whole, own, drawing }) => {
    const name = fitWords(
      whole,
      { width, most: type.heading, least: type.heading, weight: 'semibold' },
      measure,
    ).text
    const narrow = { width: width - besideWidth - between, measure, size: type.small }
    const column = stacked(sentences(own, narrow))
    if (drawing && column.height <= mostWords) return [section(name), besideWords(drawing, scale, column)]
    const words = own.length === 0 ? [] : prose(own.join(' '), { width, measure })
    return [section(name), ...(drawing ? [drawn(drawing, width, scale)] : []), ...words]
  })
}

/** Scale of the drawings in columns, 1 where there are none. */
const columnScale = (shown: readonly Shown[], room: GateRoom): number =>
  oneScale(
    shown.flatMap(({ drawing }) => (drawing ? [forColumn(drawing)] : [])),
    { width: columnWidth(room), height: columnHeight * room.share },
  )

/** Whether options go into columns: where they are drawn large enough there and their words aren't too long. */
function goInColumns(shown: readonly Shown[], room: GateRoom): boolean {
  const look = { ...room, width: columnWidth(room), size: type.small }
  const longest = Math.max(...shown.map(({ own }) => stacked(sentences(own, look)).height))
  return columnScale(shown, room) <= leastColumnScale && longest <= mostWords
}

const ways = ['', '', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten']

/** What all options have in common, with the one drawing where they look alike. */
function sharedBlocks(face: Drawing | null, common: string[], room: GateRoom): Block[] {
  if (face) return gateWithWords(face, common, room)
  if (common.length === 0) return []
  return [
    ...prose('All of them', { ...room, weight: 'semibold', above: 5 }).map(kept),
    ...prose(common.join(' '), room),
  ]
}

/** The gate as offered, drawn and told; several ways of it side by side, what they share said once. Throws RangeError without an option. */
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
    drawing: alike ? null : (faces[i] ?? null),
  }))
  const count = ways[options.length] ?? String(options.length)
  const intro = prose(`${count} ways of making it, for you to choose from.`, { ...room, above: 2 })
  const shared = sharedBlocks(alike ? face : null, common, room)
  if (goInColumns(shown, room)) {
    const scale = columnScale(shown, room)
    const each = rowsOf(shown).flatMap((row) => optionColumns(row, scale, room))
    return alike ? [...intro, ...shared, ...each] : [...intro, ...each, ...shared]
  }
  return [...intro, ...shared, ...optionRows(shown, room)]
}
