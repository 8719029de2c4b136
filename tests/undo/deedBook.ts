import { onTestFinished } from 'vitest'
import { openBook, type Book } from '../../db/open.ts'
import { bookPath } from '../db/temporaryBook.ts'

/** A clock that goes on ten seconds with each look, so that no two deeds are one typing; the same over reopenings. */
export function slowClock(start = '2026-03-02T08:00:00.000Z', step = 10_000): () => string {
  let looks = 0
  return () => new Date(Date.parse(start) + step * looks++).toISOString()
}

/** A real book that keeps deeds and can be closed and opened again, as a restart does. */
export function deedBook(now = slowClock()) {
  const path = bookPath()
  const open = (): Book => openBook(path, { now, deeds: true })
  const held = { book: open() }
  onTestFinished(() => held.book.close())
  return {
    path,
    now,
    get book() {
      return held.book
    },
    reopen: () => {
      held.book.close()
      held.book = open()
    },
  }
}

export type DeedBook = ReturnType<typeof deedBook>

/** Takes the latest deed back, of all or of one job. */
export function back({ book }: { book: Book }, jobId: number | null = null) {
  const [next] = book.undo.list(jobId).back
  if (!next) throw new Error('nothing to take back')
  return book.undo.back({ upTo: next.id, jobId, settle: 'ask' })
}

/** Does again what was taken back last. */
export function again({ book }: { book: Book }, jobId: number | null = null) {
  const [next] = book.undo.list(jobId).again
  if (!next) throw new Error('nothing to do again')
  return book.undo.again({ upTo: next.id, jobId, settle: 'ask' })
}

/**
 * What the book holds and a person can meet: every list and everything behind it. Left out are what counts writings and says when (versions, days of
 * change), and the numbers of prices and of rises: prices brought in again are new rows.
 */
export function stateOf(book: Book): Record<string, unknown> {
  const { rows } = book.jobs.list('', null)
  const jobs = rows.map(({ id }) => {
    const job = book.jobs.open(id)
    return job && { ...job, version: 0, updatedAt: '' }
  })
  const { items, suppliers, supplies, prices } = book.prices.book()
  return {
    jobs,
    found: rows.map(({ number }) => book.jobs.list(number, null).rows.map(({ id }) => id)),
    options: rows.map(({ id }) => book.options.list(id).map((option) => ({ ...option, version: 0 }))),
    notes: rows.map(({ id }) => book.notes.list(id, true)),
    foundByNote: book.jobs
      .list('draughty', null)
      .rows.map(({ id }) => id)
      .sort(),
    usualGates: book.usualGates.list(),
    work: rows.map(({ id }) => book.workDone.list(id)),
    settings: book.settings.read(),
    sections: book.sections.list(),
    ...{ items, suppliers, supplies },
    prices: prices.map(({ itemId, supplierId, unit, size, pence, startsOn }) => [
      ...[itemId, supplierId, unit, size, pence, startsOn],
    ]),
    rack: book.rack.list(),
    count: book.jobs.count(),
  }
}
