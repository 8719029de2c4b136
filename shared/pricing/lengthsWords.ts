import type { BoughtLength } from './buyTimber.ts'

/** A merchant's length as it is said at the counter: 4200 mm is 4.2 m, 3000 mm is 3.0 m, 3962 mm is 3.962 m. */
function metresOf(mm: number): string {
  const metres = String(Math.round(mm * 10) / 10_000)
  return `${metres.includes('.') ? metres : `${metres}.0`} m`
}

/** Whole lengths in words, longest first: '5 lengths: 3 of 4.2 m, 2 of 3.0 m'; of one size '3 lengths of 4.2 m'. */
export function lengthsWords(lengths: readonly BoughtLength[]): string {
  const all = lengths.reduce((sum, { count }) => sum + count, 0)
  const counted = `${all} ${all === 1 ? 'length' : 'lengths'}`
  const [only, ...others] = lengths
  if (!only) return counted
  if (others.length === 0) return `${counted} of ${metresOf(only.size)}`
  const parts = [...lengths].sort((a, b) => b.size - a.size)
  return `${counted}: ${parts.map(({ size, count }) => `${count} of ${metresOf(size)}`).join(', ')}`
}
