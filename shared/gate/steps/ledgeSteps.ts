import { toHalf } from '../../cutting/cutList.ts'
import type { Hole } from '../holes.ts'
import { weatherText } from './frameSteps.ts'
import {
  both,
  counted,
  degrees,
  drillSize,
  hingeSideOnBench,
  making,
  mm,
  sentences,
  type BenchLeaf,
  type Step,
} from './step.ts'

function endText({ spec }: BenchLeaf, short: number): string {
  const { end } = spec.ledges
  if (end.cut === 'square') return 'both ends square'
  return end.cut === 'bevelled'
    ? `both ends bevelled ${degrees(end.angle)} through the thickness, back face ${both(short)}`
    : `both ends splayed ${degrees(end.angle)} across the width, upper edge ${both(short)}, lower edge long`
}

/** Cutting the ledges of a gate without a frame, whose ledges are cut with it. */
export function ledgeStep(bench: BenchLeaf): Step {
  const { leaf, alike, spec } = bench
  const groups = new Map<string, number>()
  for (const { section, length, shortLength } of leaf.ledges) {
    const words = `${section.name}, ${both(toHalf(length))} long, ${endText(bench, shortLength)}`
    groups.set(words, (groups.get(words) ?? 0) + alike)
  }
  const text = [...groups].map(([words, count]) => `${count} × ${words}.`).join(' ')
  return making(bench, 'Cut the ledges', {
    text: sentences(text, weatherText(bench), 'Ease the outer arrises before fixing.'),
    cautions:
      spec.ledges.end.cut === 'bevelled'
        ? ['With the blade tilted, clamp the ledge; never hold it by hand near the cut.']
        : [],
  })
}

const otherSide = (side: 'left' | 'right'): 'left' | 'right' => (side === 'left' ? 'right' : 'left')

/** Where the hinge side lies on the bench, and for a pair where the other leaf's does. */
export function hingeSideWords({ spec, leaf, alike }: BenchLeaf): string {
  const side = hingeSideOnBench(spec, leaf)
  const other =
    alike > 1 ? ` (on your ${otherSide(side)} for the second leaf, which is the mirror of the first)` : ''
  return `on your ${side}${other} as the back lies on the bench, its top away from you`
}

/** Laying the boards out on the bench, back up. */
export function layStep(bench: BenchLeaf): Step {
  const { leaf, spec, plan } = bench
  const { gap } = spec.boards
  const joints =
    typeof gap === 'number' && gap > 0 ? `, ${mm(gap)} packers in every joint` : ', joints just closed'
  const square = plan.top.shape === 'level' && plan.foot(leaf.width) === plan.foot(0)
  return making(bench, 'Lay the boards out, face down', {
    text: sentences(
      `Board 1 lies at the hinge side, ${hingeSideWords(bench)}.`,
      `Cramp lightly${joints}. The width over all is ${both(leaf.width)}${square ? `; both diagonals are ${both(Math.hypot(leaf.width, leaf.height))}` : ', square to the squared ends of the boards'}.`,
      'Never glue boards to each other or to a ledge: they must move.',
    ),
  })
}

/** Marking the back, before any brace can go on the wrong way. */
export const markStep = (bench: BenchLeaf): Step =>
  making(bench, 'Mark hinge side and top', {
    text: `Before ${bench.leaf.braces.length > 0 ? 'a brace' : 'anything'} goes on, write HINGE SIDE along that edge (${hingeSideWords(bench)}) and TOP at the top, on the back.${bench.leaf.braces.length > 0 ? ' The brace’s foot goes to the hinge side.' : ''}`,
  })

/** What to drill and drive through one part. */
export function drillText(hole: Hole, count: number): string {
  const through = `Through the ${hole.through}, ${counted(count, 'place')} as drawn: `
  if (!hole.clearance) return `${through}${hole.fixing} from the face, clenched on the back.`
  const lead = hole.lead ? `, ${drillSize(hole.lead)} lead in the board` : ''
  const sink = hole.countersink ? drillSize(hole.countersink) : 'to the head'
  return `${through}${drillSize(hole.clearance)} clearance${lead}, countersink ${sink}, ${hole.fixing}, heads 2 mm under.`
}

const countFor = ({ leaf, alike }: BenchLeaf, hole: Hole): number =>
  alike *
  leaf.fixings.filter(({ joins, member }) =>
    hole.through === 'top ledge'
      ? member === 'top ledge'
      : joins === 'ledge' && (hole.through === 'ledges' || member !== 'top ledge'),
  ).length

/** Fixing the boards and the ledges to one another. */
export function fixLedgesStep(bench: BenchLeaf): Step {
  const { leaf, spec, holes } = bench
  const drill = holes
    .filter(({ through }) => through !== 'braces')
    .map((hole) => drillText(hole, countFor(bench, hole)))
  const clamp = 'Clamp the work before drilling; keep the other hand clear of where the point comes through.'
  if (spec.frame)
    return making(bench, 'Fix the boards to the ledges', {
      text: sentences('Turn the leaf back up.', ...drill),
      cautions: [clamp],
    })
  const heights = leaf.ledges
    .map(({ name, y }) => `${name} ledge, centre ${both(y)} from the foot`)
    .join('; ')
  const inset = `${mm(spec.ledges.hangingInset)} in from the hanging edge and ${mm(spec.ledges.closingInset)} from the closing edge`
  return making(bench, 'Fix the ledges', {
    text: sentences(
      `${heights[0]?.toUpperCase()}${heights.slice(1)}; ${inset}. Square to the hanging edge.`,
      ...drill,
    ),
    cautions: [clamp],
  })
}
