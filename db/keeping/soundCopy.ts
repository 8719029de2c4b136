import { closeSync, existsSync, openSync, readSync, rmSync, statSync } from 'node:fs'
import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'
import type { InsideCopy } from '../../shared/keeping/keepingModel.ts'
import { asBookProblem, BookProblem } from '../bookProblem.ts'
import { bookMark } from '../connection.ts'
import { unwatched } from './workStand.ts'

const unsound = (cause?: unknown): BookProblem =>
  new BookProblem('damaged', 'That copy is damaged. Choose another one.', cause)

/** Looks at a file's own mark before the store touches it: an empty or a foreign file would else be taken for something. */
function refuseUnmarked(path: string): void {
  const head = Buffer.alloc(100)
  const file = openSync(path, 'r')
  try {
    readSync(file, head, 0, head.length, 0)
  } finally {
    closeSync(file)
  }
  const marked = head.toString('latin1', 0, 15) === 'SQLite format 3' && head.readUInt32BE(68) === bookMark
  if (!marked || statSync(path).size === 0) throw unsound('not marked as a book')
}

/**
 * Opens a copy to read in it only, after its mark, its soundness and its layout have been looked at; the file isn't touched.
 * Throws BookProblem 'damaged', or 'newer' when the layout is above `latest`.
 */
export function withCopy<T>(path: string, latest: number, work: (db: Database) => T): T {
  return asBookProblem(() => {
    refuseUnmarked(path)
    const alone = !existsSync(`${path}-wal`)
    const db = new Sqlite(path, { readonly: true, fileMustExist: true })
    try {
      if (Number(db.pragma('user_version', { simple: true })) > latest)
        throw new BookProblem(
          'newer',
          'That copy was made by a newer Bracework, and can’t be opened by this one.',
        )
      const found = db.pragma('quick_check(1)', { simple: true })
      if (found !== 'ok') throw unsound(found)
      return work(db)
    } finally {
      db.close()
      // Reading in a file that was a book in use leaves two empty ones beside it.
      if (alone) for (const part of ['-wal', '-shm']) rmSync(`${path}${part}`, { force: true })
    }
  }, path)
}

const jobsChanged = `SELECT jobs.number, customers.name AS customer, jobs.title
  FROM jobs JOIN customers ON customers.id = jobs.customer_id ORDER BY jobs.updated_at DESC, jobs.id DESC LIMIT 5`

/** What a copy holds, for a look before it is opened in the book's place. */
export function lookInside(path: string, latest: number, stand = unwatched): InsideCopy {
  stand.begin('looking through')
  return withCopy(path, latest, (db) => {
    stand.reach(0)
    const count = (table: string): number => Number(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get())
    const lastChange = db.prepare<[], string | null>('SELECT max(updated_at) FROM jobs').pluck().get() ?? null
    const lastJobs = db.prepare<[], InsideCopy['lastJobs'][number]>(jobsChanged).all()
    return { jobs: count('jobs'), papers: count('papers'), lastChange, lastJobs }
  })
}

/** How many jobs of the workshop's own a copy holds. */
export const ownJobsIn = (path: string, latest: number): number =>
  withCopy(path, latest, (db) =>
    Number(db.prepare('SELECT count(*) FROM jobs WHERE sample = 0').pluck().get()),
  )
