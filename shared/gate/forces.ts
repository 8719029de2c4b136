import { toRadians } from '../units/angle.ts'
import { standardGravity } from '../units/imperial.ts'
import type { Figure } from './figures.ts'
import { figure } from './worked.ts'

const statics = 'plane statics'

/** Weight in N of a mass in kg. 40 kg weighs 392.266. */
export const weightOf = (massKg: number): number => massKg * standardGravity

/** What a brace has to carry: the leaf, and what hangs or stands at its closing edge, kg. */
export type BraceBurden = { leafKg: number; closingKg: number; personKg: number }

/**
 * The upright load on a brace's head, N: half the whole leaf, all the ironmongery at the closing edge, and a person on the closing
 * end when one is reckoned with. By moments about the hanging edge, half of that ironmongery is counted twice: that is kept, on the safe side.
 * 40 kg, 1.5 kg and nobody: 210.843.
 */
export const braceLoad = ({ leafKg, closingKg, personKg }: BraceBurden): number =>
  weightOf(leafKg / 2 + closingKg + personKg)

function checkSlope(angle: number): void {
  if (!(angle > 0 && angle < 90))
    throw new RangeError(`a slope between 0 and 90 degrees was expected, got ${angle}`)
}

/** Thrust along a brace, N: V / sin θ, θ in degrees from the horizontal. 100 N at 60° is 115.470. */
export function braceThrust(load: number, angle: number): number {
  checkSlope(angle)
  return load / Math.sin(toRadians(angle))
}

/** The part of a thrust that runs along the ledge, N: N·cos θ. 115.470 N at 60° is 57.735. */
export function ledgeShare(thrust: number, angle: number): number {
  checkSlope(angle)
  return thrust * Math.cos(toRadians(angle))
}

/** A leaf on two hinges: weight in N, x of its centre from the hanging edge, pin's distance in from it, hinge spacing, mm. */
export type HungLeaf = { weight: number; centreX: number; pinInset: number; spacing: number }

/**
 * Pull of the top hinge and push of the bottom one, N, equal and opposite: weight × (centre.x − pin inset) / spacing.
 * A pin beyond the edge has a negative inset. 27 kg (264.6 N), 455 out, hinges 1500 apart: 80.262.
 */
export function hingeCouple({ weight, centreX, pinInset, spacing }: HungLeaf): number {
  if (!(spacing > 0)) throw new RangeError(`a hinge spacing over 0 was expected, got ${spacing}`)
  return (weight * (centreX - pinInset)) / spacing
}

/** Density of air in kg/m³ that EN 1991-1-4 recommends. */
export const airDensity = 1.25

/** Wind pressure in N/m² at a speed in m/s: ½ρv², EN 1991-1-4 eq. 4.10. 26 m/s is 422.5. */
export function windPressure(speed: number, density = airDensity): number {
  if (!(speed >= 0)) throw new RangeError(`a wind speed from 0 up was expected, got ${speed}`)
  return (density * speed * speed) / 2
}

/** Push in N of a wind in m/s on a shut leaf of an area in mm². 26 m/s on 2 m² is 845. */
export const windPush = (speed: number, area: number): number => (windPressure(speed) * area) / 1e6

/** The upright load on a brace's head as a worked figure. */
export const braceLoadFigure = (burden: BraceBurden): Figure =>
  figure(braceLoad(burden), 'N', {
    formula: '(whole leaf / 2 + ironmongery at the closing edge + person) × g',
    inputs: {
      'whole leaf kg': burden.leafKg,
      'ironmongery at the closing edge kg': burden.closingKg,
      'person kg': burden.personKg,
      g: standardGravity,
    },
    source: `${statics}; half the leaf on the brace: common practice`,
  })

/** Thrust along a brace as a worked figure. */
export const braceThrustFigure = (load: number, angle: number): Figure =>
  figure(braceThrust(load, angle), 'N', {
    formula: 'V / sin θ',
    inputs: { V: load, θ: angle },
    source: statics,
  })

/** The part of the thrust along the ledge as a worked figure. */
export const ledgeShareFigure = (thrust: number, angle: number): Figure =>
  figure(ledgeShare(thrust, angle), 'N', {
    formula: 'N × cos θ',
    inputs: { N: thrust, θ: angle },
    source: statics,
  })

/** Pull and push of the hinges as a worked figure. */
export const hingeCoupleFigure = (leaf: HungLeaf): Figure =>
  figure(hingeCouple(leaf), 'N', {
    formula: 'weight × (centre from the hanging edge − pin inset) / hinge spacing',
    inputs: {
      weight: leaf.weight,
      'centre from the hanging edge': leaf.centreX,
      'pin inset': leaf.pinInset,
      'hinge spacing': leaf.spacing,
    },
    source: statics,
  })

/** The most that one hinge may have to carry, N: the leaf's whole weight. */
export const hingeShareFigure = (massKg: number): Figure =>
  figure(weightOf(massKg), 'N', {
    formula: 'mass × g: the whole weight may fall on one hinge',
    inputs: { 'mass kg': massKg, g: standardGravity },
    source: `${statics}; NIST SP 811 for g`,
  })

/** Wind push on the shut leaf as a worked figure. */
export const windPushFigure = (speed: number, area: number): Figure =>
  figure(windPush(speed, area), 'N', {
    formula: '½ × ρ × v² × area',
    inputs: { 'ρ kg/m³': airDensity, 'v m/s': speed, 'area m²': area / 1e6 },
    source: 'EN 1991-1-4 eq. 4.10',
  })
