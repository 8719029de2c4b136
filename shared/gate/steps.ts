import { toHalf, type CutRow } from '../cutting/cutList.ts'
import { writeInches, writeShortMm } from '../units/writeLength.ts'
import type { Hole } from './holes.ts'
import type { Board, Leaf } from './leaf.ts'
import type { GateSpec } from './spec.ts'

/** One step in the order of making. cautions stand beside the step where the danger is. */
export type Step = { title: string; text: string; cautions: string[] }

/** What the steps are written from: the gate as entered and everything worked out for it. */
export type StepSource = { spec: GateSpec; leaves: Leaf[]; cuts: CutRow[]; holes: Hole[] }

const mm = (length: number): string => `${writeShortMm(length)} mm`
/** A length as it is cut, in both units. */
const both = (length: number): string => `${mm(toHalf(length))} (${writeInches(toHalf(length))})`
const step = (title: string, text: string, cautions: string[] = []): Step => ({ title, text, cautions })
const counted = (number: number, one: string): string => `${number} ${one}${number === 1 ? '' : 's'}`

/** On the back as it lies on the bench, the hinge side is opposite to how the gate is hung seen from the face. */
const hingeSideOnBench = (spec: GateSpec): string => (spec.hung === 'left' ? 'right' : 'left')

function boardsStep({ spec, leaf }: LeafSource): Step {
  const first = leaf.boards[0] as Board
  const trim = spec.boards.endTrim
  const cut =
    trim > 0
      ? `Cut ${counted(leaf.boards.length, 'board')} to ${both(first.blank)}. Square one end of each first, taking off ${mm(trim)}, then cut to ${both(first.length)} from the squared end.`
      : `Square one end of each board, then cut ${counted(leaf.boards.length, 'board')} to ${both(first.length)} from the squared end.`
  return step('Cut the boards', cut, [
    'Saws: guard and riving knife on, push stick for narrow rips, eye and ear protection, no loose sleeves.',
    'Wood dust harms the lungs: extraction on and a fitting mask, above all with hardwood and redcedar.',
  ])
}

function edgeText(board: Board, number: number): string {
  const losses = (['hanging', 'closing'] as const).flatMap((edge) => {
    const off = board.strip[edge]
    if (!(off > 0)) return []
    if (board.loses[edge] === 'rip') return [`rip ${mm(toHalf(off))} off its ${edge} edge`]
    return [`take its ${board.loses[edge]} off the ${edge} edge (${mm(off)})`]
  })
  const fence = board.fence === null ? '' : `; fence at ${mm(toHalf(board.fence))}`
  return `Board ${number}: ${losses.join(' and ')}, to a face of ${both(board.width)}${fence}.`
}

function edgesStep({ leaf }: LeafSource): Step[] {
  const edged = leaf.boards
    .map((board, index) => ({ board, number: index + 1 }))
    .filter(({ board }) => board.fence !== null)
  if (edged.length === 0) return []
  return [
    step('Rip the edge boards', edged.map(({ board, number }) => edgeText(board, number)).join(' '), [
      'Never rip narrow stock freehand: use a push stick and stand clear of the line of the blade.',
    ]),
  ]
}

function ledgesStep({ spec, cuts }: StepSource): Step {
  const rows = cuts.filter((row) => row.marks.some((mark) => mark.endsWith('ledge')))
  const text = rows
    .map((row) => `${row.quantity} × ${row.section}, ${both(row.length)} long, ${row.ends}.`)
    .join(' ')
  const arris = ' Ease the outer arrises before fixing.'
  return step(
    'Cut the ledges',
    `${text}${arris}`,
    spec.ledges.end.cut === 'bevelled'
      ? ['With the blade tilted, clamp the ledge; never hold it by hand near the cut.']
      : [],
  )
}

function layStep({ spec, leaf }: LeafSource): Step {
  const side = hingeSideOnBench(spec)
  const gap =
    typeof spec.boards.gap === 'number' && spec.boards.gap > 0
      ? `, ${mm(spec.boards.gap)} packers in every joint`
      : ', joints just closed'
  const diagonal = Math.hypot(leaf.width, leaf.height)
  return step(
    'Lay the boards out, face down',
    `Board 1 lies at the hinge side, which is your ${side} as the back lies on the bench with its top away from you. Cramp lightly${gap}. The width over all is ${both(leaf.width)}; both diagonals are ${both(diagonal)}. Never glue boards to each other or to a ledge: they must move.`,
  )
}

