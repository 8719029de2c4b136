import { lengthTolerance, type Point } from '../geometry/point.ts'
import { toRadians } from '../units/angle.ts'
import { geometry, type Figure } from './figures.ts'
import { betweenLedges, type Leaf, type Ledge } from './leaf.ts'
import { shortReach, upperEdge } from './ledges.ts'
import type { GateSpec } from './spec.ts'
import { figure } from './worked.ts'

/** How far a ledge's weathered upper edge comes down at its back, mm: 28 thick at 10° is 4.937; 0 where it isn't weathered. */
export const weatherDrop = (
  { ledges }: Pick<GateSpec, 'ledges'>,
  { section }: Pick<Ledge, 'section'>,
): number => section.thickness * Math.tan(toRadians(ledges.weather ?? 0))

/** The same as a worked figure; undefined where ledges aren't weathered. */
export const weatherFigure = (spec: GateSpec, ledge: Ledge): Figure | undefined =>
  (spec.ledges.weather ?? 0) === 0
    ? undefined
    : figure(weatherDrop(spec, ledge), 'mm', {
        formula: 'thickness × tan(angle)',
        inputs: { thickness: ledge.section.thickness, angle: spec.ledges.weather ?? 0 },
        source: geometry,
      })

/** Where along a ledge its upper edge is weathered, mm: from end to end, but flat where a brace's foot stands. */
export function weatheredRuns(
  spec: GateSpec,
  { braces }: Pick<Leaf, 'braces'>,
  ledge: Ledge,
): [number, number][] {
  const [short, long] = [shortReach(ledge), [ledge.x, ledge.x + ledge.length] as const]
  const bevelled = !spec.frame && spec.ledges.end.cut === 'bevelled'
  const [left, right] = bevelled ? [(short[0] + long[0]) / 2, (short[1] + long[1]) / 2] : short
  const foot = braces
    .map((brace) => betweenLedges(brace) as [Point, Point, Point, Point])
    .find(([heel]) => Math.abs(heel[1] - upperEdge(ledge)) < lengthTolerance)
  if (!foot) return [[left, right]]
  const runs: [number, number][] = [
    [left, foot[0][0]],
    [foot[1][0], right],
  ]
  return runs.filter(([from, to]) => to - from > lengthTolerance)
}

/**
 * What weathering takes out of a leaf's ledges, as flat pieces that weigh as much and lie as high as the wedge: two thirds of its drop, three
 * quarters of its thickness.
 */
export function weatheredAway(
  spec: GateSpec,
  leaf: Leaf,
): { ledge: Ledge; outline: Point[]; thickness: number }[] {
  if ((spec.ledges.weather ?? 0) === 0) return []
  return leaf.ledges.flatMap((ledge) => {
    const high = upperEdge(ledge)
    const low = high - (2 / 3) * weatherDrop(spec, ledge)
    return weatheredRuns(spec, leaf, ledge).map(([from, to]) => ({
      ledge,
      outline: [
        [from, low],
        [to, low],
        [to, high],
        [from, high],
      ] as Point[],
      thickness: -0.75 * ledge.section.thickness,
    }))
  })
}
