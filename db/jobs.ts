import { applyChanges, type KeptChange } from '../shared/job/applyChange.ts'
import type { Change, Job, JobRow, Overlap, Stage } from '../shared/job/job.ts'
import { good, type Result } from '../shared/problem.ts'
import type { Connection } from './connection.ts'
import type { CustomersRoom } from './customers.ts'
import { bestFirst } from './bestFirst.ts'
import { rowFrom } from './jobRows.ts'
import { jobStatements, type JobStatements } from './jobStatements.ts'
import { jobWriting, type NewJob } from './jobWriting.ts'
import { atStage, wordsSought, wordsTyped } from './search.ts'

/** One line of what was ever changed on a job. */
export type LoggedChange = KeptChange & { at: string }

/** The most lines the job list shows at once; older ones are found by searching. */
export const mostRows = 1000

/** As many of the newest jobs that hold the words are ranked and shown; a word that more hold is followed by another one. */
export const mostFound = 500

/** Lines of the job list. limited: there are more than are given, older ones. */
export type ListedJobs = { rows: JobRow[]; limited: boolean }

export type JobsRoom = {
  /** The jobs that hold all the words, best first, of the newest 500 that do; without words all, the newest first, 1000 at most. */
  list: (search: string, stage: Stage | null) => ListedJobs
  /** The jobs promised up to a day (ISO) that aren't hung, the earliest first. */
  due: (upTo: string, most: number) => JobRow[]
  /** The jobs that timber may be bought for, by id: those ordered or being made, promised or accepted, and the 500 others touched last that aren't hung. */
  toOrder: () => number[]
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

type StoredChange = Record<'path' | 'before' | 'after' | 'at', string>

const loggedFrom = ({ path, before, after, at }: StoredChange): LoggedChange => ({
  path,
  before: JSON.parse(before) as unknown,
  after: JSON.parse(after) as unknown,
  at,
})

const upTo = <T>(rows: T[], most: number): { rows: T[]; limited: boolean } => ({
  rows: rows.slice(0, most),
  limited: rows.length > most,
})

function listed(run: JobStatements, search: string, stage: Stage | null): ListedJobs {
  const question = wordsSought(search)
  if (question === '') {
    const more = mostRows + 1
    const { rows, limited } = upTo(stage === null ? run.all.all(more) : run.allAt.all(stage, more), mostRows)
    return { rows: rows.map(rowFrom), limited }
  }
  const { rows, limited } = upTo(run.sought.all(atStage(question, stage), mostFound + 1), mostFound)
  const ranked = bestFirst(rows, wordsTyped(search), (row) => [
    ...[row.number, row.customer, row.title, row.town, row.address],
  ])
  return { rows: ranked.map(({ address: _, ...row }) => rowFrom(row)), limited }
}

/** The jobs' room of the book. */
export function jobsRoom(connection: Connection, customers: CustomersRoom): JobsRoom {
  const { read, write } = connection
  const run = jobStatements(connection)
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
    const customer = customers.take(job.customer, job.sample ?? false)
    return add({ job, customerId: customer.id, entry: { spec: job.spec, typed: {} } })
  }

  const repeat = (id: number): Job | undefined => {
    const job = stored(id)
    if (!job) return undefined
    const { customer, title, unit, entry } = job
    return add({
      job: { customer, title, due: null, unit, spec: entry.spec },
      customerId: customer.id,
      entry,
    })
  }

  return {
    list: (search, stage) => read(() => listed(run, search, stage)),
    due: (upTo, most) => read(() => run.due.all(upTo, most)).map(rowFrom),
    toOrder: () => read(() => run.toOrder.all(mostFound, mostFound)),
    open: (id) => read(() => stored(id)),
    create: (job) => write(() => create(job)),
    change: (id, changes) => write(() => change(id, changes)),
    repeat: (id) => write(() => repeat(id)),
    changes: (id) => read(() => run.logged.all(id)).map(loggedFrom),
    count: () => read(() => run.count.get()) ?? { jobs: 0, sampleJobs: 0 },
  }
}
