import type { Database } from 'better-sqlite3'
import { BookProblem } from '../bookProblem.ts'
import { jobColumns, jobFrom, type StoredJob } from '../jobRows.ts'
import { withNoteWords } from '../noteWords.ts'
import { searchRoom } from '../search.ts'
import type { Customer, Job } from '../../shared/job/job.ts'

/** A job from its row; where its gate can't be read it can still be found by its name. */
function readable(stored: StoredJob): Job | undefined {
  try {
    return jobFrom(stored)
  } catch (problem) {
    if (problem instanceof BookProblem || problem instanceof SyntaxError) return undefined
    throw problem
  }
}

/** Writes the index of words anew from the jobs and customers themselves, all or nothing. Jobs are read one at a time: a large book doesn't fit the memory. */
export function wordsAgain(db: Database): void {
  const words = searchRoom({
    db,
    now: () => '',
    read: (work) => work(),
    write: (work) => work(),
    close: () => {},
  })
  const withNotes = withNoteWords(db)
  const one = db.prepare<[number], StoredJob>(
    `SELECT ${jobColumns} FROM jobs JOIN customers ON customers.id = jobs.customer_id WHERE jobs.id = ?`,
  )
  const ids = db.prepare<[], number>('SELECT id FROM jobs ORDER BY id').pluck()
  const customers = db.prepare<[], Customer>('SELECT id, name, address, town, phone, email FROM customers')
  db.transaction(() => {
    db.exec('DELETE FROM job_words; DELETE FROM customer_words')
    for (const id of ids.all()) {
      const stored = one.get(id)
      const job = stored && readable(stored)
      if (job) words.keepJob(withNotes(job))
    }
    for (const customer of customers.all()) words.keepCustomer(customer)
  }).immediate()
}

/** Whether the index of jobs is still to be written: a step of the book's layout leaves it empty, or a power cut came right after one. */
const wordsMissing = (db: Database): boolean =>
  db
    .prepare<[], number>('SELECT EXISTS (SELECT 1 FROM jobs) AND NOT EXISTS (SELECT 1 FROM job_words)')
    .pluck()
    .get() === 1

/** Fills the index of words where a new layout has left it empty: some 8 s for 100,000 jobs, once. */
export function fillWords(db: Database): void {
  if (wordsMissing(db)) wordsAgain(db)
}
