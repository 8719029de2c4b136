import { statSync } from 'node:fs'
import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'
import { asBookProblem, BookProblem } from '../bookProblem.ts'

/**
 * A book up to this size, bytes, is looked through whole before it is opened: some 50 ms, a few times that from a slow disk. A larger one would keep the
 * window shut for seconds: it is opened after a look at what the first screens need, and looked through beside the window's work.
 */
export const mostBeforeOpening = 48 * 1024 * 1024

/** Whether a book is too large to be looked through before it is opened. */
export const isLarge = (path: string, most = mostBeforeOpening): boolean => statSync(path).size > most

const damaged = (found: unknown): BookProblem =>
  new BookProblem('damaged', 'The job book is damaged. Leave it as it is and bring back a copy of it.', found)

/** Looks through pages of a book, or of one table alone; throws BookProblem 'damaged' at the first fault. */
export function refuseDamaged(db: Database, table?: string): void {
  const found = db.pragma(`quick_check(${table ?? 1})`, { simple: true })
  if (found !== 'ok') throw damaged(found)
}

/** Looks a whole book through by a connection of its own that only reads. Throws BookProblem 'damaged'. */
export function lookThrough({ bookPath }: { bookPath: string }): null {
  return asBookProblem(() => {
    const db = new Sqlite(bookPath, { readonly: true, fileMustExist: true })
    try {
      refuseDamaged(db)
      return null
    } finally {
      db.close()
    }
  }, bookPath)
}
