import { fractionGlyphs } from './fractionGlyphs.ts'
import { checkLength, inchParts, isOnTape, type InchDivision, type InchParts } from './inch.ts'
import type { LengthUnit } from '../job/job.ts'

const minus = '−'

/** Rounds as one would on paper: on the decimal figures, halves away from nothing, so 1803.45 gives 1803.5. */
function roundedFigures(mm: number, places: number): string {
  const size = Math.abs(mm)
  const rounded = size < 1e-6 ? 0 : Number(`${Math.round(Number(`${size}e${places}`))}e-${places}`)
  return `${mm < 0 && rounded > 0 ? minus : ''}${rounded.toFixed(places)}`
}

/**
 * Millimetres for a column of figures, without the unit: always the same places after the point.
 * writeMm(1803.4) is 1803.4, writeMm(1830) is 1830.0, writeMm(1830, 0) is 1830. places is 0 to 6.
 * Every function here throws RangeError for what is no finite length within 1000 km, and none prints -0.
 */
export function writeMm(mm: number, places = 1): string {
  checkLength(mm)
  return roundedFigures(mm, places)
}

/** Millimetres for running text, without closing noughts: 1830, 1803.4, 930.275 (places is the most shown). */
export function writeShortMm(mm: number, places = 1): string {
  const figures = writeMm(mm, places)
  return figures.includes('.') ? figures.replace(/\.?0+$/, '') : figures
}

/** 36 ⅝ of { whole: 36, numerator: 5, denominator: 8 }; the sign is left to the caller. */
function wholeAndFraction({ whole, numerator, denominator }: InchParts): string {
  if (numerator === 0) return String(whole)
  const fraction = fractionGlyphs(numerator, denominator)
  return whole === 0 ? fraction : `${whole} ${fraction}`
}

/** Inches to the nearest division, no feet: 1803.4 is 71″, 930.275 is 36 ⅝″, 931.8625 is 36 ¹¹⁄₁₆″. */
export function writeInches(mm: number, division: InchDivision = 16): string {
  const parts = inchParts(mm, division)
  return `${parts.negative ? minus : ''}${wholeAndFraction(parts)}″`
}

/** Feet and inches to the nearest division: 1803.4 is 5′ 11″, 1828.8 is 6′ 0″; under a foot only inches, 6″. */
export function writeFeet(mm: number, division: InchDivision = 16): string {
  const parts = inchParts(mm, division)
  const feet = Math.floor(parts.whole / 12)
  if (feet === 0) return writeInches(mm, division)
  const rest = parts.whole % 12
  const inches =
    rest === 0 && parts.numerator > 0
      ? `0 ${wholeAndFraction({ ...parts, whole: 0 })}`
      : wholeAndFraction({ ...parts, whole: rest })
  return `${parts.negative ? minus : ''}${feet}′ ${inches}″`
}

/** A length with its unit: 1803.4 mm (to 0.1, as cut) or 71″ (to a 16th). */
export const writeLength = (mm: number, unit: LengthUnit): string =>
  unit === 'mm' ? `${writeShortMm(mm)} mm` : writeInches(mm)

/** A length in both units, the job's own first: 1803.4 mm · 71″, or 71″ · 1803.4 mm. */
export const writeBoth = (mm: number, unit: LengthUnit): string =>
  unit === 'mm'
    ? `${writeLength(mm, 'mm')} · ${writeLength(mm, 'in')}`
    : `${writeLength(mm, 'in')} · ${writeLength(mm, 'mm')}`

/**
 * A kept length as text for an entry field, in keys found on a keyboard, that readLength reads back as the same
 * length without asking: 1830, 36 5/8". In a job in inches, what isn't on a 64th is given in mm: 1830 mm.
 * Three figures after the point get a closing nought (930.2750), since three alone would be asked about.
 * Lengths of 0 and from 0.05 mm up, kept to 0.0001 mm.
 */
export function writeForField(mm: number, unit: LengthUnit): string {
  if (unit === 'in' && isOnTape(mm)) {
    const { whole, numerator, denominator } = inchParts(mm, 64)
    if (numerator === 0) return `${whole}"`
    return `${whole === 0 ? '' : `${whole} `}${numerator}/${denominator}"`
  }
  const figures = writeShortMm(mm, 4).replace(/(\.\d{3})$/, '$10')
  return unit === 'in' ? `${figures} mm` : figures
}
