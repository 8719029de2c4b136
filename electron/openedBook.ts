import { existsSync } from 'node:fs'
import { BookProblem } from '../db/bookProblem.ts'
import { openBook, type OpenOptions } from '../db/open.ts'
import type { Result } from '../shared/problem.ts'
import { holdBook } from './bookLock.ts'
import { answer } from './handlers/answer.ts'
import type { MakeCard } from './handlers/context.ts'

/** What opening takes: the book's file, the clock, the card's painter, the log, and a filler for a book that is new. */
export type Opening = OpenOptions & {
  path: string
  makeCard: MakeCard
  log: (line: string) => void
}

/** The book as both carriers use it. close lets another window open it. */
export type OpenedBook = {
  answer: (name: string, payload: unknown) => Promise<Result<unknown>>
  close: () => Promise<void>
}

const alreadyOpen = 'Bracework is already open with this job book. Go on in that window, or close it first.'

/**
 * Takes the book for this process and opens it; where there is none yet, the sample book is made. Throws BookProblem,
 * whose message is for the person: 'locked' when another Bracework has it open, else what the disk or the book has.
 */
export const openedBook = async ({ path, makeCard, log, ...options }: Opening): Promise<OpenedBook> => {
  const lock = await holdBook(path)
  if (!lock) throw new BookProblem('locked', alreadyOpen)
  try {
    const isNew = !existsSync(path)
    const book = openBook(path, options)
    if (isNew) log('a new book was made')
    const context = { book, now: options.now, makeCard, log }
    return {
      answer: (name, payload) => answer(context, name, payload),
      close: async () => {
        book.close()
        await lock.release()
      },
    }
  } catch (problem) {
    await lock.release()
    throw problem
  }
}
