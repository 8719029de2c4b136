import type { Book } from '../../db/open.ts'
import { dayOf } from '../../electron/calendar.ts'
import { answer } from '../../electron/handlers/answer.ts'
import type { Context } from '../../electron/handlers/context.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import type { BenchPaper } from '../../electron/makeBenchPaper.ts'
import type { QuotationInput } from '../../shared/papers/quotationInput.ts'
import type { Gives, RequestName, Takes } from '../../shared/contract.ts'
import type { Job } from '../../shared/job/job.ts'
import { makeShelf, shelving } from '../../electron/printing/shelf.ts'
import { openedBook, tickingClock } from '../db/temporaryBook.ts'

/** A painter whose card is what it was given, as text: what was asked to be painted can be read back from the bytes. */
export const plainCard = async (input: JobCardInput): Promise<{ bytes: Uint8Array; pages: number }> => ({
  bytes: new TextEncoder().encode(JSON.stringify(input)),
  pages: 2,
})

/** The same for a quotation. */
export const plainQuotation = async (
  input: QuotationInput,
): Promise<{ bytes: Uint8Array; pages: number }> => ({
  bytes: new TextEncoder().encode(JSON.stringify(input)),
  pages: 3,
})

/** The same for a paper of several jobs. */
export const plainBenchPaper = async (wanted: BenchPaper): Promise<{ bytes: Uint8Array; pages: number }> => ({
  bytes: new TextEncoder().encode(JSON.stringify(wanted)),
  pages: 1,
})

export const benchPaperIn = (base64: string): BenchPaper =>
  JSON.parse(Buffer.from(base64, 'base64').toString('utf8')) as BenchPaper

export const quotationIn = (base64: string): QuotationInput =>
  JSON.parse(Buffer.from(base64, 'base64').toString('utf8')) as QuotationInput

export const cardIn = (base64: string): JobCardInput =>
  JSON.parse(Buffer.from(base64, 'base64').toString('utf8')) as JobCardInput

export type Opened = Context & {
  book: Book
  logged: string[]
  /** Asks as a window would, and expects a good answer. */
  ask: <N extends RequestName>(name: N, payload: Takes<N>) => Promise<Gives<N>>
  /** Asks what must be refused; gives code and field of each problem. */
  refused: (name: string, payload: unknown) => Promise<string[]>
}

/** A real book behind the handlers. */
export function opened(given: Partial<Context> = {}): Opened {
  const logged: string[] = []
  const shelf = makeShelf()
  const context: Context = {
    book: given.book ?? openedBook(undefined, { deeds: true }),
    now: tickingClock('2026-03-02T12:00:00.000Z'),
    dayOf,
    shelf,
    print: null,
    log: (line) => void logged.push(line),
    ...given,
    makeCard: shelving(shelf, given.makeCard ?? plainCard),
    makeQuotation: shelving(shelf, given.makeQuotation ?? plainQuotation),
    makeBenchPaper: shelving(shelf, given.makeBenchPaper ?? plainBenchPaper),
  }
  return {
    ...context,
    logged,
    ask: async <N extends RequestName>(name: N, payload: Takes<N>) => {
      const result = await answer(context, name, payload)
      if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.problems)}`)
      return result.value as Gives<N>
    },
    refused: async (name, payload) => {
      const result = await answer(context, name, payload)
      return result.ok ? [] : result.problems.map(({ code, field }) => `${code} ${field}`.trim())
    },
  }
}

export const wanted = {
  customerName: 'Peg Sash',
  town: 'Nether Test',
  phone: '01632 960001',
  title: 'Side gate',
  due: null,
}

/** A job whose gate can be made: 36 5/8" by 5' 11", ripped at both edges. */
export async function makeableJob({ ask }: Opened): Promise<Job> {
  const { id } = await ask('jobs.create', { ...wanted, due: '2026-05-31' })
  const changes = [
    { path: 'unit', value: 'in' },
    { path: 'spec.size.width', value: 930.275, typed: '36 5/8"' },
    { path: 'spec.size.height', value: 1803.4, typed: `5' 11"` },
    { path: 'spec.boards.rip', value: 'both' },
  ]
  return (await ask('jobs.change', { id, changes })).job
}
