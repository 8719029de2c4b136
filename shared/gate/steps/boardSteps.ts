import { toHalf } from '../../cutting/cutList.ts'
import { dustAdvice } from '../../timber/advice.ts'
import { timberNamed } from '../../timber/species.ts'
import type { Board } from '../leaf.ts'
import { both, counted, making, mm, sentences, type BenchLeaf, type Step } from './step.ts'

/** What dust of the boards' timber does, beside the usual. */
function dustOf({ spec }: BenchLeaf): string[] {
  const timber = timberNamed(spec.boards.section.species, spec.timbers)
  const own = timber ? dustAdvice(timber).map(({ message }) => message) : []
  return [sentences('Wood dust harms the lungs: extraction on and a fitting mask.', ...own)]
}

const treatedTimber = ({ spec }: BenchLeaf): string[] =>
  timberNamed(spec.boards.section.species, spec.timbers)?.treated
    ? ['Treated timber: gloves and mask, wash hands, never burn dust or offcuts.']
    : []

const saws =
  'Saws: guard and riving knife on, push stick for narrow rips, eye and ear protection, no loose sleeves.'

/** Whether a board's head or foot is cut to a line once the leaf is together. */
const isShaped = ({ heads, feet }: Board): boolean => heads[0] !== heads[1] || feet[0] !== feet[1]

function straightText({ leaf, spec, alike }: BenchLeaf, first: Board): string {
  const pieces = counted(leaf.boards.length * alike, 'board')
  const trim = spec.boards.endTrim
  return trim > 0
    ? `Cut ${pieces} to ${both(first.blank)}. Square one end of each first, taking off ${mm(trim)}, then cut to ${both(first.length)} from the squared end.`
    : `Square one end of each board, then cut ${pieces} to ${both(first.length)} from the squared end.`
}

function shapedText({ leaf, alike }: BenchLeaf): string {
  const lengths = leaf.boards.map((board, index) => `${index + 1}: ${mm(toHalf(board.blank))}`).join(', ')
  return `Square one end of each board, then cut to these lengths, hinge side first: ${lengths}${alike > 1 ? ` (${alike} of each)` : ''}. Number them. The shape is cut once the leaf is together.`
}

/** Cutting the boards to length. */
export function boardStep(bench: BenchLeaf): Step {
  const { boards } = bench.leaf
  const first = boards[0]
  const alike = first && boards.every(({ blank, length }) => blank === first.blank && length === first.length)
  const text = first && alike && !boards.some(isShaped) ? straightText(bench, first) : shapedText(bench)
  return making(bench, 'Cut the boards', {
    text,
    cautions: [saws, ...dustOf(bench), ...treatedTimber(bench)],
  })
}

function edgeText(board: Board, number: number): string {
  const losses = (['hanging', 'closing'] as const).flatMap((edge) => {
    const off = board.strip[edge]
    if (!(off > 0)) return []
    if (board.loses[edge] === 'rip') return [`rip ${mm(off)} off its ${edge} edge`]
    return [`take its ${board.loses[edge]} off the ${edge} edge (${mm(off)})`]
  })
  const fence = board.fence === null ? '' : `; fence at ${mm(board.fence)}`
  const lap = board.lap === undefined ? '' : ` and ${mm(board.lap)} more for its lap`
  return `Board ${number}: ${losses.join(' and ')}, to a face of ${both(board.width)}${lap}${fence}.`
}

/** The other leaf of two made alike; its closing board has no lap to keep. */
function otherLeafText({ leaf, alike }: BenchLeaf): string {
  if (alike === 1) return ''
  const lapped = leaf.boards.at(-1)
  if (lapped?.lap === undefined) return 'The same for the other leaf.'
  const fence = lapped.fence === null ? '' : `, fence at ${mm(lapped.fence - lapped.lap)}`
  return `The same for the other leaf, but its board ${leaf.boards.length} is ${mm(lapped.width)} wide without a lap${fence}.`
}

/** Ripping the edge boards; nothing where no board is cut. */
export function ripSteps(bench: BenchLeaf): Step[] {
  const edged = bench.leaf.boards
    .map((board, index) => ({ board, number: index + 1 }))
    .filter(({ board }) => board.fence !== null)
  if (edged.length === 0) return []
  const text = edged.map(({ board, number }) => edgeText(board, number)).join(' ')
  return [
    making(bench, 'Rip the edge boards', {
      text: sentences(text, otherLeafText(bench)),
      cautions: [
        'Never rip narrow stock freehand: use a push stick and stand clear of the line of the blade.',
      ],
    }),
  ]
}
