import { binaryFraction, type Decimal } from './decimal.ts'

/** The divisions of an inch that tapes carry, as they are typed after the stroke. */
const tapeDivisions = ['2', '4', '8', '16', '32', '64']

/** Whether 5/8 is a fraction found on a tape: under one, over 2, 4, 8, 16, 32 or 64. Takes plain digits. */
export const isTapeFraction = (numerator: string, denominator: string): boolean =>
  tapeDivisions.includes(denominator) && BigInt(numerator) < BigInt(denominator)

/** What is wrong with a typed fraction and the way out; undefined when a tape carries it. */
function faultOf(numerator: string, denominator: string): string | undefined {
  const fraction = `${numerator}/${denominator}`
  if (/^0+$/.test(denominator)) return `${fraction} divides by nothing. Write a fraction such as 5/8.`
  if (!tapeDivisions.includes(denominator))
    return `${fraction} is not on a tape, which carries halves, quarters, 8ths, 16ths, 32nds and 64ths. Use one of these, or a decimal.`
  const [top, bottom] = [BigInt(numerator), BigInt(denominator)]
  if (top < bottom) return undefined
  const whole = `${top / bottom}${top % bottom === 0n ? '' : ` ${top % bottom}/${bottom}`}`
  return `${fraction} is not less than one whole. If that is what you mean, write ${whole}.`
}

/** Reads a tape fraction exactly from its digits, or says what is wrong with it. */
export function readFraction(numerator: string, denominator: string): { value: Decimal } | { wrong: string } {
  const wrong = faultOf(numerator, denominator)
  return wrong === undefined ? { value: binaryFraction(BigInt(numerator), BigInt(denominator)) } : { wrong }
}
