/**
 * One inch in mm, exactly, and one foot: fixed by the international yard and pound agreement of 1959
 * (NIST SP 811, 2008, appendix B.6: 1 in = 2.54 E+01 mm, 1 ft = 3.048 E-01 m, both exact).
 */
export const mmPerInch = 25.4
export const mmPerFoot = 304.8

/** The divisions a tape or rule carries. 2 is halves, 64 is sixty-fourths. */
export type InchDivision = 2 | 4 | 8 | 16 | 32 | 64

/** A length cut up as on a tape. whole and numerator are never negative; the sign stands apart and 0 has none. */
export type InchParts = { negative: boolean; whole: number; numerator: number; denominator: number }

/** Slack in divisions of an inch for what binary numbers lose; far under anything that can be marked. */
const slack = 1e-9

/** The longest length that is written, mm: 1000 km. Past it a number is a mistake of the program. */
const longest = 1e9

/** Refuses what is no length, so that NaN is never printed. Throws RangeError. */
export function checkLength(mm: number): void {
  if (!(Math.abs(mm) <= longest)) throw new RangeError(`A length in mm was expected, got ${mm}`)
}

/**
 * A length as whole inches and a reduced fraction, to the nearest division, halves rounded up in size.
 * inchParts(930.275, 16) is 36 and 5/8; inchParts(406.2, 16) is 16 and 0/1, since 15.992 rounds up.
 * Throws RangeError unless mm is finite and within 1000 km.
 */
export function inchParts(mm: number, division: InchDivision = 16): InchParts {
  checkLength(mm)
  const marks = Math.floor((Math.abs(mm) * division * 5) / 127 + 0.5 + slack)
  const whole = Math.floor(marks / division)
  let numerator = marks % division
  let denominator: number = division
  while (numerator % 2 === 0 && denominator > 1) {
    numerator /= 2
    denominator /= 2
  }
  return { negative: mm < 0 && marks > 0, whole, numerator, denominator }
}

/** Whether a length in mm falls on a 64th of an inch, so that inches state it exactly. 930.275 does, 1830 doesn't. */
export function isOnTape(mm: number): boolean {
  const marks = (Math.abs(mm) * 64 * 5) / 127
  return Math.abs(marks - Math.round(marks)) < 1e-6
}
