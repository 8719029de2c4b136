import type { Figure } from '../gate/figures.ts'
import { figure } from '../gate/worked.ts'
import { usualMovementStart } from './shrinkage.ts'

const source = 'Wood Handbook FPL-GTR-190 ch. 4 (change of basis after eq. 4-10, from memory)'

function checkMoisture(moisture: number): void {
  if (!(moisture >= 0)) throw new RangeError(`a moisture content from 0 % up was expected, got ${moisture}`)
}

/**
 * Density in kg/m³ at a moisture content in %, from the specific gravity at that same moisture (oven-dry mass over volume
 * at it): ρ = 1000·G·(1 + x/100). 0.40 at 12 % is 448 (Wood Handbook ch. 4).
 */
export function densityAt(gravity: number, moisture: number): number {
  checkMoisture(moisture)
  return 1000 * gravity * (1 + moisture / 100)
}

/**
 * Specific gravity at a moisture content in %, from the basic one (oven-dry mass over green volume):
 * G = Gb / (1 − 0.265·Gb·(1 − x/30)), Gb itself from 30 % up. 0.45 is 0.4849 at 12 %.
 */
export function gravityAt(basic: number, moisture: number): number {
  checkMoisture(moisture)
  const dryness = 1 - Math.min(moisture, usualMovementStart) / usualMovementStart
  return basic / (1 - 0.265 * basic * dryness)
}

/** The basic specific gravity that goes with one at a moisture content in %: the same relation turned round. */
export function basicGravity(gravity: number, moisture: number): number {
  checkMoisture(moisture)
  const dryness = 1 - Math.min(moisture, usualMovementStart) / usualMovementStart
  return gravity / (1 + 0.265 * gravity * dryness)
}

/** Moisture content in % at which the timbers' listed densities hold. */
export const listedMoisture = 12

/**
 * Density in kg/m³ of a timber at a moisture content in %, from its density at 12 %. 543 at 12 % is 562 at 20 %.
 * Timber varies: a weight worked from it deserves ± 10 %.
 */
export function densityFrom(density12: number, moisture: number): number {
  const gravity12 = density12 / densityAt(1, listedMoisture)
  return densityAt(gravityAt(basicGravity(gravity12, listedMoisture), moisture), moisture)
}

/** The same as a worked figure. */
export const densityFigure = (density12: number, moisture: number, densitySource: string): Figure =>
  figure(densityFrom(density12, moisture), 'kg/m³', {
    formula:
      '1000·G·(1 + x/100), G = Gb / (1 − 0.265·Gb·(1 − x/30)), Gb from the density at 12 %; x counts as 30 in G when over',
    inputs: {
      'density at 12 %': density12,
      Gb: basicGravity(density12 / densityAt(1, listedMoisture), listedMoisture),
      x: moisture,
    },
    source: `${source}; density: ${densitySource}`,
  })
