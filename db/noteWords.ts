import type { Database } from 'better-sqlite3'
import type { Job } from '../shared/job/job.ts'
import { jobFrom } from './jobRows.ts'
import type { JobStatements } from './jobStatements.ts'
import type { SearchRoom } from './search.ts'

const isThere = (db: Database): boolean =>
  db.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = 'photographs'").get() !== undefined

/**
 * A job as it is given to the word index: what its dated notes and its photographs say stands with its own notes, those taken away left
 * out. A book of an older layout has none of either.
 */
export function withNoteWords(db: Database): (job: Job) => Job {
  if (!isThere(db)) return (job) => job
  const words = db
    .prepare<[number, number], string>(
      `SELECT words FROM job_notes WHERE job_id = ? AND put_away = 0
       UNION ALL SELECT words FROM photographs WHERE job_id = ? AND put_away = 0 AND words <> ''`,
    )
    .pluck()
  return (job) => ({ ...job, notes: [job.notes, ...words.all(job.id, job.id)].join('\n') })
}

/** Notes a job's words again after one of its notes or photographs changed. Called inside the writing that changes it. */
export function wordsKept(
  db: Database,
  words: SearchRoom,
  run: Pick<JobStatements, 'one'>,
): (id: number) => void {
  const whole = withNoteWords(db)
  return (id) => {
    const stored = run.one.get(id)
    if (stored) words.keepJob(whole(jobFrom(stored)))
  }
}
