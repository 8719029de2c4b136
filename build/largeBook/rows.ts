import type { Connection } from '../../db/connection.ts'
import { searchRoom } from '../../db/search.ts'
import type { Job } from '../../shared/job/job.ts'
import type { Draws } from '../bench/seeded.ts'
import { courseOf, type Course } from './course.ts'
import { inventedGates, type InventedGate } from './gates.ts'
import { inventedCustomer, inventedNotes, inventedTitle, type InventedCustomer } from './invented.ts'
import { smallPdf } from './smallPdf.ts'

/** A quotation's money as the sample book has it, and a paper's engine: what papers are frozen with. */
export type Frozen = { engine: string; money: string[] }

const statements = ({ db }: Connection) => ({
  customer: db.prepare(
    'INSERT INTO customers (name, address, town, phone, email, created_at) VALUES (?, ?, ?, ?, ?, ?)',
  ),
  job: db.prepare(
    `INSERT INTO jobs (number, customer_id, title, stage, due, notes, unit, entry, version, created_at, updated_at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  ),
  change: db.prepare('INSERT INTO changes (job_id, path, before, after, at) VALUES (?, ?, ?, ?, ?)'),
  paper: db.prepare(
    `INSERT INTO papers (job_id, kind, revision, format, issued_at, engine, pages, sha256, header, money, spec, figures, parts, bytes)
     VALUES (?, ?, ?, 'a4', ?, ?, 1, ?, ?, ?, ?, '{}', '{"leaves":[],"cuts":[],"holes":[],"checks":[]}', ?)`,
  ),
  accept: db.prepare(
    'INSERT INTO acceptances (paper_id, option_place, accepted_on, note, added_at) VALUES (?, 0, ?, ?, ?)',
  ),
  done: db.prepare(
    `INSERT INTO work_done (job_id, what, work_group, operation, quantity, done_on, added_at) VALUES (?, 'hours', 'making', 'making', ?, ?, ?)`,
  ),
})

type Made = { job: Job; course: Course; gate: InventedGate }

/** Fifty frozen papers that all jobs share the bytes of: the rows are distinct, the hashes right. */
const pdfs = Array.from({ length: 50 }, (_, place) => smallPdf(`An invented paper, number ${place + 1}`))

const isMade = ({ stage }: Course): boolean => stage === 'hung' || stage === 'making'

/** Writes the papers of a job: most that were made have a card, one in ten a quotation with its money. */
function papersOf(
  run: ReturnType<typeof statements>,
  { job, course, gate }: Made,
  { frozen, draws }: { frozen: Frozen; draws: Draws },
): void {
  const { id: _, ...customer } = job.customer
  const header = (revision: number) =>
    JSON.stringify({
      ...{ workshop: 'A made-up workshop', number: job.number, title: job.title, customer, due: job.due },
      ...{ notes: job.notes, revision, issuedAt: course.updatedAt },
    })
  const issue = (kind: 'job-card' | 'quotation', revision: number, money: string | null): number => {
    const { bytes, sha256 } = draws.one(pdfs)
    const head = [job.id, kind, revision, course.updatedAt, frozen.engine, sha256, header(revision), money]
    return Number(run.paper.run(...head, JSON.stringify(gate.spec), bytes).lastInsertRowid)
  }
  if (isMade(course))
    for (let revision = 1; revision <= draws.between(0, 2); revision += 1) issue('job-card', revision, null)
  if (draws.between(1, 10) > 1 || frozen.money.length === 0 || course.stage === 'enquiry') return
  const paper = issue('quotation', 1, draws.one(frozen.money))
  if (isMade(course)) run.accept.run(paper, course.at.slice(0, 10), 'by telephone', course.at)
}

function logOf(run: ReturnType<typeof statements>, { job, course }: Made): void {
  const log = (path: string, before: unknown, after: unknown): void =>
    void run.change.run(job.id, path, JSON.stringify(before), JSON.stringify(after), course.updatedAt)
  log('spec.size.width', null, job.entry.spec.size.from === 'leaf' ? job.entry.spec.size.width : null)
  if (course.stage !== 'enquiry') log('stage', 'enquiry', course.stage)
}

/** How often a job is for somebody who had one before, of a hundred. */
const comeAgain = 40

type Making = { run: ReturnType<typeof statements>; draws: Draws; words: ReturnType<typeof searchRoom> }

/** Gives each job its customer: somebody new, or one who had a job before. */
function customersFor({ run, draws, words }: Making) {
  const customers: (InventedCustomer & { id: number })[] = []
  return (at: string): InventedCustomer & { id: number } => {
    if (customers.length > 0 && draws.between(1, 100) <= comeAgain) return draws.one(customers)
    const details = inventedCustomer(draws)
    const { name, address, town, phone, email } = details
    const customer = {
      ...details,
      id: Number(run.customer.run(name, address, town, phone, email, at).lastInsertRowid),
    }
    words.keepCustomer(customer)
    customers.push(customer)
    return customer
  }
}

/** Numbers jobs by the year they came in. */
function numbersByYear() {
  const places = new Map<string, number>()
  return (at: string): string => {
    const year = at.slice(0, 4)
    const place = (places.get(year) ?? 0) + 1
    places.set(year, place)
    return `${year}-${String(place).padStart(3, '0')}`
  }
}

/** Writes jobs one after another, each with its customer, words, log and papers. To be called inside one writing. */
export function jobRows(connection: Connection, { frozen, draws }: { frozen: Frozen; draws: Draws }) {
  const run = statements(connection)
  const words = searchRoom(connection)
  const nextGate = inventedGates(draws)
  const customerFor = customersFor({ run, draws, words })
  const numberFor = numbersByYear()
  return (place: number, count: number): void => {
    const course = courseOf(place, count, draws)
    const gate = nextGate()
    const customer = customerFor(course.at)
    const [title, notes] = [inventedTitle(draws), inventedNotes(draws)]
    const entry = { spec: gate.spec, typed: {} }
    const { at: createdAt, updatedAt, stage, due } = course
    const number = numberFor(createdAt)
    const cells = [number, customer.id, title, stage, due, notes, gate.unit, JSON.stringify(entry), 3]
    const id = Number(run.job.run(...cells, createdAt, updatedAt).lastInsertRowid)
    const head = { id, number, customer, title, stage, due, notes, unit: gate.unit, entry }
    const job: Job = { ...head, version: 3, createdAt, updatedAt, sample: false }
    words.keepJob(job)
    logOf(run, { job, course, gate })
    papersOf(run, { job, course, gate }, { frozen, draws })
    if (stage === 'hung') run.done.run(id, draws.between(2, 30, 0.25), updatedAt.slice(0, 10), updatedAt)
  }
}
