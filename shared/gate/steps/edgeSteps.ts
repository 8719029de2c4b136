import { writeShortMm } from '../../units/writeLength.ts'
import { lapOf, openingSide } from '../meeting.ts'
import { settingOut } from '../topShape.ts'
import { both, making, mm, sentences, type BenchLeaf, type Step } from './step.ts'

function topText({ plan, leaf, spec }: BenchLeaf): string {
  const heights = settingOut(plan.top, leaf.width)
  const [first, last] = [heights[0], heights.at(-1)]
  if (!first || !last) return ''
  if (plan.top.shape === 'raked')
    return `Strike a straight line from ${both(first[1])} at the hanging edge to ${both(last[1])} at the closing edge.`
  const list = heights.map(([x, y]) => `${writeShortMm(x)}: ${writeShortMm(y)}`).join(', ')
  const whole = spec.leaves === 2 ? ' The curve runs on over the other leaf.' : ''
  return `Heights from the foot at these distances from the hanging edge, mm: ${list}. Spring a thin lath through the marks; the radius is ${mm(plan.top.radius ?? 0)}.${whole}`
}

/** Cutting a shaped top, once the leaf is together. Nothing where the top is level. */
export function topSteps(bench: BenchLeaf): Step[] {
  if (bench.plan.top.shape === 'level') return []
  const what = bench.spec.frame
    ? 'Cut rail and stiles to the line.'
    : 'Saw just outside the line and clean up to it.'
  return [
    making(bench, 'Set out and cut the top', {
      text: sentences(topText(bench), what),
      cautions: ['Cramp the leaf down; keep the saw’s cable and your other hand behind the cut.'],
    }),
  ]
}

/** Cutting a foot that follows the ground. Nothing where it is level. */
export function footSteps(bench: BenchLeaf): Step[] {
  const { plan, leaf } = bench
  const [from, to] = [plan.foot(0), plan.foot(leaf.width)]
  if (from === to) return []
  const way = to > from ? 'rises' : 'falls'
  return [
    making(bench, 'Cut the foot to the ground', {
      text: `The foot ${way} ${mm(Math.abs(to - from))} from the hanging edge to the closing edge. Strike the line across all boards${bench.spec.frame ? ' and stiles' : ''}, and cut along it. Heights are measured from the foot at the hanging edge.`,
    }),
  ]
}

/** What is cut away of each leaf's meeting edge: the first is wider by its lap and loses the far half of that, the second loses the near half within its width. */
function meetingHalves({ spec, leaf }: BenchLeaf): string {
  const lap = lapOf(spec)
  const side = openingSide(spec)
  const away = side === 'face' ? 'back' : 'face'
  const piece = spec.frame ? 'closing stile' : `board ${leaf.boards.length}`
  return `the first leaf’s ${piece} stands ${mm(lap)} past its width, where its ${away} half is cut away; the second’s loses its ${side} half ${mm(lap)} in from its edge`
}

/** Working the meeting edges of a pair. Nothing on other gates. */
export function meetingSteps(bench: BenchLeaf): Step[] {
  const { spec, leaf } = bench
  if (spec.leaves !== 2) return []
  const gap = spec.size.meetingGap ?? 0
  const lap = lapOf(spec)
  const side = openingSide(spec)
  const edge = spec.meeting?.edge ?? 'square'
  const text =
    edge === 'square'
      ? `Plane the meeting edges straight and square; ${mm(gap)} stays between them.`
      : edge === 'rebated'
        ? `Rebate the meeting edges half the thickness deep to lap ${mm(lap)}: ${meetingHalves(bench)}. The leaf that opens first keeps its lap on the ${side}, so that it comes away freely, and the faces come flush; ${mm(gap)} stays between the steps.`
        : `Plane the meeting edges square. The cover strip, ${mm(2 * lap + gap)} wide, is fixed to the leaf that opens first, on the ${side}, and laps ${mm(lap)} on each leaf; screw it to that leaf only.`
  return leaf.name === 'second leaf' && edge === 'strip'
    ? []
    : [making(bench, 'Work the meeting edge', { text })]
}

/** The joint of a stable door, tried with one half over the other. Nothing on other gates. */
export function halvesSteps(bench: BenchLeaf): Step[] {
  const { spec } = bench
  if (!spec.stable || bench.leaf.name !== 'upper half') return []
  return [
    making({ label: '' }, 'Try the halves together', {
      text: `Lay the upper half over the lower one with ${mm(spec.stable.gap)} packers between: hanging edges in one line, hinge sides on the same side, the boards’ joints running through.`,
    }),
  ]
}

/** Cleaning up the outer edges, once the leaf is together and stiff. */
export function cleanStep(bench: BenchLeaf): Step {
  const text = bench.spec.frame
    ? 'Saw the horns off, plane the outer edges of the frame and ease its arrises.'
    : 'With the leaf together, plane the outer edges and work an arris chamfer along them once, to match the V of the boards; the leaf is stiffer now.'
  return making(bench, 'Clean up the edges', { text })
}
