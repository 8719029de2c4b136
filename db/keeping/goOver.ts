import { createHash } from 'node:crypto'
import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'
import type { BookCopy, DamagedPaper } from '../../shared/keeping/keepingModel.ts'
import { asBookProblem, BookProblem } from '../bookProblem.ts'
import { paperName } from '../papers.ts'
import { listCopies, pathOfCopy } from './copies.ts'
import { withCopy } from './soundCopy.ts'
import { unwatched } from './workStand.ts'

/** latest: the newest layout this program knows. */
export type GoOverTask = { bookPath: string; latest: number }
export type GoneOver = { papers: number; damaged: DamagedPaper[] }

type Head = {
  id: number
  jobId: number
  kind: 'job-card' | 'quotation'
  revision: number
  issuedAt: string
  job: string
}
type Sealed = { bytes: Uint8Array; sha256: string }

const headColumns = `papers.id, papers.job_id AS jobId, papers.kind, papers.revision, papers.issued_at AS issuedAt,
  jobs.number || ', ' || jobs.title AS job`

const sealedOf = (db: Database, id: number): Sealed | undefined =>
  db.prepare<[number], Sealed>('SELECT bytes, sha256 FROM papers WHERE id = ?').get(id)

const holds = (sealed: Sealed | undefined): sealed is Sealed =>
  sealed !== undefined && createHash('sha256').update(sealed.bytes).digest('hex') === sealed.sha256

/** A paper that can't even be read is damaged too. */
function isAsIssued(db: Database, id: number): boolean {
  try {
    return holds(sealedOf(db, id))
  } catch {
    return false
  }
}

/** The same paper as it lies in a copy, if it is whole there. */
function wholeIn(path: string, latest: number, head: Head): Sealed | undefined {
  return withCopy(path, latest, (db) => {
    const there = db
      .prepare<[number], Omit<Head, 'job'>>(
        'SELECT id, job_id AS jobId, kind, revision, issued_at AS issuedAt FROM papers WHERE id = ?',
      )
      .get(head.id)
    const same =
      there?.jobId === head.jobId &&
      there.kind === head.kind &&
      there.revision === head.revision &&
      there.issuedAt === head.issuedAt
    const sealed = same ? sealedOf(db, head.id) : undefined
    return holds(sealed) ? sealed : undefined
  })
}

/** The newest copy that holds a paper as it was issued. Copies that can't be opened are passed over. */
function copyWith(bookPath: string, latest: number, head: Head): BookCopy | null {
  const found = listCopies(bookPath).find(({ name }) => {
    try {
      return wholeIn(pathOfCopy(bookPath, name), latest, head) !== undefined
    } catch (problem) {
      if (problem instanceof BookProblem) return false
      throw problem
    }
  })
  return found ?? null
}

/**
 * Goes over every issued paper: whether its bytes are still those whose hash was kept with them. Reads by a connection of its own. What isn't is named with
 * its job and, where there is one, the copy that holds it whole.
 */
export function goOverPapers({ bookPath, latest }: GoOverTask, stand = unwatched): GoneOver {
  return asBookProblem(() => {
    const db = new Sqlite(bookPath, { readonly: true, fileMustExist: true })
    try {
      const heads = db
        .prepare<[], Head>(
          `SELECT ${headColumns} FROM papers JOIN jobs ON jobs.id = papers.job_id ORDER BY papers.id`,
        )
        .all()
      stand.begin('going over', heads.length)
      const damaged = heads
        .filter(({ id }, before) => {
          stand.reach(before)
          return !isAsIssued(db, id)
        })
        .map((head) => ({
          paperId: head.id,
          name: paperName(head),
          job: head.job,
          goodIn: copyWith(bookPath, latest, head),
        }))
      return { papers: heads.length, damaged }
    } finally {
      db.close()
    }
  }, bookPath)
}

const noneWhole = (): BookProblem =>
  new BookProblem('refused', 'No copy holds that paper whole any more. Issue it again from its job.')

/**
 * Puts a damaged paper's own bytes and hash back from a copy that holds it whole. The one time the guard over issued papers is lifted, inside one
 * writing: what goes in is what was issued, and nothing else of the paper is touched.
 */
export function putPaperBack(db: Database, { bookPath, latest }: GoOverTask, paperId: number): void {
  const head = db
    .prepare<[number], Head>(
      `SELECT ${headColumns} FROM papers JOIN jobs ON jobs.id = papers.job_id WHERE papers.id = ?`,
    )
    .get(paperId)
  const copy = head && copyWith(bookPath, latest, head)
  const whole = head && copy ? wholeIn(pathOfCopy(bookPath, copy.name), latest, head) : undefined
  if (!whole) throw noneWhole()
  const guard = db
    .prepare<[], string>("SELECT sql FROM sqlite_schema WHERE type = 'trigger' AND name = 'papers_stand'")
    .pluck()
    .get()
  if (guard === undefined) throw noneWhole()
  db.exec('DROP TRIGGER papers_stand')
  db.prepare('UPDATE papers SET bytes = ?, sha256 = ? WHERE id = ?').run(whole.bytes, whole.sha256, paperId)
  db.exec(guard)
}
