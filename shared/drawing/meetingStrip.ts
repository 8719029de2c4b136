import { lapOf, openingSide } from '../gate/meeting.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import type { Mark } from './drawing.ts'
import { topPoints } from './leafLines.ts'
import { placeOn, type Placing } from './placeLeaves.ts'

/** The cover strip over a pair's meeting, on the side that the gate opens to; its head follows the top. Nothing on the other side. */
export function meetingStrip(spec: GateSpec, { leaves }: Placing, view: 'face' | 'back'): Mark[] {
  const [first, second] = leaves
  if (spec.meeting?.edge !== 'strip' || view !== openingSide(spec) || !first || !second) return []
  const lap = lapOf(spec)
  const { width } = first.leaf
  const from = width - lap
  const head = [
    ...topPoints(second, width - lap, width)
      .reverse()
      .map(placeOn(second)),
    ...topPoints(first, from, width),
  ]
  const foot: Point[] = [[from, first.plan.foot(from)], placeOn(second)([from, second.plan.foot(from)])]
  return [
    {
      kind: 'polygon',
      points: [...foot, ...head],
      fill: 'ledge',
      pen: 'visible',
      part: 'meeting strip',
    },
  ]
}
