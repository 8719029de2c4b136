import type { Customer } from '../../shared/job/job.ts'
import type { Connection } from '../connection.ts'
import { jobFrom } from '../jobRows.ts'
import { jobStatements } from '../jobStatements.ts'
import { withNoteWords } from '../noteWords.ts'
import { searchRoom } from '../search.ts'

/** Notes the words that jobs and customers are found by, a step for each. */
export function* stagedWords(connection: Connection): Generator<void, void> {
  const { db } = connection
  const words = searchRoom(connection)
  const withNotes = withNoteWords(db)
  const { one } = jobStatements(connection)
  const customers = db.prepare<[], Customer>(
    'SELECT id, name, address, town, phone, email FROM customers ORDER BY id',
  )
  const jobs = db.prepare<[], { id: number }>('SELECT id FROM jobs ORDER BY id')
  db.exec('BEGIN')
  for (const customer of customers.all()) {
    words.keepCustomer(customer)
    yield
  }
  for (const { id } of jobs.all()) {
    const stored = one.get(id)
    if (stored) words.keepJob(withNotes(jobFrom(stored)))
    yield
  }
  db.exec('COMMIT')
}
