import { join } from 'node:path'
import { expect, it } from 'vitest'
import { longestTurn } from '../../build/bench/loopWaits.ts'
import { openBook } from '../../db/open.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { openedBook, temporaryFolder, tickingClock } from '../db/temporaryBook.ts'
import { fillPrices, metrePrice } from '../fixtures/prices.ts'
import { sampleSize } from '../fixtures/sample.ts'
import { opened } from '../handlers/opened.ts'
import { filledBook, started } from '../keeping/keptBook.ts'

/** The longest that a window may wait for a turn, ms of work. */
const longest = 50

/** A book with years of jobs, papers and prices in it. Gives its path. */
function largeBook(jobs: number): string {
  const path = filledBook({ jobs, papers: Math.ceil(jobs / 4) })
  const book = openBook(path, { now: tickingClock('2026-02-04T08:00:00.000Z') })
  const { items, supplier } = fillPrices(book)
  const prices = Array.from({ length: 6 * jobs }, (_, place) =>
    metrePrice(Object.values(items)[place % 3] ?? 0, supplier, {
      pence: pence(100 + (place % 900)),
      startsOn: new Date(Date.UTC(2027, 0, 1 + Math.floor(place / 3))).toISOString().slice(0, 10),
    }),
  )
  book.rises.add({ prices, origin: 'years of lists', stamp: null })
  book.close()
  return path
}

it('a very large book is taken out and brought in while the window has its turn', async () => {
  const jobs = sampleSize('turns while a book goes out and in', { usual: 150, long: 5000, of: 'jobs' })
  const from = opened({ book: openedBook(largeBook(jobs)) })
  const folder = temporaryFolder()
  const waits: Record<string, number> = {}
  const least = async (what: string, work: () => Promise<unknown>): Promise<void> => {
    for (let turn = 0; turn < 3 && (waits[what] ?? Infinity) >= longest; turn += 1)
      waits[what] = Math.min(waits[what] ?? Infinity, await longestTurn(work))
  }
  const out = { folder: '' }
  await least('out', async () => (out.folder = (await from.ask('book.takeOut', { folder }))?.folder ?? ''))
  const to = await started(join(temporaryFolder(), 'jobs.book'))
  await least('look', () => to.ask('book.lookInto', { folder: out.folder }))
  await least('in', () => to.ask('book.bringIn', { folder: out.folder, replace: true }))
  const told = Object.entries(waits).map(([what, ms]) => `${what} ${ms.toFixed(0)} ms`)
  process.stdout.write(`a book of ${jobs} jobs: longest waits: ${told.join(', ')}\n`)
  for (const [what, ms] of Object.entries(waits)) expect([what, ms < longest]).toEqual([what, true])
  expect((await to.ask('book.summary', {})).jobs).toBe(jobs)
}, 600_000)
