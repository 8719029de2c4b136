import { connect } from '../../db/connection.ts'
import { openBook, type Book } from '../../db/open.ts'
import { dayOf } from '../../electron/calendar.ts'
import { addSample } from '../../electron/handlers/sampleCards.ts'
import { makeShelf } from '../../electron/printing/shelf.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { seeded, type Draws } from '../bench/seeded.ts'
import { bookToday } from './course.ts'
import { orderRows } from './orderRows.ts'
import { jobRows, type Frozen } from './rows.ts'
import { smallPdf } from './smallPdf.ts'

const now = (): string => `${bookToday}T09:00:00.000Z`

/** The merchants' lists of ten years, two a year, each of every line in the price book. */
const lists = Array.from(
  { length: 20 },
  (_, place) => `${2016 + Math.floor(place / 2)}-${place % 2 ? '10' : '04'}-01`,
)

function priceHistory(book: Book, { between }: Draws): void {
  const { prices } = book.prices.book()
  for (const [place, startsOn] of lists.entries())
    book.rises.add({
      origin: `List of ${startsOn}`,
      stamp: null,
      at: `${startsOn}T09:00:00.000Z`,
      prices: prices.map(({ itemId, supplierId, unit, size, pence: stands }) => ({
        ...{ itemId, supplierId, unit, size, startsOn },
        pence: pence(Math.max(1, Math.round((stands * (55 + 2 * place + between(0, 4))) / 100))),
      })),
    })
}

/** The made-up workshop's sample, whose quotations the others are like, and ten years of prices. */
async function begin(path: string, draws: Draws): Promise<void> {
  const book = openBook(path, { now })
  const { bytes } = smallPdf('A sample paper')
  const paper = async () => ({ bytes, pages: 1 })
  await addSample({
    ...{ book, now, dayOf, makeCard: paper, makeQuotation: paper, makeBenchPaper: paper },
    ...{ shelf: makeShelf(), print: null, log: () => undefined },
  })
  priceHistory(book, draws)
  book.close()
}

/**
 * Makes a book of so many invented jobs over ten years, beside the sample's, at a path where there is none: customers, gates, notes, stages, days, papers,
 * prices, orders. The same count and seed make the same rows. 100,000 jobs take about a minute and 900 MB.
 */
export async function fillLargeBook(path: string, count: number, seed: number): Promise<void> {
  const draws = seeded(seed)
  await begin(path, draws)
  const connection = connect(path, now)
  const { db } = connection
  // A book that is made again from its seed needs no care against power cuts.
  db.pragma('synchronous = OFF')
  db.pragma('cache_size = -200000')
  const money = db
    .prepare<[], string>("SELECT money FROM papers WHERE kind = 'quotation' ORDER BY id")
    .pluck()
    .all()
  const engine = db.prepare<[], string>('SELECT engine FROM papers ORDER BY id').pluck().get() ?? ''
  const frozen: Frozen = { engine, money }
  const addJob = jobRows(connection, { frozen, draws })
  for (let from = 0; from < count; from += 5000)
    connection.write(() => {
      for (let place = from; place < Math.min(count, from + 5000); place += 1) addJob(place, count)
    })
  connection.write(() => orderRows(connection, draws))
  db.pragma('wal_checkpoint(TRUNCATE)')
  connection.close()
}
