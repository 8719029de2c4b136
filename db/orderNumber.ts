import type { Database } from 'better-sqlite3'

/**
 * The next free number of an order: the year it is placed in and a place in it, 2026-T01 and on, 2026-T100 after 2026-T99. Orders never
 * leave the book, so that no number is missing or comes again. Those for sample jobs count apart (S-T01). Call it inside the writing that
 * places the order.
 */
export function nextOrderNumber(db: Database, on: string, sample: boolean): string {
  const lead = `${sample ? 'S' : on.slice(0, 4)}-T`
  // U follows T in the alphabet, so the two bound the year's own and the index finds them.
  const last = db
    .prepare<[number, string, string], { place: number | null }>(
      'SELECT max(CAST(substr(number, ?) AS INTEGER)) AS place FROM orders WHERE number >= ? AND number < ?',
    )
    .get(lead.length + 1, lead, `${lead.slice(0, -1)}U`)
  return `${lead}${String((last?.place ?? 0) + 1).padStart(2, '0')}`
}
