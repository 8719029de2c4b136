import type { Figure } from '../gate/figures.ts'
import { figure } from '../gate/worked.ts'

/** Air by its temperature in °C and relative humidity in %. */
export type Air = { tempC: number; rhPercent: number }

const source = 'Wood Handbook FPL-GTR-190 ch. 4, eq. 4-5 and table 4-2, in the °C form of FPL-RN-0268'

/**
 * The coldest and warmest air of the handbook's table, °C (30 °F and 270 °F). Colder air counts as the coldest: the rows at
 * 30 and 40 °F hardly differ, and the equation wanders once it leaves them.
 */
export const coldestInTable = -2 / 1.8
export const warmestInTable = 238 / 1.8

/** W, K, K1 and K2 of the two-hydrate Hailwood–Horrobin equation at a temperature in °C. */
function sorption(t: number): { w: number; k: number; k1: number; k2: number } {
  return {
    w: 349 + 1.29 * t + 0.0135 * t * t,
    k: 0.805 + 0.000736 * t - 0.00000273 * t * t,
    k1: 6.27 - 0.00938 * t - 0.000303 * t * t,
    k2: 1.91 + 0.0407 * t - 0.000293 * t * t,
  }
}

function checkAir({ tempC, rhPercent }: Air): void {
  if (!(tempC >= -40 && tempC <= warmestInTable) || !(rhPercent >= 0 && rhPercent <= 100))
    throw new RangeError(
      `air from −40 to 132 °C and 0 to 100 % was expected, got ${tempC} °C and ${rhPercent} %`,
    )
}

/**
 * The moisture content in % that timber settles at in still air (Hailwood–Horrobin, two hydrates). The published table is
 * met to 0.07 and serves any species for most purposes. 20 °C and 65 % give 11.996; 10 °C and 80 % give 16.382.
 * Throws RangeError outside −40 to 132 °C and 0 to 100 %.
 */
export function equilibriumMoisture(air: Air): number {
  checkAir(air)
  const { w, k, k1, k2 } = sorption(Math.max(air.tempC, coldestInTable))
  const kh = (k * air.rhPercent) / 100
  const first = k1 * kh
  const second = k1 * k2 * kh * kh
  return (1800 / w) * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second))
}

/** The same as a worked figure, in %. */
export function moistureFigure(air: Air): Figure {
  const used = Math.max(air.tempC, coldestInTable)
  const { w, k, k1, k2 } = sorption(used)
  return figure(equilibriumMoisture(air), '%', {
    formula: '1800/W × (K·h/(1 − K·h) + (K1·K·h + 2·K1·K2·K²·h²)/(1 + K1·K·h + K1·K2·K²·h²))',
    inputs: {
      'temperature °C': air.tempC,
      'temperature used °C': used,
      h: air.rhPercent / 100,
      W: w,
      K: k,
      K1: k1,
      K2: k2,
    },
    source,
  })
}
