import {
  loadFactor,
  materialFactor,
  type LoadDuration,
  type StrengthClass,
} from '../timber/strengthClasses.ts'
import type { Fact } from '../timber/fact.ts'
import { toRadians } from '../units/angle.ts'
import type { Figure } from './figures.ts'
import { figure } from './worked.ts'

/** Strength along and across the grain, N/mm². */
export type GrainStrength = { along: number; across: number }

function checkStrength({ along, across }: GrainStrength, angle: number): void {
  if (!(along > 0) || !(across > 0) || !(angle >= 0 && angle <= 90))
    throw new RangeError(
      `strengths over 0 and an angle from 0 to 90 were expected, got ${along}, ${across} and ${angle}`,
    )
}

/**
 * Strength at an angle in degrees between force and grain (Hankinson): N = P·Q / (P·sin²θ + Q·cos²θ). At 45° it is
 * 2·P·Q / (P + Q). C24 (21 along, 2.5 across) at 45° is 4.468.
 */
export function hankinson(strength: GrainStrength, angle: number): number {
  checkStrength(strength, angle)
  const { along, across } = strength
  const [sine, cosine] = [Math.sin(toRadians(angle)), Math.cos(toRadians(angle))]
  return (along * across) / (along * sine * sine + across * cosine * cosine)
}

/**
 * Bearing strength at an angle in degrees by EN 1995-1-1 eq. 6.16: Hankinson with the strength across the grain raised by
 * kc90 (1 unless the standard grants more). C24 at 45° with 1.5 is 6.364.
 */
export const bearingStrength = (strength: GrainStrength, angle: number, kc90 = 1): number =>
  hankinson({ along: strength.along, across: kc90 * strength.across }, angle)

/** What a brace's toe stands on: timber's class, angle in degrees between force and grain, how long the load stays on. */
export type ToeBearing = { timber: Fact<StrengthClass>; angle: number; duration: LoadDuration }

/** Timber out in the weather, as every gate is. */
const outdoors = 3

/**
 * The stress in N/mm² that a toe may put on the timber outdoors: k_mod × strength / γ_M, service class 3.
 * C24 at 45° under the leaf's own weight: 0.5 × 4.468 / 1.3 = 1.718.
 */
export const designBearing = ({ timber, angle, duration }: ToeBearing): number =>
  (loadFactor(outdoors, duration) * hankinson(grainOf(timber.value), angle)) / materialFactor

const grainOf = ({ compression, compressionAcross }: StrengthClass): GrainStrength => ({
  along: compression,
  across: compressionAcross,
})

/** The same as a worked figure. */
export function designBearingFigure(bearing: ToeBearing): Figure {
  const { timber, angle, duration } = bearing
  return figure(designBearing(bearing), 'N/mm²', {
    formula: 'k_mod × fc0 / (fc0 / fc90 × sin²θ + cos²θ) / γM',
    inputs: {
      k_mod: loadFactor(outdoors, duration),
      fc0: timber.value.compression,
      fc90: timber.value.compressionAcross,
      θ: angle,
      γM: materialFactor,
    },
    source: `EN 1995-1-1 eq. 6.16 and table 3.1, service class 3; ${timber.value.name}: ${timber.source}`,
  })
}

/** The stress in N/mm² of a force in N on a bearing of an area in mm². */
export function bearingStress(force: number, area: number): number {
  if (!(area > 0)) throw new RangeError(`a bearing area over 0 was expected, got ${area}`)
  return force / area
}

/** The same as a worked figure: the area is contact × thickness, both mm. */
export const bearingStressFigure = (force: number, contact: number, thickness: number): Figure =>
  figure(bearingStress(force, contact * thickness), 'N/mm²', {
    formula: 'force / (contact × thickness)',
    inputs: { force, contact, thickness },
    source: 'plane statics',
  })
