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

/** Writes the index of words anew from the jobs and customers themselves. */
export function wordsAgain(db: Database): void {
  const words = searchRoom({
    db,
    now: () => '',
    read: (work) => work(),
    write: (work) => work(),
    close: () => {},
  })
  const withNotes = withNoteWords(db)
  db.exec('DELETE FROM job_words; DELETE FROM customer_words')
  const jobs = db.prepare<[], StoredJob>(
    `SELECT ${jobColumns} FROM jobs JOIN customers ON customers.id = jobs.customer_id`,
  )
  const customers = db.prepare<[], Customer>('SELECT id, name, address, town, phone, email FROM customers')
  db.transaction(() => {
    for (const stored of jobs.all()) {
      const job = readable(stored)
      if (job) words.keepJob(withNotes(job))
    }
    for (const customer of customers.all()) words.keepCustomer(customer)
  })()
}
