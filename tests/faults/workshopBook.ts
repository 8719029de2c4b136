import { openBook } from '../../db/open.ts'
import { openedBook, type OpenedBook } from '../../electron/openedBook.ts'
import { makeBenchPaper } from '../../electron/makeBenchPaper.ts'
import { makeCard } from '../../electron/makeCard.ts'
import { makeQuotation } from '../../electron/makeQuotation.ts'
import type { Gives, RequestName } from '../../shared/contract.ts'
import { fillPrices, type SmallBook } from '../fixtures/prices.ts'

/** A clock that goes on a second with each look. */
const clock = (): (() => string) => {
  let looks = 0
  return () => new Date(Date.parse('2026-03-02T08:00:00.000Z') + 1000 * looks++).toISOString()
}

/** A book opened as both carriers open it, with the program's own painters. */
export const carried = (path: string): Promise<OpenedBook> =>
  openedBook({
    path,
    now: clock(),
    makeCard,
    makeQuotation,
    makeBenchPaper,
    log: (line) => void process.stderr.write(`${line}\n`),
    print: null,
    empty: true,
  })

/** Asks as a window does, what is sure to be answered. The payload isn't typed, so that a list of requests can be told as data. */
export async function asked<N extends RequestName>(
  { answer }: Pick<OpenedBook, 'answer'>,
  name: N,
  payload: unknown,
): Promise<Gives<N>> {
  const result = await answer(name, payload)
  if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.problems)}`)
  return result.value as Gives<N>
}

/** What a prepared book holds: the prices' ids, and jobs whose gates can be made. */
export type Prepared = SmallBook & { jobs: number[] }

const sizes = [930.5, 985, 1075, 1120.5]

/** Makes a book with prices, lengths kept and four jobs of different sizes, and closes it. Invented. */
export async function prepare(path: string): Promise<Prepared> {
  const book = openBook(path, { now: clock() })
  const small = fillPrices(book)
  for (const use of ['boards', 'ledges', 'braces'])
    book.prices.supply({
      ...{ itemId: small.items[use] ?? 0, supplierId: small.supplier, code: '' },
      ...{ lengths: [3000, 4200, 4800], usual: true },
    })
  book.close()
  const open = await carried(path)
  const jobs: number[] = []
  for (const [place, width] of sizes.entries()) {
    const details = { town: 'Nether Test', phone: '01632 960001', title: 'Side gate', due: null }
    const { id } = await asked(open, 'jobs.create', { ...details, customerName: `Peg Sash ${place + 1}` })
    const changes = [
      { path: 'spec.size.width', value: width, typed: String(width) },
      { path: 'spec.size.height', value: 1700 + 23 * place },
      { path: 'spec.boards.rip', value: 'both' },
    ]
    await asked(open, 'jobs.change', { id, changes })
    jobs.push(id)
  }
  await open.close()
  return { ...small, jobs }
}
