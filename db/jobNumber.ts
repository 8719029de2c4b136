import type { Database } from 'better-sqlite3'

const written = (lead: string, place: number): string => `${lead}-${String(place).padStart(3, '0')}`

/**
 * The next free job number: the year of creation and a place in it, 2026-001 and on, 2026-1000 after 2026-999. Jobs never leave the book,
 * so that no number is missing or comes again. Samples count apart (S-001), since they can be removed. Call it inside the writing
 * that makes the job.
 */
export function nextJobNumber(db: Database, at: string, sample: boolean): string {
  const lead = sample ? 'S' : at.slice(0, 4)
  // The dot follows the hyphen in the alphabet of numbers, so the two bound the year's own and the index finds them.
  const last = db
    .prepare<[number, string, string], { place: number | null }>(
      'SELECT max(CAST(substr(number, ?) AS INTEGER)) AS place FROM jobs WHERE number >= ? AND number < ?',
    )
    .get(lead.length + 2, `${lead}-`, `${lead}.`)
  return written(lead, (last?.place ?? 0) + 1)
}
