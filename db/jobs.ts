import type { DraftSpec } from '../shared/gate/spec.ts'
import { applyChanges, type KeptChange } from '../shared/job/applyChange.ts'
import type { Change, Job, JobRow, LengthUnit, Overlap, Stage } from '../shared/job/job.ts'
import { good, type Result } from '../shared/problem.ts'
import type { Connection } from './connection.ts'
import type { CustomersRoom, NewCustomer } from './customers.ts'
import { nextJobNumber } from './jobNumber.ts'
import { jobColumns, jobFrom, rowColumns, rowFrom, type StoredJob, type StoredRow } from './jobRows.ts'
import { searchRoom, wordsSought } from './search.ts'

/** What a new job is made from. at says when it was taken in, now unless given. */
export type NewJob = {
  customer: NewCustomer
  title: string
  due: string | null
  unit: LengthUnit
  spec: DraftSpec
  sample?: boolean
  at?: string
}

/** One line of what was ever changed on a job. */
export type LoggedChange = KeptChange & { at: string }

/** The most lines the job list shows at once; older ones are found by searching. */
export const mostRows = 1000

export type JobsRoom = {
  /** The jobs that hold all the words, best first; without words all, the newest first. 1000 at most. */
  list: (search: string, stage: Stage | null) => JobRow[]
  open: (id: number) => Job | undefined
  create: (job: NewJob) => Job
  /** Makes the changes, all or none; undefined when there is no such job. */
  change: (id: number, changes: Change[]) => Result<{ job: Job; overlaps: Overlap[] }> | undefined
  /** The same gate again for the same customer: a new enquiry without a due date. */
  repeat: (id: number) => Job | undefined
  /** Everything ever changed on a job, oldest first. */
  changes: (id: number) => LoggedChange[]
  /** How many jobs there are, and how many of them are samples. */
  count: () => { jobs: number; sampleJobs: number }
}

type Insert = { job: NewJob; customerId: number; entry: Job['entry'] }

function statements({ db }: Connection) {
  const from = 'FROM jobs JOIN customers ON customers.id = jobs.customer_id'
  return {
    one: db.prepare<[number], StoredJob>(`SELECT ${jobColumns} ${from} WHERE jobs.id = ?`),
    others: db.prepare<[number, number], StoredJob>(
      `SELECT ${jobColumns} ${from} WHERE jobs.customer_id = ? AND jobs.id <> ?`,
    ),
    all: db.prepare<[Stage | null, number], StoredRow>(
      `SELECT ${rowColumns} ${from} WHERE jobs.stage = ifnull(?, jobs.stage) ORDER BY jobs.created_at DESC, jobs.id DESC LIMIT ?`,
    ),
    sought: db.prepare<[string, Stage | null, number], StoredRow>(
      `SELECT ${rowColumns} FROM job_words JOIN jobs ON jobs.id = job_words.rowid JOIN customers ON customers.id = jobs.customer_id
       WHERE job_words MATCH ? AND jobs.stage = ifnull(?, jobs.stage) ORDER BY rank, jobs.id DESC LIMIT ?`,
    ),
    insert: db.prepare(
      `INSERT INTO jobs (number, customer_id, title, stage, due, unit, entry, created_at, updated_at, sample)
       VALUES (?, ?, ?, 'enquiry', ?, ?, ?, ?, ?, ?)`,
    ),
    update: db.prepare(
      `UPDATE jobs SET title = ?, stage = ?, due = ?, notes = ?, unit = ?, entry = ?, version = version + 1, updated_at = ? WHERE id = ?`,
    ),
    touch: db.prepare('UPDATE jobs SET version = version + 1, updated_at = ? WHERE id = ?'),
    log: db.prepare('INSERT INTO changes (job_id, path, before, after, at) VALUES (?, ?, ?, ?, ?)'),
    logged: db.prepare<[number], { path: string; before: string; after: string; at: string }>(
      'SELECT path, before, after, at FROM changes WHERE job_id = ? ORDER BY id',
    ),
    count: db.prepare<[], { jobs: number; sampleJobs: number }>(
      'SELECT count(*) AS jobs, ifnull(sum(sample), 0) AS sampleJobs FROM jobs',
    ),
  }
}

/** The jobs' room of the book. */
export function jobsRoom(connection: Connection, customers: CustomersRoom): JobsRoom {
  const { db, now, read, write } = connection
  const words = searchRoom(connection)
  const run = statements(connection)

  const stored = (id: number): Job | undefined => {
    const found = run.one.get(id)
    return found && jobFrom(found)
  }

  const added = ({ job, customerId, entry }: Insert): Job => {
    const at = job.at ?? now()
    const sample = job.sample ?? false
    const number = nextJobNumber(db, at, sample)
    const text = JSON.stringify(entry)
    const made = run.insert.run(
      number,
      customerId,
      job.title,
      job.due,
      job.unit,
      text,
      at,
      at,
      sample ? 1 : 0,
    )
    const kept = stored(Number(made.lastInsertRowid))
    if (!kept) throw new Error(`job ${number} was written and can't be read`)
    words.keepJob(kept)
    return kept
  }

  /** A customer's details stand on all their jobs, so windows that show one of those must read again. */
  const rewriteCustomer = (before: Job, after: Job): void => {
    if (JSON.stringify(before.customer) === JSON.stringify(after.customer)) return
    customers.rewrite(after.customer)
    for (const other of run.others.all(after.customer.id, after.id)) {
      run.touch.run(now(), other.id)
      words.keepJob(jobFrom(other))
    }
  }

  const rewrite = (before: Job, after: Job, kept: KeptChange[]): Job => {
    const { title, stage, due, notes, unit, entry, id } = after
    rewriteCustomer(before, after)
    run.update.run(title, stage, due, notes, unit, JSON.stringify(entry), now(), id)
    for (const { path, before: was, after: is } of kept)
      run.log.run(id, path, JSON.stringify(was ?? null), JSON.stringify(is ?? null), now())
    const job = stored(id)
    if (!job) throw new Error(`job ${before.number} was written and can't be read`)
    words.keepJob(job)
    return job
  }

  return {
    list: (search, stage) => {
      const question = wordsSought(search)
      const found = read(() =>
        question === '' ? run.all.all(stage, mostRows) : run.sought.all(question, stage, mostRows),
      )
      return found.map(rowFrom)
    },
    open: (id) => read(() => stored(id)),
    create: (job) =>
      write(() => {
        const customer = customers.take(job.customer, job.sample ?? false)
        return added({ job, customerId: customer.id, entry: { spec: job.spec, typed: {} } })
      }),
    change: (id, changes) =>
      write(() => {
        const before = stored(id)
        if (!before) return undefined
        const applied = applyChanges(before, changes)
        if (!applied.ok) return applied
        const { job, kept, overlaps } = applied.value
        return good({ job: rewrite(before, job, kept), overlaps })
      }),
    repeat: (id) =>
      write(() => {
        const job = stored(id)
        if (!job) return undefined
        const { customer, title, unit, entry } = job
        return added({
          job: { customer, title, due: null, unit, spec: entry.spec },
          customerId: customer.id,
          entry,
        })
      }),
    changes: (id) =>
      read(() => run.logged.all(id)).map((line) => ({
        path: line.path,
        before: JSON.parse(line.before) as unknown,
        after: JSON.parse(line.after) as unknown,
        at: line.at,
      })),
    count: () => read(() => run.count.get()) ?? { jobs: 0, sampleJobs: 0 },
  }
}
