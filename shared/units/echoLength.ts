import { isOnTape, mmPerInch } from './inch.ts'
import { writeFeet, writeInches, writeShortMm } from './writeLength.ts'
import type { LengthUnit } from '../job/job.ts'

/** How a length came: all in feet and inches, with feet, or in inches only because of a fraction without a unit. */
export type AsTyped = { imperial: boolean; feet: boolean; bareFraction: boolean }

/** Inches that say no more than is true: exact to a 64th, a decimal if typed as one, else about so many 16ths. */
function trueInches(mm: number, { imperial, feet }: AsTyped): string {
  if (isOnTape(mm)) return feet ? writeFeet(mm, 64) : writeInches(mm, 64)
  if (imperial) return `${writeShortMm(mm / mmPerInch, 3)}″`
  return mm < mmPerInch / 32 ? 'under ¹⁄₁₆″' : `about ${writeInches(mm)}`
}

/**
 * What was understood, in both units, the job's first: 1803.4 mm · 71″, 930.275 mm · 36 ⅝″,
 * 1830 mm · about 72 ¹⁄₁₆″; with feet typed, 1803.4 mm · 5′ 11″. In a job in mm a fraction without a unit leads
 * with what it was taken for, read as inches: 36 ⅝″ · 930.275 mm, and in a sum with millimetres (1200 + 5/8) that
 * is said at the end. mm from 0 up, said to 0.001.
 */
export function echoLength(mm: number, unit: LengthUnit, typed: AsTyped): string {
  const millimetres = `${writeShortMm(mm, 3)} mm`
  const inches = trueInches(mm, typed)
  if (unit === 'in') return `${inches} · ${millimetres}`
  if (!typed.bareFraction) return `${millimetres} · ${inches}`
  if (typed.imperial) return `read as inches: ${inches} · ${millimetres}`
  return `${millimetres} · ${inches}, the fraction read as inches`
}
