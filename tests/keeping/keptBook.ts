import { createHash } from 'node:crypto'
import { onTestFinished } from 'vitest'
import { openedBook, type OpenedBook, type Opening } from '../../electron/openedBook.ts'
import type { Gives, RequestName, Takes } from '../../shared/contract.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import { openBook } from '../../db/open.ts'
import { bookPath, newJob, tickingClock } from '../db/temporaryBook.ts'
import { plainBenchPaper, plainCard, plainQuotation } from '../handlers/opened.ts'

/** A book opened as both carriers open it, with what was logged. */
export type KeptBook = OpenedBook & {
  logged: string[]
  ask: <N extends RequestName>(name: N, payload: Takes<N>) => Promise<Gives<N>>
  /** The code and the sentence of what must be refused. */
  refused: <N extends RequestName>(name: N, payload: Takes<N>) => Promise<{ code: string; message: string }>
}

/** Starts the program on a book's file, and closes it when the test is over. */
export async function started(path: string, given: Partial<Opening> = {}): Promise<KeptBook> {
  const logged: string[] = []
  const painters = { makeCard: plainCard, makeQuotation: plainQuotation, makeBenchPaper: plainBenchPaper }
  const options = {
    now: tickingClock(),
    log: (line: string) => void logged.push(line),
    empty: true,
    print: null,
  }
  const book = await openedBook({ path, ...painters, ...options, ...given })
  const closed = { yet: false }
  const close = async (): Promise<void> => {
    if (!closed.yet) await book.close()
    closed.yet = true
  }
  onTestFinished(close)
  return {
    answer: book.answer,
    folder: book.folder,
    said: book.said,
    close,
    logged,
    ask: async <N extends RequestName>(name: N, payload: Takes<N>) => {
      const reply = await book.answer(name, payload)
      if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.problems)}`)
      return reply.value as Gives<N>
    },
    refused: async (name, payload) => {
      const reply = await book.answer(name, payload)
      if (reply.ok) throw new Error(`${name} was answered: ${JSON.stringify(reply.value)}`)
      return reply.problems[0] ?? { code: '', message: '' }
    },
  }
}

/** A paper's bytes: as long as two pages of a book, no stretch of them the same as another's. */
export const paperBytes = (number: number, size = 9000): Uint8Array => {
  const pieces = Array.from({ length: Math.ceil(size / 32) }, (_, place) =>
    createHash('sha256').update(`paper ${number}, piece ${place}`).digest(),
  )
  return new Uint8Array(Buffer.concat(pieces).subarray(0, size))
}

/** A closed book with jobs and issued papers in it. Gives its path. */
export function filledBook({ jobs = 40, papers = 6, path = bookPath() } = {}): string {
  const book = openBook(path, { now: tickingClock('2026-02-02T08:00:00.000Z') })
  book.together(() => {
    for (let place = 1; place <= jobs; place += 1) {
      const customer = { name: `Peg ${place}`, address: '', town: 'Nether Test', phone: '', email: '' }
      const { id, version, number } = book.jobs.create(newJob({ title: `Gate number ${place}`, customer }))
      if (place > papers) continue
      const header = {
        ...{ workshop: 'Test bench', number, title: `Gate number ${place}`, customer, due: null },
        ...{ notes: '', revision: 1, issuedAt: '2026-02-03T09:00:00.000Z' },
      }
      book.papers.issue({
        ...{ jobId: id, version, kind: 'job-card', revision: 1, format: 'a4', engine: '3', pages: 2 },
        ...{ issuedAt: '2026-02-03T09:00:00.000Z', figures: {}, header, bytes: paperBytes(place) },
        spec: standardDraft() as never,
        parts: { leaves: [], cuts: [], holes: [], checks: [] } as never,
      })
    }
  })
  book.close()
  return path
}
