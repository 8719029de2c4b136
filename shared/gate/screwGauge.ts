import { mmPerInch } from '../units/inch.ts'

/** Screw gauges that are made: 0 to 24. */
export const largestGauge = 24

/**
 * Shank diameter in mm of a wood screw by its gauge number: D = 0.060 + 0.013 N in inches (ASME B18.6.1). A No. 8 is
 * 4.1656 mm, a No. 10 is 4.826 mm. Throws RangeError unless the gauge is a whole number from 0 to 24.
 */
export function gaugeDiameter(gauge: number): number {
  if (!Number.isInteger(gauge) || gauge < 0 || gauge > largestGauge)
    throw new RangeError(`gaugeDiameter needs a whole gauge from 0 to ${largestGauge}, got ${gauge}`)
  return (0.06 + 0.013 * gauge) * mmPerInch
}
