import type { LengthUnit } from '../job/job.ts'
import { writeInches } from '../units/writeLength.ts'

/** A number of a working: five figures that count, more only before the point. 1951.0978 is 1951.1, 0.00292872 is 0.0029287. */
export function workedNumber(value: number): string {
  const digits = Math.max(5, Math.trunc(Math.abs(value)).toString().length)
  const rounded = Number(value.toPrecision(digits))
  const places = rounded === 0 ? 0 : Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(rounded))))
  const text = rounded.toFixed(Math.min(places, 20))
  return (text.includes('.') ? text.replace(/\.?0+$/, '') : text).replace(/^-0$/, '0').replace('-', '−')
}

/** What a working came to, with its unit; a length of an inch job in inches first. */
export function workedResult({ value, unit }: { value: number; unit: string }, job: LengthUnit): string {
  const own =
    unit === '°' ? `${workedNumber(value)}°` : `${workedNumber(value)} ${unit === 'no.' ? '' : unit}`.trim()
  return unit === 'mm' && job === 'in' && Math.abs(value) >= 12.7 ? `${writeInches(value)} (${own})` : own
}
