import type { Design } from '../gate/designModel.ts'
import type { HangingLeaf } from '../gate/leaf.ts'
import { planLeaves, type LeafPlan } from '../gate/leafPlan.ts'
import { lapPast, openingSide } from '../gate/meeting.ts'
import type { GateSpec } from '../gate/spec.ts'
import { lengthTolerance, type Point } from '../geometry/point.ts'
import type { Fitting } from '../ironmongery/fitting.ts'
import type { Mark } from './drawing.ts'
import { mirrorMark } from './hand.ts'
import { shiftMark } from './shiftMark.ts'

/**
 * A leaf in its place among the others. at is where its lower left corner comes, mm; turned: its hanging edge is at the right. alike: it has
 * the same sizes as the leaf before it, so that its figures needn't be said again. reach is how far its meeting edge is seen past its width on either
 * side, mm: a lap of a rebated meeting, under 0 where the other leaf laps over it.
 */
export type PlacedLeaf = {
  leaf: HangingLeaf
  plan: LeafPlan
  fittings: Fitting[]
  at: Point
  turned: boolean
  alike: boolean
  reach: { face: number; back: number }
}

/**
 * All leaves of a gate as they hang, the first-opening one at the left with its hanging edge at x = 0 (the hand turns the whole over
 * afterwards). width and height are of all leaves with the gaps between them; gap is the one between two leaves, 0 on a single one. mm.
 */
export type Placing = {
  kind: 'single' | 'pair' | 'stable'
  leaves: PlacedLeaf[]
  width: number
  height: number
  gap: number
}

const sameHeights = (one: HangingLeaf, other: HangingLeaf): boolean =>
  one.ledges.every(({ y }, i) => Math.abs(y - (other.ledges[i]?.y ?? Infinity)) < lengthTolerance) &&
  one.boards.every(
    ({ feet }, i) => Math.abs(feet[1] - (other.boards[i]?.feet[1] ?? Infinity)) < lengthTolerance,
  )

/** Where the lower left corner of each leaf comes. A second leaf whose foot follows the ground hangs as much higher as the ground rises. */
function placeOf(plan: LeafPlan, first: LeafPlan, gap: number): Point {
  if (plan.name === 'upper half') return [0, first.height + gap]
  if (plan.name !== 'second leaf') return [0, 0]
  const whole = 2 * first.width + gap
  return [first.width + gap, first.foot(whole)]
}

/** The leaves of a design in their places, as `Placing` says. Throws RangeError for a design without a leaf. */
export function placeLeaves(spec: GateSpec, design: Pick<Design, 'leaves' | 'fittings'>): Placing {
  const plans = planLeaves(spec).value
  const [first] = plans
  const [firstLeaf] = design.leaves
  if (!first || !firstLeaf) throw new RangeError('a design without a leaf can’t be drawn')
  const kind = spec.stable ? 'stable' : spec.leaves === 2 ? 'pair' : 'single'
  const gap = spec.stable?.gap ?? (kind === 'pair' ? (spec.size.meetingGap ?? 0) : 0)
  const leaves = design.leaves.map((leaf, index): PlacedLeaf => {
    const plan = plans[index] ?? first
    return {
      leaf,
      plan,
      fittings: design.fittings.filter((fitting) => fitting.leaf === leaf.name),
      at: placeOf(plan, first, gap),
      turned: leaf.name === 'second leaf',
      alike: leaf.name === 'second leaf' && sameHeights(firstLeaf, leaf),
      reach: { face: 0, back: 0, [openingSide(spec)]: lapPast(spec, leaf.name) },
    }
  })
  return {
    kind,
    leaves,
    gap,
    width: kind === 'pair' ? 2 * first.width + gap : first.width,
    height: Math.max(...leaves.map(({ leaf, at }) => at[1] + leaf.height)),
  }
}

/** What a leaf's parts are called on a gate of several: 'second leaf board 3', so that lighting 'board 3' lights them in both. */
const named = (leaf: HangingLeaf, part: string | undefined): string | undefined =>
  leaf.name === 'leaf' || part === undefined || part.startsWith('dimension') ? part : `${leaf.name} ${part}`

/** A leaf's marks, drawn in its own coordinates, moved to its place and turned over with it. */
export function setDown({ leaf, at, turned }: PlacedLeaf, marks: Mark[]): Mark[] {
  if (leaf.name === 'leaf') return marks
  return marks.map((mark) => {
    const own = turned ? mirrorMark(mark, leaf.width) : mark
    return { ...shiftMark(own, at), part: named(leaf, mark.part) }
  })
}

/** A place on a leaf as a place on the whole drawing. */
export const placeOn =
  ({ leaf, at, turned }: PlacedLeaf) =>
  ([x, y]: Point): Point => [at[0] + (turned ? leaf.width - x : x), at[1] + y]
