import { mmPerInch } from './inch.ts'

/** Standard gravity, m/s², exact (NIST SP 811, 2008, appendix B.8). A leaf of 40 kg weighs 392.266 N. */
export const standardGravity = 9.80665

/** One pound in kg, exact (NIST SP 811, 2008, appendix B.8). */
export const kgPerPound = 0.45359237

/** One pound-force in N: 4.4482216152605. */
export const newtonsPerPoundForce = kgPerPound * standardGravity

/** One pound-force per inch of length in N/mm: 0.175127. What American tables give a screw's hold in. */
export const newtonsPerMmPerPoundInch = newtonsPerPoundForce / mmPerInch

/** One pound-force per square inch in N/mm² (MPa): 0.006894757. */
export const mpaPerPsi = newtonsPerPoundForce / mmPerInch ** 2

/** One pound per cubic foot in kg/m³: 16.018463. */
export const densityPerPoundCubicFoot = kgPerPound / ((12 * mmPerInch) / 1000) ** 3

/** A temperature in °C from °F, exact by definition. 30 °F is −1.111 °C. */
export const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8
