import { applyChanges, type KeptChange } from '../shared/job/applyChange.ts'
import type { FoundJobs } from '../shared/job/found.ts'
import type { Change, Job, JobRow, Overlap, Stage } from '../shared/job/job.ts'
import { good, type Result } from '../shared/problem.ts'
import type { Connection } from './connection.ts'
import type { CustomersRoom } from './customers.ts'
import { foundJobs, mostFound } from './foundJobs.ts'
import type { JobFilter } from './jobFilter.ts'
import { rowFrom } from './jobRows.ts'
import { jobStatements } from './jobStatements.ts'
import { jobWriting, type NewJob } from './jobWriting.ts'

/** One line of what was ever changed on a job. */
export type LoggedChange = KeptChange & { at: string }

export type JobsRoom = {
  /** The jobs that hold all the words, best first, of the newest 500 that do; without words all, the newest first, 1000 at most. */
  list: (search: string, stage: Stage | null) => FoundJobs
  /** The same with whatever else is asked of them. */
  find: (search: string, filter: JobFilter) => FoundJobs
  /** The jobs promised up to a day (ISO) that aren't hung, the earliest first. */
  due: (upTo: string, most: number) => JobRow[]
  /** The jobs that timber may be bought for, by id: those ordered or being made, promised or accepted, and the 500 others touched last that aren't hung. */
  toOrder: () => number[]
  open: (id: number) => Job | undefined
  create: (job: NewJob) => Job
  /** Makes the changes, all or none; undefined when there is no such job. */
  change: (id: number, changes: Change[]) => Result<{ job: Job; overlaps: Overlap[] }> | undefined
  /** The same gate again for the same customer: a new enquiry without a due date, its notes what is given of the old job. */
  repeat: (id: number, notesOf?: (old: Job) => string) => Job | undefined
  /** Everything ever changed on a job, oldest first. */
  changes: (id: number) => LoggedChange[]
  /** How many jobs there are, and how many of them are samples. */
  count: () => { jobs: number; sampleJobs: number }
}

type StoredChange = Record<'path' | 'before' | 'after' | 'at', string>

const loggedFrom = ({ path, before, after, at }: StoredChange): LoggedChange => ({
  path,
  before: JSON.parse(before) as unknown,
  after: JSON.parse(after) as unknown,
  at,
})

/** The jobs' room of the book. */
export function jobsRoom(connection: Connection, customers: CustomersRoom): JobsRoom {
  const { read, write } = connection
  const run = jobStatements(connection)
  const found = foundJobs(connection)
  const { stored, add, rewrite } = jobWriting(connection, customers, run)

  const change = (id: number, changes: Change[]): Result<{ job: Job; overlaps: Overlap[] }> | undefined => {
    const before = stored(id)
    if (!before) return undefined
    const applied = applyChanges(before, changes)
    if (!applied.ok) return applied
    const { job, kept, overlaps } = applied.value
    return good({ job: rewrite(before, job, kept), overlaps })
  }

  const create = (job: NewJob): Job => {
    const { id } = customers.take(job.customer, job.sample ?? false)
    return add({ job, customerId: id, entry: { spec: job.spec, typed: {} } })
  }

  const repeat = (id: number, notesOf?: (old: Job) => string): Job | undefined => {
    const job = stored(id)
    if (!job) return undefined
    const { customer, title, unit, entry } = job
    const again = { customer, title, due: null, unit, spec: entry.spec, notes: notesOf?.(job) ?? '' }
    const made = add({ job: again, customerId: customer.id, entry })
    run.log.run(made.id, 'madeAgainFrom', 'null', JSON.stringify(job.number), made.createdAt)
    return made
  }

  return {
    list: (search, stage) => read(() => found(search, { stage })),
    find: (search, filter) => read(() => found(search, filter)),
    due: (upTo, most) => read(() => run.due.all(upTo, most)).map(rowFrom),
    toOrder: () => read(() => run.toOrder.all(mostFound, mostFound)),
    open: (id) => read(() => stored(id)),
    create: (job) => write(() => create(job)),
    change: (id, changes) => write(() => change(id, changes)),
    repeat: (id, notesOf) => write(() => repeat(id, notesOf)),
    changes: (id) => read(() => run.logged.all(id)).map(loggedFrom),
    count: () => read(() => run.count.get()) ?? { jobs: 0, sampleJobs: 0 },
  }
}
