import { figureText } from '../../drawing/figureText.ts'
import type { OrderLength } from '../../ordering/orderModel.ts'
import { stacked, type Block } from '../flow.ts'
import type { Measure, PageMark } from '../page.ts'
import { safetyBlocks } from '../sawSafety.ts'
import { heading, paragraph, table, type Cell } from '../table.ts'
import { lineHeight, linesAt, setLines } from '../words.ts'
import { barHeight, barMarks, cutGroups, numbersOver, type BarScale, type CutGroup } from './barDiagram.ts'
import type { TimberOrderInput } from './timberOrderInput.ts'

type Room = { width: number; measure: Measure }

/** What every length is laid out with. */
type Bench = { input: TimberOrderInput; scale: BarScale; room: Room }

/** As many boxes to tick as are still drawn one by one. */
const mostTicks = 12

const tick = (x: number, y: number): PageMark => ({
  ...{ kind: 'box', x, y, width: 5, height: 5 },
  stroke: { width: 0.4, ink: 'black' },
})

/** From where lengths come: the merchant, or the places of the rack that they lie on. */
function sourceWords({ from, rackPieceIds }: OrderLength, { rack }: TimberOrderInput): string {
  if (from === 'merchant') return 'from the merchant'
  const places = rackPieceIds.map((id) => rack.find((piece) => piece.id === id)?.place.trim() ?? '')
  const named = [...new Set(places.filter((place) => place !== ''))]
  return named.length === 0 ? 'from the rack' : `from the rack: ${named.join(', ')}`
}

/** How many of which length, where from, and a box to tick for each that is cut. */
function lengthHead(length: OrderLength, input: TimberOrderInput, { width, measure }: Room): Block {
  const strong = `${length.count} × ${figureText(input.unit).write(length.length)}`
  const ticks = length.count <= mostTicks ? length.count : 0
  const room = width - measure(strong, 16, 'semibold') - 5 - ticks * 7
  const words =
    length.count > mostTicks
      ? `${sourceWords(length, input)}; tick them off on the edge`
      : sourceWords(length, input)
  const lines = setLines([{ text: words, weight: 'regular' }], { width: room, size: 12, measure })
  return {
    height: 6.4 + (lines.length - 1) * lineHeight(12),
    marks: (x, y) => [
      {
        ...{
          kind: 'text',
          x,
          y: y + 5,
          text: strong,
          size: 16,
          weight: 'semibold',
          ink: 'black',
          anchor: 'start',
        },
      },
      ...linesAt(lines, { x: x + measure(strong, 16, 'semibold') + 3, y: y + 5, size: 12, ink: 'black' }),
      ...Array.from({ length: ticks }, (_, i) => tick(x + width - 5 - (ticks - 1 - i) * 7, y + 0.6)),
    ],
  }
}

/** Columns of the list under a bar: the piece's number, how many of which length, and whose. */
const [numberWidth, sizeWidth] = [6, 34]

type NumberedGroup = CutGroup & { number: string; words: string }

function groupBlock(group: NumberedGroup, scale: BarScale, width: number): Block {
  const { measure } = scale
  const { words } = group
  const lines = setLines([{ text: words, weight: 'regular' }], {
    width: width - numberWidth - sizeWidth - 3,
    size: 11,
    measure,
  })
  const base = { kind: 'text' as const, ink: 'black' as const }
  return {
    height: Math.max(6, lines.length * lineHeight(11) + 1.6),
    marks: (x, y) => [
      { ...base, x, y: y + 4.6, text: group.number, size: 11, weight: 'regular', anchor: 'start' },
      {
        ...{
          ...base,
          x: x + numberWidth + sizeWidth - 3,
          y: y + 4.6,
          size: 14,
          weight: 'semibold',
          anchor: 'end',
        },
        text: `${group.count} × ${scale.write(group.length)}`,
      },
      ...linesAt(lines, { x: x + numberWidth + sizeWidth, y: y + 4.6, size: 11, ink: 'black' }),
    ],
  }
}

/** Pieces of a length listed two abreast. */
function groupBlocks(length: OrderLength, { input, scale, room: { width } }: Bench): Block[] {
  const groups = cutGroups(length.cuts)
  // A lone kind of piece has the width to itself and needs no number.
  const half = groups.length > 1 ? (width - 4) / 2 : width
  const blocks = groups.map((group, place) => {
    const pair = input.order.pairs.some(({ mark }) => mark === group.mark)
    const words = pair ? `${group.mark} (a pair: one slanting cut parts them)` : group.mark
    return groupBlock({ ...group, number: groups.length > 1 ? String(place + 1) : '', words }, scale, half)
  })
  return Array.from({ length: Math.ceil(blocks.length / 2) }, (_, row): Block => {
    const [left, right] = blocks.slice(2 * row, 2 * row + 2)
    return {
      height: Math.max(left?.height ?? 0, right?.height ?? 0),
      marks: (x, y) => [...(left?.marks(x, y) ?? []), ...(right?.marks(x + half + 4, y) ?? [])],
    }
  })
}

