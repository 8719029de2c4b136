import type { Figure } from './figures.ts'
import { figure } from './worked.ts'

/**
 * A screw or nail across two pieces of timber in single shear: diameter that counts in mm (a screw's is 1.1 × its root), the depth it
 * goes in each, mm, and each one's low density ρk, kg/m³.
 */
export type Sheared = {
  diameter: number
  predrilled: boolean
  head: { depth: number; densityLow: number }
  point: { depth: number; densityLow: number }
}

/** Least strength of the wire that nails and screws are made of, N/mm²: EN 14592. */
const wireStrength = 600

/** Bearing strength of timber round a fixing up to 8 mm, N/mm²: EN 1995-1-1 eq. 8.15 and 8.16. 5 mm predrilled in ρk 310: 24.149. */
export const embedding = (diameter: number, densityLow: number, predrilled: boolean): number =>
  predrilled ? 0.082 * (1 - 0.01 * diameter) * densityLow : 0.082 * densityLow * diameter ** -0.3

/** Moment at which a round fixing bends, N·mm: 0.3·f_u·d^2.6, EN 1995-1-1 eq. 8.14. */
export const yieldMoment = (diameter: number): number => 0.3 * wireStrength * diameter ** 2.6

/** The six ways in which a fixing across two timbers gives way, N: EN 1995-1-1 eq. 8.6 (a) to (f), without the pull of its head. */
function failures({ diameter: d, predrilled, head, point }: Sheared): number[] {
  const [t1, t2] = [head.depth, point.depth]
  const f1 = embedding(d, head.densityLow, predrilled)
  const b = embedding(d, point.densityLow, predrilled) / f1
  const moment = yieldMoment(d)
  const ratio = t2 / t1
  const slip = Math.sqrt(b + 2 * b * b * (1 + ratio + ratio * ratio) + b ** 3 * ratio * ratio)
  const inHead = Math.sqrt(2 * b * (1 + b) + (4 * b * (2 + b) * moment) / (f1 * d * t1 * t1))
  const inPoint = Math.sqrt(2 * b * b * (1 + b) + (4 * b * (1 + 2 * b) * moment) / (f1 * d * t2 * t2))
  return [
    f1 * t1 * d,
    f1 * b * t2 * d,
    ((f1 * t1 * d) / (1 + b)) * (slip - b * (1 + ratio)),
    1.05 * ((f1 * t1 * d) / (2 + b)) * (inHead - b),
    1.05 * ((f1 * t2 * d) / (1 + 2 * b)) * (inPoint - b),
    1.15 * Math.sqrt((2 * b) / (1 + b)) * Math.sqrt(2 * moment * f1 * d),
  ]
}

/**
 * What one fixing holds across the timbers, characteristic, N: the least of the six ways. Throws RangeError unless every size is over 0.
 */
export function lateralHold(sheared: Sheared): number {
  const { diameter, head, point } = sheared
  if (![diameter, head.depth, head.densityLow, point.depth, point.densityLow].every((size) => size > 0))
    throw new RangeError('a diameter, depths and densities over 0 were expected')
  return Math.min(...failures(sheared))
}

/** What a number of fixings hold together under a load that stays on, outdoors, N: number × k_mod × hold / γ_M. */
export const heldTogetherFigure = (
  sheared: Sheared,
  by: { count: number; loadFactor: number; materialFactor: number },
): Figure => {
  const each = lateralHold(sheared)
  return figure((by.count * by.loadFactor * each) / by.materialFactor, 'N', {
    formula: 'number × k_mod × hold of one / γM',
    inputs: {
      number: by.count,
      k_mod: by.loadFactor,
      'hold of one': each,
      γM: by.materialFactor,
      'diameter that counts': sheared.diameter,
      'depth in the part under the head': sheared.head.depth,
      'depth at the point': sheared.point.depth,
    },
    source: 'EN 1995-1-1 eq. 8.6 without the pull of the head, 8.14 to 8.16 and table 3.1, from memory',
  })
}
