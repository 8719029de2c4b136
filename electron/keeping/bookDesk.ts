import { existsSync } from 'node:fs'
import { asBookProblem, BookProblem } from '../../db/bookProblem.ts'
import { wasHere } from '../../db/keeping/copies.ts'
import { takeBackCutRestore } from '../../db/keeping/cutRestore.ts'
import { openBook, type Book, type OpenOptions } from '../../db/open.ts'
import { faultWords } from '../discreet.ts'
import type { BookTrouble, WayOut } from '../../shared/keeping/keepingModel.ts'

/** Where the book lies open, or why it doesn't. book throws the trouble while there is one. open never throws: what is wrong becomes the trouble. */
export type BookDesk = {
  path: string
  book: () => Book
  trouble: () => BookTrouble | null
  /** isNew: whether a new book was made. */
  open: () => { isNew: boolean }
  shut: () => void
  /** Shuts a book in which something was found: requests answer with that from then on. */
  condemn: (problem: unknown) => void
}

const missing = (): BookProblem =>
  new BookProblem(
    'missing',
    'The job book isn’t in its folder any more, though copies of it are. Bring it back there, or open a copy.',
  )

const oddly = (): BookProblem =>
  new BookProblem(
    'damaged',
    'The job book can’t be opened: something in it isn’t as this program keeps it. It was left as it is.',
  )

const waysOut: Record<BookProblem['code'], WayOut[]> = {
  damaged: ['copy', 'salvage', 'fresh', 'again'],
  'not-a-book': ['copy', 'salvage', 'fresh', 'again'],
  missing: ['copy', 'fresh', 'again'],
  newer: ['again', 'copy', 'fresh'],
  full: ['again'],
  'not-writable': ['again'],
  disk: ['again', 'copy'],
  locked: ['again'],
  unsafe: ['again'],
  stopped: ['again'],
  refused: ['again'],
}

function troubleOf(problem: BookProblem, path: string): BookTrouble {
  const anyCopy = wasHere(path)
  const ways = waysOut[problem.code].filter((way) => way !== 'copy' || anyCopy)
  return { code: problem.code, message: problem.message, ways }
}

/** What is read on the first screens, read once: a book that opens but can't show them is damaged. */
function lookOver(book: Book): void {
  book.settings.read()
  book.jobs.count()
  book.jobs.list('', null)
  book.keeping.read()
}

/** A book is never begun anew where one was before. */
function openSound(path: string, options: OpenOptions): Book {
  if (!existsSync(path) && wasHere(path)) throw missing()
  asBookProblem(() => takeBackCutRestore(path), path)
  const book = openBook(path, { ...options, deeds: true })
  try {
    lookOver(book)
    return book
  } catch (problem) {
    book.close()
    throw problem
  }
}

type Standing =
  { book: Book; trouble: null } | { book: null; trouble: { problem: BookProblem; said: BookTrouble } }

/** What was found is in the log already; asking again adds a line to it and not the whole story. */
function toldAlready({ code, message }: BookProblem): BookProblem {
  const problem = new BookProblem(code, message)
  problem.stack = `the book isn’t open (${code})`
  return problem
}

const shutBy = (problem: BookProblem, path: string): Standing => ({
  book: null,
  trouble: { problem: toldAlready(problem), said: troubleOf(problem, path) },
})

/** A desk for the book at a path. log gets what the person doesn't need to read. */
export function bookDesk(path: string, options: OpenOptions, log: (line: string) => void): BookDesk {
  const now: { standing: Standing } = { standing: shutBy(missing(), path) }
  const noted = (error: unknown): Standing => {
    log(`the book: ${faultWords(error)}`)
    return shutBy(error instanceof BookProblem ? error : oddly(), path)
  }
  return {
    path,
    book: () => {
      if (now.standing.book) return now.standing.book
      throw now.standing.trouble.problem
    },
    trouble: () => now.standing.trouble?.said ?? null,
    open: () => {
      const isNew = !existsSync(path)
      try {
        now.standing = { book: openSound(path, options), trouble: null }
      } catch (error) {
        now.standing = noted(error)
      }
      return { isNew: isNew && now.standing.book !== null }
    },
    shut: () => {
      const { book } = now.standing
      now.standing = shutBy(new BookProblem('locked', 'The job book is being put away. Wait a moment.'), path)
      book?.close()
    },
    condemn: (problem) => {
      const { book } = now.standing
      now.standing = noted(problem)
      book?.close()
    },
  }
}