/** Height up to which a way of cutting is kept on one page, mm; a longer list goes on over the page. */
const mostTogether = 120

/** One way of cutting: its head, the bar to scale, its pieces by number. */
function lengthBlocks(length: OrderLength, bench: Bench): Block[] {
  const { input, scale, room } = bench
  const bar: Block = {
    height: numbersOver(cutGroups(length.cuts)) + barHeight + 1.4,
    marks: (x, y) => barMarks(length, { x, y }, scale),
  }
  const blocks = [{ ...lengthHead(length, input, room), above: 4.5 }, bar, ...groupBlocks(length, bench)]
  const kept = stacked(blocks).height <= mostTogether ? blocks.length - 1 : 3
  return blocks.map((block, i) => (i < kept ? { ...block, withNext: true } : block))
}

/** What to take from the rack before anything is cut, and where it lies. */
function rackBlocks(input: TimberOrderInput, { width, measure }: Room): Block[] {
  const { write } = figureText(input.unit)
  const pieces = input.order.lengths.flatMap((length) =>
    length.rackPieceIds.map((id) => ({ length, piece: input.rack.find((one) => one.id === id) })),
  )
  if (pieces.length === 0) return []
  const columns = [
    { title: '', width: 9 },
    {
      title: input.unit === 'mm' ? 'Length mm' : 'Length',
      width: 30,
      align: 'end' as const,
      size: 14,
      weight: 'semibold' as const,
    },
    { title: 'Timber', width: 70 },
    { title: 'Where it lies', width: width - 109 },
  ]
  const rows = pieces.map(({ length, piece }): Cell[] => {
    const place = [piece?.place.trim() ?? '', piece?.note.trim() ?? '']
      .filter((words) => words !== '')
      .join('; ')
    return [{ tick: true }, write(length.length), length.name, place === '' ? 'not told' : place]
  })
  return [heading('Take from the rack first'), ...table({ columns, rows }, measure)]
}

/** Offcuts alike counted together. */
function keptOffcuts(lengths: readonly OrderLength[]): Pick<OrderLength, 'count' | 'offcut' | 'name'>[] {
  const found: { count: number; offcut: number; name: string; itemId: number }[] = []
  for (const { count, offcut, name, itemId } of lengths) {
    const own = found.find((one) => one.itemId === itemId && one.offcut === offcut)
    if (own) own.count += count
    else found.push({ count, offcut, name, itemId })
  }
  return found
}

/** What goes back on the rack, with room to write where it was put. */
function backBlocks(input: TimberOrderInput, { width, measure }: Room): Block[] {
  const { write } = figureText(input.unit)
  const { leastOffcut } = input.order.request
  const kept = keptOffcuts(input.order.lengths.filter(({ offcut }) => offcut >= leastOffcut))
  if (kept.length === 0) return []
  const cut = { align: 'end' as const, size: 14, weight: 'semibold' as const }
  const columns = [
    { title: '', width: 9 },
    { title: 'No.', width: 14, ...cut },
    { title: input.unit === 'mm' ? 'Length mm' : 'Length', width: 30, ...cut },
    { title: 'Timber', width: 60 },
    { title: 'Where it was put', width: width - 113 },
  ]
  const rows = kept.map(({ count, offcut, name }): Cell[] => [
    { tick: true },
    String(count),
    write(offcut),
    name,
    '',
  ])
  return [heading('Back on the rack'), ...table({ columns, rows }, measure)]
}

const usedSettings = ({ order, unit }: TimberOrderInput): string => {
  const { kerf, endTrim, leastOffcut } = order.request
  const { write } = figureText(unit)
  return `Worked out with a saw cut of ${write(kerf)}, ${write(endTrim)} lost on squaring each bought length, and offcuts of ${write(leastOffcut)} or more kept. Bars are drawn to one scale and are cut from the left: black is what the saw takes, dashed what is left. Lengths are blanks; each job’s card has the finished sizes.`
}

/** All that the saw needs: what to take from the rack, how each length is cut, what goes back. */
export function sawBlocks(input: TimberOrderInput, room: Room): Block[] {
  const { lengths, request } = input.order
  const longest = Math.max(1, ...lengths.map(({ length }) => length))
  const { kerf, endTrim, leastOffcut } = request
  const { write } = figureText(input.unit)
  const scale = { perMm: room.width / longest, kerf, endTrim, leastOffcut, write, measure: room.measure }
  const sections = [...new Set(lengths.map(({ itemId }) => itemId))]
  return [
    paragraph(usedSettings(input), room),
    ...rackBlocks(input, room),
    ...sections.flatMap((itemId) => {
      const own = lengths.filter((length) => length.itemId === itemId)
      return [
        heading(own[0]?.name ?? ''),
        ...own.flatMap((length) => lengthBlocks(length, { input, scale, room })),
      ]
    }),
    ...backBlocks(input, room),
    ...safetyBlocks(input.dust, room),
  ]
}
