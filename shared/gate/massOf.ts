import type { Point } from '../geometry/point.ts'
import { signedArea } from '../geometry/polygon.ts'
import type { Figure } from './figures.ts'
import { figure } from './worked.ts'

/** A flat part: its outline on the leaf in mm (either way round), thickness in mm, density in kg/m³. */
export type FlatPart = { outline: readonly Point[]; thickness: number; density: number }

/** Something small and heavy at one place, such as a lock: kg. */
export type PointMass = { at: Point; massKg: number }

/** Mass in kg and the place of its centre in mm. */
export type Mass = { massKg: number; centre: { x: number; y: number } }

/**
 * Centroid of a simple polygon, mm; undefined where it has no area. Reckoned from its first point, so that a small part far
 * from the corner of the leaf loses no places.
 */
export function centroid(points: readonly Point[]): Point | undefined {
  const [x0, y0] = points[0] ?? [0, 0]
  let twice = 0
  let sumX = 0
  let sumY = 0
  for (let i = 0; i < points.length; i += 1) {
    const here = points[i] as Point
    const next = points[i + 1 === points.length ? 0 : i + 1] as Point
    const [x, y] = [here[0] - x0, here[1] - y0]
    const [nextX, nextY] = [next[0] - x0, next[1] - y0]
    const cross = x * nextY - nextX * y
    twice += cross
    sumX += (x + nextX) * cross
    sumY += (y + nextY) * cross
  }
  const area = twice / 2
  if (area === 0) return undefined
  return [x0 + sumX / (6 * area), y0 + sumY / (6 * area)]
}

/** A flat part as one mass at its centroid; a part without area weighs nothing. */
function flatMass({ outline, thickness, density }: FlatPart): PointMass {
  const at = centroid(outline)
  if (!at) return { at: [0, 0], massKg: 0 }
  return { at, massKg: (Math.abs(signedArea(outline)) * thickness * density) / 1e9 }
}

/**
 * Mass and centre of mass of flat parts and point masses together. A board 100 × 2000 × 20 of 500 kg/m³ is 2 kg.
 * Throws RangeError when nothing weighs anything, since there is no centre then.
 */
export function massOf(parts: readonly FlatPart[], points: readonly PointMass[] = []): Mass {
  const all = [...parts.map(flatMass), ...points]
  const massKg = all.reduce((sum, one) => sum + one.massKg, 0)
  if (!(massKg > 0)) throw new RangeError(`massOf needs a part with mass, got ${massKg} kg in all`)
  const mean = (axis: 0 | 1): number => all.reduce((sum, one) => sum + one.at[axis] * one.massKg, 0) / massKg
  return { massKg, centre: { x: mean(0), y: mean(1) } }
}

/** Mass and centre as worked figures, from the totals by part that the caller names. */
export function massFigures(mass: Mass, byPart: Record<string, number>): Record<'mass' | 'x' | 'y', Figure> {
  const source = 'volumes of the parts × density, ± 10 %: Wood Handbook FPL-GTR-190 ch. 4'
  const inputs = { 'mass kg': mass.massKg, ...byPart }
  return {
    mass: figure(mass.massKg, 'kg', { formula: 'sum of the parts', inputs: byPart, source }),
    x: figure(mass.centre.x, 'mm', { formula: 'sum of mass × x / mass', inputs, source }),
    y: figure(mass.centre.y, 'mm', { formula: 'sum of mass × y / mass', inputs, source }),
  }
}