function markStep({ spec }: StepSource): Step {
  const side = hingeSideOnBench(spec)
  return step(
    'Mark hinge side and top',
    `Before anything goes on, write HINGE SIDE along the ${side} edge and TOP at the top, on the back. The brace's foot goes to the hinge side.`,
  )
}

function fixLedgesStep({ leaf, spec, holes }: LeafSource): Step {
  const heights = leaf.ledges
    .map((ledge) => `${ledge.name} ledge, centre ${both(ledge.y)} from the foot`)
    .join('; ')
  const inset = `${mm(spec.ledges.hangingInset)} in from the hanging edge and ${mm(spec.ledges.closingInset)} from the closing edge`
  const own = holes.filter((hole) => hole.through !== 'braces')
  const drill = own
    .map((hole) => {
      if (!hole.clearance)
        return `Nail the ${hole.through} from the face with ${hole.quantity} × ${hole.fixing} and clench on the back.`
      const lead = hole.lead ? `, ${drillSize(hole.lead)} lead in the board` : ''
      return `Through the ${hole.through}: ${drillSize(hole.clearance)} clearance${lead}, countersink ${hole.countersink ? drillSize(hole.countersink) : 'to the head'}, ${hole.quantity} × ${hole.fixing}, heads 2 mm under.`
    })
    .join(' ')
  return step('Fix the ledges', `${heights}; ${inset}. Square to the hanging edge. ${drill}`, [
    'Clamp the work before drilling; keep the other hand clear of where the point comes through.',
  ])
}

const drillSize = (choice: { exact: number; drill: number | null }): string =>
  mm(choice.drill ?? choice.exact)

function braceSteps({ leaf, holes }: LeafSource): Step[] {
  if (leaf.braces.length === 0) return []
  const cuts = leaf.braces
    .map(
      (brace) =>
        `${brace.name === 'single' ? 'The brace' : `The ${brace.name} brace`}: saw ${writeShortMm(brace.sawSetting)}° off square at both ends, ${both(brace.length)} long point to long point; it stands at ${writeShortMm(brace.angle)}°.`,
    )
    .join(' ')
  const hole = holes.find((one) => one.through === 'braces')
  const drill = !hole
    ? ''
    : hole.clearance
      ? ` Then ${drillSize(hole.clearance)} clearance${hole.lead ? `, ${drillSize(hole.lead)} lead` : ''}, ${hole.quantity} × ${hole.fixing}.`
      : ` Then ${hole.quantity} × ${hole.fixing}, clenched.`
  return [
    step(
      'Cut and try the brace',
      `${cuts} Try it dry: foot at the hinge side, both ends tight on the ledges before any fixing.`,
    ),
    step(
      'Fix the brace',
      `Press the foot home, then the head.${drill} A brace with its foot at the closing side pulls the leaf down: look once more.`,
    ),
  ]
}

const finishing = (spec: GateSpec): Step[] => [
  step(
    'Clean up the edges',
    'With the leaf together, plane the outer edges and work an arris chamfer along them to match the V of the boards; the leaf is stiffer now.',
  ),
  step('Finish', 'Treat or seal every cut end, the foot above all, before and after hanging.', [
    'Preservative-treated timber: gloves, mask, wash hands, never burn the offcuts.',
    ...(spec.construction === 'ledged'
      ? ['A leaf without a brace drops in time: fit for narrow, light or sheltered doors only.']
      : []),
  ]),
  step('Lift and move', 'Carry the leaf upright by its ledges.', [
    'Lift with two people; prop or tie a leaf standing on edge, it can fall and crush.',
    'Keep fingers out of the hanging edge while it is hung. Public, large or powered gates: follow local codes and ask a licensed engineer or installer.',
  ]),
]

/** The same for one of its leaves. */
type LeafSource = StepSource & { leaf: Leaf }

const stepsOf = (source: LeafSource): Step[] => [
  boardsStep(source),
  ...edgesStep(source),
  ledgesStep(source),
  layStep(source),
  markStep(source),
  fixLedgesStep(source),
  ...braceSteps(source),
]

/** The order of making, written from this gate's own sizes, hinge side and boards to rip. */
export const writeSteps = (source: StepSource): Step[] => [
  ...source.leaves.flatMap((leaf) => stepsOf({ ...source, leaf })),
  ...finishing(source.spec),
]
