import type { DraftSpec } from '../shared/gate/spec.ts'
import type { KeptChange } from '../shared/job/applyChange.ts'
import type { Job, LengthUnit } from '../shared/job/job.ts'
import type { Connection } from './connection.ts'
import type { CustomersRoom, NewCustomer } from './customers.ts'
import { nextJobNumber } from './jobNumber.ts'
import { jobFrom } from './jobRows.ts'
import type { JobStatements } from './jobStatements.ts'
import { withNoteWords } from './noteWords.ts'
import { searchRoom } from './search.ts'

/** What a new job is made from. at says when it was taken in, now unless given. */
export type NewJob = {
  customer: NewCustomer
  title: string
  due: string | null
  unit: LengthUnit
  spec: DraftSpec
  notes?: string
  sample?: boolean
  at?: string
}

/** A new job with its customer known and its entry whole. */
export type JobToAdd = { job: NewJob; customerId: number; entry: Job['entry'] }

export type JobWriting = {
  stored: (id: number) => Job | undefined
  add: (job: JobToAdd) => Job
  rewrite: (before: Job, after: Job, kept: KeptChange[]) => Job
}

/** How a job is put down, each time with the words it is found by and the log of what changed. To be called inside one writing. */
export function jobWriting(connection: Connection, customers: CustomersRoom, run: JobStatements): JobWriting {
  const { db, now } = connection
  const words = searchRoom(connection)
  const withNotes = withNoteWords(db)

  const stored = (id: number): Job | undefined => {
    const found = run.one.get(id)
    return found && jobFrom(found)
  }

  const withWords = (id: number): Job => {
    const job = stored(id)
    if (!job) throw new Error(`job ${id} was written and can't be read`)
    words.keepJob(withNotes(job))
    return job
  }

  const add = ({ job, customerId, entry }: JobToAdd): Job => {
    const { title, due, notes = '', unit, sample = false, at = now() } = job
    const number = nextJobNumber(db, at, sample)
    const cells = [number, customerId, title, due, notes, unit, JSON.stringify(entry), at, at, sample ? 1 : 0]
    return withWords(Number(run.insert.run(...cells).lastInsertRowid))
  }

  /** A customer's details stand on all their jobs, so windows that show one of those must read again. */
  const rewriteCustomer = (before: Job, after: Job): void => {
    if (JSON.stringify(before.customer) === JSON.stringify(after.customer)) return
    customers.rewrite(after.customer)
    for (const { id } of run.others.all(after.customer.id, after.id)) {
      run.touch.run(now(), id)
      withWords(id)
    }
  }

  const rewrite = (before: Job, after: Job, kept: KeptChange[]): Job => {
    const { title, stage, due, notes, unit, entry, id } = after
    rewriteCustomer(before, after)
    run.update.run(title, stage, due, notes, unit, JSON.stringify(entry), now(), id)
    for (const { path, before: was, after: is } of kept)
      run.log.run(id, path, JSON.stringify(was ?? null), JSON.stringify(is ?? null), now())
    return withWords(id)
  }

  return { stored, add, rewrite }
}
