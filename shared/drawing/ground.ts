import type { GateSpec } from '../gate/spec.ts'
import type { Design } from '../gate/designModel.ts'
import type { Point } from '../geometry/point.ts'
import type { Mark } from './drawing.ts'
import type { Placing } from './placeLeaves.ts'

/** The ground under a shut gate: its height at any x of the whole drawing, mm. */
export type Ground = (x: number) => number

/** The gap to leave under a leaf whose opening wasn't measured: what its swing asks for, else 50, common practice. */
const gapUnder = ({ swing }: Pick<Design, 'swing'>): number =>
  Math.max(50, ...swing.flatMap(({ ground }) => (ground ? [ground.clearance] : [])))

/**
 * The ground that belongs to a gate, or undefined where neither an opening nor a slope was given. The ground gap stands over the highest
 * ground that the shut gate is over; a foot that follows the ground keeps it all along. x runs from the first leaf's hanging edge.
 */
export function groundUnder(
  spec: GateSpec,
  design: Pick<Design, 'swing'>,
  { width }: Placing,
): Ground | undefined {
  const slope = spec.site?.slopeAlong ?? 0
  if (spec.size.from === 'leaf' && slope === 0) return undefined
  const gap = spec.size.from === 'opening' ? spec.size.groundGap : gapUnder(design)
  const highest = spec.foot === 'follows-ground' ? 0 : Math.max(0, slope * width)
  return (x) => slope * x - gap - highest
}

/** Depth to which earth is hatched, as a share of the gate's height. */
export const earthDepth = ({ height }: Placing): number => height * 0.02

/** Ground line with its earth hatched below, a little past the gate at both sides. */
export function groundMarks(ground: Ground, placing: Placing): Mark[] {
  const past = placing.width * 0.03
  const [left, right] = [-past, placing.width + past]
  const depth = earthDepth(placing)
  const line: Point[] = [
    [left, ground(left)],
    [right, ground(right)],
  ]
  return [
    {
      kind: 'polygon',
      points: [...line, [right, ground(right) - depth], [left, ground(left) - depth]],
      fill: 'none',
      hatch: { angle: 45, spacing: 1.5 },
      part: 'ground',
    },
    { kind: 'polyline', points: line, pen: 'visible', part: 'ground' },
  ]
}
