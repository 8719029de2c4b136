import type { Design } from '../gate/designModel.ts'
import { leafPieces } from '../gate/leafPieces.ts'
import { planLeaves } from '../gate/leafPlan.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import { signedArea } from '../geometry/polygon.ts'

/** How far it is round an outline, mm. */
function roundOf(outline: readonly Point[]): number {
  return outline.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = outline[(index + 1) % outline.length] as Point
    return sum + Math.hypot(nextX - x, nextY - y)
  }, 0)
}

/** Both faces and all edges of a flat part, mm². 112 × 1780 × 20 is 474 400: 2 × 199 360 and 3784 of edge × 20. */
export const coatedRound = (outline: readonly Point[], thickness: number): number =>
  2 * Math.abs(signedArea(outline)) + roundOf(outline) * thickness

/**
 * What is coated of a gate, m²: every board, ledge, brace, stile, rail and meeting strip all round, both faces and every edge, since what
 * lies against another part can't be reached once the leaf is together (common practice). Shaped tops by their own outline. A board
 * counts as wide as it is seen; tongues, grooves, rebates, horns and tenons aren't counted.
 */
export function coatedArea(spec: GateSpec, design: Pick<Design, 'leaves' | 'cuts'>): number {
  const plans = planLeaves(spec).value
  const leaves = design.leaves.map((leaf, index) => {
    const plan = plans[index]
    if (!plan)
      throw new RangeError(`coatedArea needs the design of this spec, got ${design.leaves.length} leaves`)
    return leafPieces(spec, plan, leaf)
      .filter(({ thickness }) => thickness > 0)
      .reduce((sum, { outline, thickness }) => sum + coatedRound(outline, thickness), 0)
  })
  const strips = design.cuts
    .filter(({ marks }) => marks.includes('meeting strip'))
    .map(({ quantity, width, length, thickness }) => {
      const outline: Point[] = [
        [0, 0],
        [width, 0],
        [width, length],
        [0, length],
      ]
      return quantity * coatedRound(outline, thickness)
    })
  return [...leaves, ...strips].reduce((sum, one) => sum + one, 0) / 1e6
}
