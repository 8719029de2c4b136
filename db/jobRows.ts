import { parseDraft } from '../shared/gate/parseSpec.ts'
import type { Customer, GateEntry, Job, JobRow, LengthUnit, Stage } from '../shared/job/job.ts'
import { BookProblem } from './bookProblem.ts'

/** A job as it lies in the book. */
export type StoredJob = Omit<Job, 'customer' | 'entry' | 'sample'> & {
  customerId: number
  name: string
  address: string
  town: string
  phone: string
  email: string
  entry: string
  sample: number
}

/** A line of the job list as it lies in the book. */
export type StoredRow = Omit<JobRow, 'sample' | 'accepted' | 'stage' | 'unit'> & {
  stage: Stage
  unit: LengthUnit
  accepted: number
  sample: number
}

/** What a job is read by; the list reads less. */
export const jobColumns = `jobs.id, jobs.number, jobs.title, jobs.stage, jobs.due, jobs.notes, jobs.unit, jobs.entry, jobs.version,
  jobs.created_at AS createdAt, jobs.updated_at AS updatedAt, jobs.sample, customers.id AS customerId, customers.name,
  customers.address, customers.town, customers.phone, customers.email`

/** A row of the list. The papers come first when an acceptance is looked for: a job has few, and each acceptance is found by its paper. */
export const rowColumns = `jobs.id, jobs.number, customers.id AS customerId, customers.name AS customer, customers.town, jobs.title, jobs.stage, jobs.due, jobs.unit,
  jobs.width_mm AS width, jobs.height_mm AS height, jobs.construction,
  (SELECT count(*) FROM papers WHERE papers.job_id = jobs.id) AS papers,
  EXISTS (SELECT 1 FROM papers CROSS JOIN acceptances ON acceptances.paper_id = papers.id WHERE papers.job_id = jobs.id) AS accepted, jobs.updated_at AS updatedAt, jobs.sample`

const isWords = (typed: unknown): typed is Record<string, string> =>
  typeof typed === 'object' &&
  typed !== null &&
  Object.values(typed).every((words) => typeof words === 'string')

function readEntry(number: string, text: string): GateEntry {
  const entry: unknown = JSON.parse(text)
  if (
    typeof entry === 'object' &&
    entry !== null &&
    'spec' in entry &&
    'typed' in entry &&
    isWords(entry.typed)
  ) {
    const spec = parseDraft(entry.spec)
    if (spec.ok) return { spec: spec.value, typed: entry.typed }
  }
  throw new BookProblem(
    'damaged',
    `The gate of job ${number} can’t be read: the job book is damaged there. Bring back a copy of the book.`,
  )
}

/** A job from its row; throws BookProblem 'damaged' when its gate can't be read any more. */
export function jobFrom(stored: StoredJob): Job {
  const { customerId, name, address, town, phone, email, entry, sample, ...rest } = stored
  const customer: Customer = { id: customerId, name, address, town, phone, email }
  return { ...rest, customer, entry: readEntry(stored.number, entry), sample: sample === 1 }
}

export const rowFrom = (stored: StoredRow): JobRow => ({
  ...stored,
  accepted: stored.accepted === 1,
  sample: stored.sample === 1,
})
