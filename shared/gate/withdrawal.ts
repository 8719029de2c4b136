import { newtonsPerMmPerPoundInch } from '../units/imperial.ts'
import { toRadians } from '../units/angle.ts'
import { mmPerInch } from '../units/inch.ts'
import type { Figure } from './figures.ts'
import { figure } from './worked.ts'

/**
 * A fixing pulled straight out of side grain: specific gravity of the timber, shank diameter and the depth that holds
 * (a screw's thread, a nail's point), mm.
 */
export type Pulled = { gravity: number; diameter: number; depth: number }

function checkPulled({ gravity, diameter, depth }: Pulled): void {
  if (!(gravity > 0) || !(diameter > 0) || !(depth >= 0))
    throw new RangeError(
      `a gravity and diameter over 0 and a depth from 0 up were expected, got ${gravity}, ${diameter} and ${depth}`,
    )
}

/**
 * Pull in N at which a bright smooth nail comes out: 54.12·G^2.5·D·L, G at 12 %. Wood Handbook FPL-GTR-190 eq. 8-1.
 * G 0.48, 3.35 × 40: 1157.6.
 */
export function nailPullOut(pulled: Pulled): number {
  checkPulled(pulled)
  return 54.12 * pulled.gravity ** 2.5 * pulled.diameter * pulled.depth
}

/**
 * Pull in N at which a wood screw comes out: 108.25·G²·D·L, L the thread's depth. Wood Handbook FPL-GTR-190 eq. 8-10.
 * G 0.48, no. 10 (4.826 mm), 25 deep: 3009.
 */
export function screwPullOut(pulled: Pulled): number {
  checkPulled(pulled)
  return 108.25 * pulled.gravity ** 2 * pulled.diameter * pulled.depth
}

/** Allowable hold of a wood screw per inch of thread, lb: NDS W = 2850·G²·D, D in inches, G oven-dry. No. 10, G 0.45: 109.65. */
export const screwHoldPerInch = (gravity: number, diameterInch: number): number =>
  2850 * gravity ** 2 * diameterInch

/** Allowable hold of a nail per inch in the timber, lb: NDS W = 1380·G^2.5·D. D 0.203, G 0.45: 38.05. */
export const nailHoldPerInch = (gravity: number, diameterInch: number): number =>
  1380 * gravity ** 2.5 * diameterInch

/** Allowable hold of a coach screw per inch of thread, lb: NDS W = 1800·G^1.5·D^0.75, eq. 12.2-1. */
export const coachScrewHoldPerInch = (gravity: number, diameterInch: number): number =>
  1800 * gravity ** 1.5 * diameterInch ** 0.75

/** Allowable hold in N of a screw or nail by the NDS, oven-dry gravity. No. 10 screw, G 0.45, 25 deep: 480.1. */
export function allowableHold(kind: 'screw' | 'nail', pulled: Pulled): number {
  checkPulled(pulled)
  const perInch = kind === 'screw' ? screwHoldPerInch : nailHoldPerInch
  return perInch(pulled.gravity, pulled.diameter / mmPerInch) * newtonsPerMmPerPoundInch * pulled.depth
}

/** The same as a worked figure. */
export const allowableHoldFigure = (kind: 'screw' | 'nail', pulled: Pulled): Figure =>
  figure(allowableHold(kind, pulled), 'N', {
    formula: `${kind === 'screw' ? '2850·G²·D' : '1380·G^2.5·D'} lb per inch, D in inches, × depth`,
    inputs: { G: pulled.gravity, 'diameter mm': pulled.diameter, 'depth mm': pulled.depth },
    source: `NDS-2018 §12.2, withdrawal of ${kind === 'screw' ? 'wood screws' : 'nails'}, allowable`,
  })

/** Screws of 6 to 12 mm pulled out: how many act together, low density ρk in kg/m³, angle to the grain in degrees. */
export type ThickScrews = {
  diameter: number
  depth: number
  densityLow: number
  angle: number
  count: number
}

/** Characteristic withdrawal strength in N/mm²: 0.52·d^−0.5·l^−0.1·ρk^0.8, EN 1995-1-1 eq. 8.39. 6 mm, 40 deep, 350: 15.92. */
export const withdrawalStrength = ({ diameter, depth, densityLow }: ThickScrews): number =>
  0.52 * diameter ** -0.5 * depth ** -0.1 * densityLow ** 0.8

/**
 * Characteristic withdrawal of screws of 6 to 12 mm in N: n^0.9·f·d·l·kd / (1.2·cos²α + sin²α), kd the lesser of d/8 and 1.
 * EN 1995-1-1 eq. 8.38 to 8.40. One 6 mm screw 40 deep at 90° in ρk 350: 2866. Undefined outside 6 to 12 mm.
 */
export function characteristicWithdrawal(screws: ThickScrews): number | undefined {
  const { diameter, depth, angle, count, densityLow } = screws
  if (!(depth > 0) || !(densityLow > 0) || !(count >= 1) || !(angle >= 0 && angle <= 90))
    throw new RangeError('a depth, density, count and an angle from 0 to 90 were expected')
  if (diameter < 6 || diameter > 12) return undefined
  const [sine, cosine] = [Math.sin(toRadians(angle)), Math.cos(toRadians(angle))]
  const each = withdrawalStrength(screws) * diameter * depth * Math.min(diameter / 8, 1)
  return (count ** 0.9 * each) / (1.2 * cosine * cosine + sine * sine)
}
