import { existsSync, linkSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import Sqlite from 'better-sqlite3'
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
 * Makes a new, empty book. It is laid out under a temporary name and only then gets its own, so that a power cut while it is made
 * leaves no half book behind: a file under the book's name is always a whole one.
 */
export function createBook(path: string, migrations: Migration[]): void {
  mkdirSync(dirname(path), { recursive: true })
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
