import { constants, copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { connect, type Connection } from '../../db/connection.ts'
import { openBook } from '../../db/open.ts'
import { dayOf } from '../../electron/calendar.ts'
import { answer } from '../../electron/handlers/answer.ts'
import type { Context } from '../../electron/handlers/context.ts'
import { makeShelf } from '../../electron/printing/shelf.ts'
import type { Result } from '../../shared/problem.ts'
import type { Effort } from '../bench/row.ts'
import { bookToday } from './course.ts'
import { largeBook } from './largeBook.ts'

/** How many jobs the two books hold that are held against each other; a trial of the shape makes do with few. */
export const bookSizes = ({ quick }: Effort): { small: number; large: number } =>
  quick ? { small: 100, large: 300 } : { small: 1000, large: 100_000 }

/** A generated book open behind the handlers, beside a bare connection to the same file. */
export type OpenLarge = {
  /** Asks as a window would; throws where it is refused. */
  ask: (name: string, payload: unknown) => Promise<unknown>
  answer: (name: string, payload: unknown) => Promise<Result<unknown>>
  bare: Connection
}

const now = (): string => `${bookToday}T09:00:00.000Z`

/** Runs work in a folder with a copy of a generated book's file, which is thrown away again. */
export async function withLargeFile<T>(count: number, work: (path: string) => Promise<T>): Promise<T> {
  const made = await largeBook(count)
  const folder = mkdtempSync(join(tmpdir(), 'bracework-large-'))
  try {
    const path = join(folder, 'large.book')
    copyFileSync(made, path, constants.COPYFILE_FICLONE)
    return await work(path)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Runs work with a copy of a generated book open behind the handlers. */
export const withLargeBook = <T>(count: number, work: (open: OpenLarge) => Promise<T>): Promise<T> =>
  withLargeFile(count, async (path) => {
    const book = openBook(path, { now })
    const bare = connect(path, now)
    const paper = async () => ({ bytes: new TextEncoder().encode('a paper'), pages: 1 })
    const context: Context = {
      ...{ book, now, dayOf, makeCard: paper, makeQuotation: paper, makeBenchPaper: paper },
      ...{ shelf: makeShelf(), print: null, log: () => undefined },
    }
    const asked = (name: string, payload: unknown) => answer(context, name, payload)
    try {
      return await work({
        answer: asked,
        ask: async (name, payload) => {
          const reply = await asked(name, payload)
          if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.problems)}`)
          return reply.value
        },
        bare,
      })
    } finally {
      bare.close()
      book.close()
    }
  })
