import { figureText } from '../../drawing/figureText.ts'
import { stacked, type Block } from '../flow.ts'
import type { Measure, PageMark } from '../page.ts'
import { paragraph } from '../table.ts'
import { lineHeight, linesAt, setLines } from '../words.ts'
import { barHeight, barMarks, cutGroups, numbersOver, type BarScale, type CutGroup } from './barDiagram.ts'
import type { Cutting } from './cuttings.ts'
import type { TimberOrderInput } from './timberOrderInput.ts'

export type Room = { width: number; measure: Measure }

/** What every length is laid out with. */
export type Bench = { input: TimberOrderInput; scale: BarScale; room: Room }

/** As many boxes to tick as are still drawn one by one. */
const mostTicks = 12

const tick = (x: number, y: number): PageMark => ({
  ...{ kind: 'box', x, y, width: 5, height: 5 },
  stroke: { width: 0.4, ink: 'black' },
})

/** From where lengths come: the merchant, or the places of the rack that they lie on. */
function sourceWords({ from, rackPieceIds }: Cutting, { rack }: TimberOrderInput): string {
  if (from === 'merchant') return 'from the merchant'
  const places = rackPieceIds.map((id) => rack.find((piece) => piece.id === id)?.place.trim() ?? '')
  const named = [...new Set(places.filter((place) => place !== ''))]
  return named.length === 0 ? 'from the rack' : `from the rack: ${named.join(', ')}`
}

/** How many of which length, where from, and a box to tick for each that is cut. */
function lengthHead(length: Cutting, input: TimberOrderInput, { width, measure }: Room): Block {
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

/** The pieces of a way of cutting listed two abreast. */
function groupBlocks({ cuts, pieces }: Cutting, { input, scale, room: { width } }: Bench): Block[] {
  const numbered = cutGroups(cuts).length > 1
  // A lone kind of piece has the width to itself.
  const half = pieces.length > 1 ? (width - 4) / 2 : width
  const blocks = pieces.map((piece) => {
    const pair = input.order.pairs.some(({ mark }) => mark === piece.mark)
    const words = pair ? `${piece.mark} (a pair: one slanting cut parts them)` : piece.mark
    return groupBlock({ ...piece, number: numbered ? String(piece.kind + 1) : '', words }, scale, half)
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
export function lengthBlocks(length: Cutting, bench: Bench): Block[] {
  const { input, scale, room } = bench
  const bar: Block = {
    height: numbersOver(cutGroups(length.cuts)) + barHeight + 1.4,
    marks: (x, y) => barMarks(length, { x, y }, scale),
  }
  const all = length.mixed ? [paragraph(`From these ${length.count}, in all:`, room)] : []
  const blocks = [
    { ...lengthHead(length, input, room), above: 4.5 },
    bar,
    ...all,
    ...groupBlocks(length, bench),
  ]
  const kept = stacked(blocks).height <= mostTogether ? blocks.length - 1 : 3
  return blocks.map((block, i) => (i < kept ? { ...block, withNext: true } : block))
}
