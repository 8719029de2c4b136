import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'
import { asBookProblem, BookProblem } from './bookProblem.ts'

/** Marks a file as a job book of ours, in the place SQLite keeps for it: the letters BRWK. */
export const bookMark = 0x4252574b

/** How long a window waits for another one's writing, ms. */
const patience = 3000

/**
 * One open way to the book's file. Every reading and writing goes through `read` or `write`, which turn what the store throws
 * into the book's own problems. `write` is all or nothing and takes its place in the queue at once, so that what it reads
 * first is still so when it writes; within another `write` it becomes part of that one.
 */
export type Connection = {
  db: Database
  now: () => string
  read: <T>(work: () => T) => T
  write: <T>(work: () => T) => T
  close: () => void
}

/** What must stand on every connection, with the answer each gives back when it does. */
const settings: [name: string, value: string, reads: string | number][] = [
  ['journal_mode', 'WAL', 'wal'],
  ['synchronous', 'FULL', 2],
  ['trusted_schema', 'OFF', 0],
  ['cell_size_check', 'ON', 1],
  ['recursive_triggers', 'ON', 1],
  ['foreign_keys', 'ON', 1],
]

/**
 * Sets the connection up and reads every setting back: with `synchronous` below FULL a power cut could take back what the person
 * was told is kept, so a book that can't be set so is not used. journal_mode comes first, as it resets synchronous.
 * recursive_triggers makes the guards hold for a row replaced by another as well.
 */
export function makeSafe(db: Database): void {
  for (const [name, value, reads] of settings) {
    db.pragma(`${name} = ${value}`)
    const stands = db.pragma(name, { simple: true })
    if (stands !== reads)
      throw new BookProblem(
        'unsafe',
        'The job book can’t be kept safely on this disk. Move it to another disk.',
        {
          name,
          stands,
        },
      )
  }
}

/** Opens a file that is known to be a book. */
export function connect(path: string, now: () => string): Connection {
  const db = asBookProblem(() => new Sqlite(path, { fileMustExist: true, timeout: patience }), path)
  try {
    asBookProblem(() => makeSafe(db), path)
  } catch (problem) {
    db.close()
    throw problem
  }
  return {
    db,
    now,
    read: (work) => asBookProblem(work, path),
    write: (work) => asBookProblem(() => db.transaction(work).immediate(), path),
    close: () => asBookProblem(() => void db.close(), path),
  }
}
