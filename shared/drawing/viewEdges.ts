import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import { pastHanging } from './fittingMarks.ts'
import { earthDepth, groundUnder, type Ground } from './ground.ts'
import { footReach } from './leafLines.ts'
import type { Placing } from './placeLeaves.ts'

/**
 * How far a view reaches, mm: left and right past ironmongery on the posts, low past horns, foot and ground, high past horns. Dimensions
 * and words stand off from there. ground is the one under the gate, if any.
 */
export type ViewEdges = { left: number; right: number; low: number; high: number; ground: Ground | undefined }

/** The edges of one elevation of a gate in its places. */
export function viewEdges(
  { spec, design }: { spec: GateSpec; design: Design },
  placing: Placing,
  view: 'face' | 'back',
): ViewEdges {
  const { leaves, width, height, kind } = placing
  const horn = spec.frame?.horn ?? 0
  const past = (turned: boolean): number =>
    Math.max(0, ...leaves.filter((one) => one.turned === turned).map((one) => pastHanging(one, view)))
  const ground = groundUnder(spec, design, placing)
  const feet = leaves
    .filter(({ leaf }) => leaf.name !== 'upper half')
    .map((one) => one.at[1] + footReach(one)[0] - horn)
  const earth = ground ? Math.min(ground(0), ground(width)) - earthDepth(placing) : 0
  return {
    left: 0 - past(false),
    right: width + (kind === 'pair' ? past(true) : 0),
    low: Math.min(0, earth, ...feet),
    high: height + horn,
    ground,
  }
}

/** The edges as the box that a drawing leaves its margins round. */
export const extentOf = ({ left, right, low, high }: ViewEdges) => ({
  minX: left,
  minY: low,
  maxX: right,
  maxY: high,
})
