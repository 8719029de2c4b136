import { existsSync, linkSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { dirname } from 'node:path'
import Sqlite from 'better-sqlite3'
import { BookProblem } from './bookProblem.ts'
import { bookMark, makeSafe } from './connection.ts'
import { migrate, type Migration } from './migrate.ts'
import { forceFolderToDisk, forceToDisk } from './verifiedCopy.ts'

/** Gives the finished file its name, unless another window has been quicker: then that one's book stands. */
function giveName(made: string, path: string): void {
  try {
    linkSync(made, path)
  } catch (error) {
    if (existsSync(path)) return
    // Some disks (memory sticks) know no second name for a file; a rename does there.
    if (!(error instanceof Error)) throw error
    renameSync(made, path)
  }
  forceFolderToDisk(path)
}

/**
 * What was last written to a book waits in a file beside it. Where that file lies without its book, the book has been moved or removed:
 * a new one in its place would take those pages for its own and be spoilt, and they may be all that is left.
 */
function refuseRemains(path: string): void {
  const waiting = `${path}-wal`
  if (!existsSync(waiting)) return
  if (statSync(waiting).size > 0)
    throw new BookProblem(
      'damaged',
      'The job book is missing though part of it is still in its folder. Bring the book back there; nothing was changed.',
    )
  rmSync(waiting)
}

/**
 * Makes a new, empty book. It is laid out under a temporary name and only then gets its own, so that a power cut while it is made
 * leaves no half book behind: a file under the book's name is always a whole one.
 */
export function createBook(path: string, migrations: Migration[]): void {
  mkdirSync(dirname(path), { recursive: true })
  refuseRemains(path)
  const made = `${path}.new-${process.pid}`
  rmSync(made, { force: true })
  try {
    const db = new Sqlite(made)
    try {
      db.pragma(`application_id = ${bookMark}`)
      makeSafe(db)
      migrate(db, migrations)
      db.pragma('wal_checkpoint(TRUNCATE)')
    } finally {
      db.close()
    }
    forceToDisk(made)
    giveName(made, path)
  } finally {
    for (const rest of [made, `${made}-wal`, `${made}-shm`]) rmSync(rest, { force: true })
  }
}
