import type { PriceBook } from '../shared/pricing/book.ts'
import type { Price, Rise } from '../shared/pricing/price.ts'
import type { Connection } from './connection.ts'
import { itemFrom, priceFrom, supplierFrom, supplyFrom, type PriceQuestions } from './priceRows.ts'

/** Rows read in one go: under 10 ms on a slow laptop, so that a window's own work comes in between. */
const rowsAtOnce = 2000

/** What was read before and still holds: a finished rise's prices never change, the lines by the mark they were read under. */
type Kept = {
  seen: unknown
  written: number
  lines: { written: number; read: Omit<PriceBook, 'prices'> } | null
  ofRise: Map<number, Price[]>
}

export type PriceReading = {
  /** Reads the book; each step reads some, the last gives all of it. Prices of undone or unfinished rises are left out. */
  steps: () => Generator<void, PriceBook>
  /** The same without its prices. */
  lineSteps: () => Generator<void, Omit<PriceBook, 'prices'>>
  /** To be called after a line, a supplier or how one keeps the other was written. */
  linesWritten: () => void
  /** To be called after prices were taken out of the book. */
  forget: () => void
}

type Desk = { connection: Connection; ask: PriceQuestions; kept: Kept }
type Lines = Omit<PriceBook, 'prices'>

function* readLines({ connection: { db, read }, ask, kept }: Desk): Generator<void, Lines> {
  if (kept.lines?.written === kept.written) return kept.lines.read
  const { written } = kept
  const rows = read(() => ask.items.all())
  const items: PriceBook['items'] = []
  for (let from = 0; from < rows.length; from += rowsAtOnce) {
    items.push(...rows.slice(from, from + rowsAtOnce).map(itemFrom))
    yield
  }
  const suppliers = read(() => ask.suppliers.all()).map(supplierFrom)
  const found = { items, suppliers, supplies: read(() => ask.supplies.all()).map(supplyFrom) }
  if (!db.inTransaction) kept.lines = { written, read: found }
  return found
}

function* readPrices({ connection: { db, read }, ask, kept }: Desk, rise: Rise): Generator<void, Price[]> {
  const known = kept.ofRise.get(rise.id)
  if (known) return known
  const prices: Price[] = []
  for (;;) {
    const rows = read(() => ask.pricesOfRise.all(rise.id, prices.at(-1)?.id ?? 0, rowsAtOnce))
    for (const row of rows) prices.push(priceFrom(row, rise))
    if (rows.length < rowsAtOnce) break
    yield
  }
  if (!db.inTransaction) kept.ofRise.set(rise.id, prices)
  return prices
}

/**
 * Reads the price book and keeps what it read, since prices are asked for again and again and hardly change. What another window's
 * program wrote is noticed; nothing is kept of what is read in the middle of a writing, which may still be taken back.
 */
export function priceReading(connection: Connection, ask: PriceQuestions): PriceReading {
  const { db, read } = connection
  const kept: Kept = { seen: null, written: 0, lines: null, ofRise: new Map() }
  const desk: Desk = { connection, ask, kept }
  const forget = (): void => {
    kept.lines = null
    kept.ofRise = new Map()
  }

  function* lineSteps(): Generator<void, Lines> {
    const seen = read(() => db.pragma('data_version', { simple: true }))
    if (seen !== kept.seen) forget()
    kept.seen = seen
    return yield* readLines(desk)
  }

  function* steps(): Generator<void, PriceBook> {
    const found = yield* lineSteps()
    const standing = read(() => ask.rises.all()).filter(({ undoneAt }) => undoneAt === null)
    const prices: Price[] = []
    for (const rise of standing.reverse())
      for (const price of yield* readPrices(desk, rise)) prices.push(price)
    return { ...found, prices }
  }

  return { steps, lineSteps, forget, linesWritten: () => void (kept.written += 1) }
}
