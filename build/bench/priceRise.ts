import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { connect, type Connection } from '../../db/connection.ts'
import { openBook } from '../../db/open.ts'
import { verifiedCopy } from '../../db/verifiedCopy.ts'
import { dayOf } from '../../electron/calendar.ts'
import { makeShelf } from '../../electron/printing/shelf.ts'
import { answer } from '../../electron/handlers/answer.ts'
import type { Context } from '../../electron/handlers/context.ts'
import type { NewPrice, Rise } from '../../shared/pricing/price.ts'
import type { RisePreview } from '../../shared/pricing/quotation.ts'
import { exampleSpecs } from './exampleSpecs.ts'
import { longestWait } from './loopWaits.ts'
import { fillPricedBook, nextList } from './pricedBook.ts'
import { median, quantile, written, type Effort, type Measured } from './row.ts'
import { seeded } from './seeded.ts'
import { variedSpecs } from './variedSpecs.ts'

/** What a rise over a whole book is asked to cost beside its bare writes, and how long a window may wait, ms. */
const [aim, longestAllowed] = [3, 50]
const [lineCount, quotationCount] = [5000, 200]

/** Any number would do; kept, so that every run has the same book. */
const seed = 20261125

/** How long the loop is watched with nothing to do, ms: a busy machine makes it wait all the same. */
const idleMs = 2000

const today = '2026-03-02T09:00:00.000Z'

/** The same writes by hand: prepared once, one commit, to the same tables with their guards. */
function bareWrites({ db }: Connection): (prices: NewPrice[]) => void {
  const rise = db.prepare('INSERT INTO rises (origin, added_at, lines) VALUES (?, ?, ?)')
  const price = db.prepare(
    'INSERT INTO prices (item_id, supplier_id, unit, size, price_pence, starts_on, rise_id) VALUES (?, ?, ?, ?, ?, ?, ?)',
  )
  const finish = db.prepare('UPDATE rises SET finished_at = ? WHERE id = ?')
  return db.transaction((prices: NewPrice[]) => {
    const id = Number(rise.run('bare', today, prices.length).lastInsertRowid)
    for (const { itemId, supplierId, unit, size, pence, startsOn } of prices)
      price.run(itemId, supplierId, unit, size, pence, startsOn, id)
    finish.run(today, id)
  }).immediate
}

const asked = async <T>(context: Context, name: string, payload: unknown): Promise<T> => {
  const result = await answer(context, name, payload)
  if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.problems)}`)
  return result.value as T
}

type Round = { preview: number; apply: number; bare: number; wait: number; effects: number }

/** One list looked at and applied through the requests, then written by hand into a copy of the book. */
async function round(
  context: Context,
  bare: (prices: NewPrice[]) => void,
  prices: NewPrice[],
): Promise<Round> {
  const times = { riseId: 0, preview: 0, apply: 0, effects: 0 }
  const wait = await longestWait(async () => {
    const start = performance.now()
    const { stamp, effects } = await asked<RisePreview>(context, 'prices.preview', { prices })
    const looked = performance.now()
    const rise = await asked<Rise>(context, 'prices.apply', { prices, origin: 'bench', stamp })
    Object.assign(times, {
      riseId: rise.id,
      preview: looked - start,
      apply: performance.now() - looked,
      effects: effects.length,
    })
  })
  const start = performance.now()
  bare(prices)
  const taken = performance.now() - start
  // Taken back, so that every round meets a book with as many prices that count.
  await asked(context, 'prices.undo', { riseId: times.riseId })
  return { ...times, wait, bare: taken }
}

async function rounds(folder: string, count: number): Promise<{ done: Round[]; idle: number }> {
  const path = join(folder, 'rise.book')
  const book = openBook(path, { now: () => today })
  const paper = async () => ({ bytes: new TextEncoder().encode('a paper'), pages: 1 })
  const context: Context = {
    book,
    now: () => today,
    dayOf,
    makeCard: paper,
    makeQuotation: paper,
    makeBenchPaper: paper,
    shelf: makeShelf(),
    print: null,
    log: () => undefined,
  }
  const specs = variedSpecs(exampleSpecs(), quotationCount, seed).map(({ spec }) => spec)
  const draws = seeded(seed)
  const lines = await fillPricedBook(context, { specs, count: lineCount, draws })
  const first = connect(path, () => today)
  const copy = connect(
    verifiedCopy(first.db, (suffix) => join(folder, `bare${suffix}.book`)),
    () => today,
  )
  first.close()
  const bare = bareWrites(copy)
  const idle = await longestWait(() => new Promise((over) => setTimeout(over, idleMs)))
  const done: Round[] = []
  // The first round reads the book and the quotations; a person has them on the screen before thinking of a rise.
  for (let turn = 0; turn <= count; turn += 1)
    done.push(await round(context, bare, nextList(lines, draws, '2026-03-01')))
  copy.close()
  book.close()
  return { done, idle }
}

/**
 * A merchant's list of 5,000 lines over a book with 200 open quotations, looked at and applied, beside the bare writes of the same rows into a
 * copy of the same book in the same run.
 */
export async function priceRise({ quick }: Effort): Promise<Measured> {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-rise-'))
  try {
    const { done, idle } = await rounds(folder, quick ? 1 : 25)
    const [cold, ...warm] = done
    const of = (key: keyof Round): number => median(warm.map((one) => one[key]))
    const value = median(warm.map(({ preview, apply }) => preview + apply))
    const [ratio, wait] = [
      value / of('bare'),
      quantile(
        warm.map((one) => one.wait),
        1,
      ),
    ]
    return {
      row: {
        name: 'price-rise',
        value,
        unit: 'ms',
        against: 'the bare writes of the same rows',
        ratio,
        aim,
        holds: ratio <= aim && wait <= Math.max(longestAllowed, idle),
      },
      said: [
        `${lineCount} lines, ${quotationCount} open quotations, ${cold?.effects ?? 0} of them touched`,
        `looking ${written(of('preview'))} ms, applying ${written(of('apply'))} ms, bare writes ${written(of('bare'))} ms`,
        `longest wait of the window in the middle round ${written(of('wait'))} ms, in any ${written(wait)} ms, asked ${longestAllowed} ms; with nothing to do the machine itself let it wait ${written(idle)} ms`,
        `first of all, with book and quotations still to be read: ${written((cold?.preview ?? 0) + (cold?.apply ?? 0))} ms, longest wait ${written(cold?.wait ?? 0)} ms`,
      ],
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
