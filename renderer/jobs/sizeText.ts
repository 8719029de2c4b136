import type { JobRow, LengthUnit } from '../../shared/job/job.ts'
import { writeLength } from '../../shared/units/writeLength.ts'

/** A leaf's width and height on one line: '985 × 1830 mm', '38 3/4″ × ?'; '' while neither is known. */
export function sizeText({ width, height }: Pick<JobRow, 'width' | 'height'>, unit: LengthUnit): string {
  if (width === null && height === null) return ''
  const one = (mm: number | null) => (mm === null ? '?' : writeLength(mm, unit).replace(/ mm$/, ''))
  return `${one(width)} × ${one(height)}${unit === 'mm' ? ' mm' : ''}`
}
