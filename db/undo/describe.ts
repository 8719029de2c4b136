import type { Database } from 'better-sqlite3'
import {
  seenTogether,
  stepOf,
  treeDifference,
  type Cells,
  type Seen,
  type Step,
} from '../../shared/undo/step.ts'
import type { Settings } from '../../shared/contract.ts'
import { standardSettings } from '../settings.ts'
import { writeShortMm } from '../../shared/units/writeLength.ts'

type Described = { of: string; jobId: number | null; unit?: 'mm' | 'in' }
type Named = { name: string }

const questions = (db: Database) => ({
  job: db.prepare<[unknown], { number: string; unit: 'mm' | 'in' }>(
    'SELECT number, unit FROM jobs WHERE id = ?',
  ),
  item: db.prepare<[unknown], Named>('SELECT name FROM items WHERE id = ?'),
  supplier: db.prepare<[unknown], Named>('SELECT name FROM suppliers WHERE id = ?'),
  usual: db.prepare<[unknown], Named>('SELECT name FROM usual_gates WHERE id = ?'),
  section: db.prepare<[unknown], Named>('SELECT name FROM sections WHERE id = ?'),
  option: db.prepare<[unknown], Named & { jobId: number }>(
    'SELECT name, job_id AS jobId FROM options WHERE id = ?',
  ),
  piece: db.prepare<[unknown], Named & { length: number }>(
    'SELECT items.name, length_mm AS length FROM rack_pieces JOIN items ON items.id = item_id WHERE rack_pieces.id = ?',
  ),
  order: db.prepare<[unknown], Named>('SELECT number AS name FROM orders WHERE id = ?'),
  cut: db.prepare<[unknown], Named>(
    'SELECT number AS name FROM order_lengths JOIN orders ON orders.id = order_id WHERE order_lengths.id = ?',
  ),
  receipt: db.prepare<[unknown], Named>(
    'SELECT number AS name FROM order_lines JOIN orders ON orders.id = order_id WHERE order_lines.id = ?',
  ),
  paper: db.prepare<[unknown], { jobId: number }>('SELECT job_id AS jobId FROM papers WHERE id = ?'),
  jobOf: (table: string) =>
    db.prepare<[unknown], { jobId: number }>(`SELECT job_id AS jobId FROM "${table}" WHERE id = ?`),
})

type Ask = ReturnType<typeof questions>
type Seeing = Pick<Seen, 'key' | 'table'> & { cells: Cells }

const ofJob = ({ job }: Ask, id: unknown): Described => {
  const found = job.get(id)
  return typeof id === 'number' && found
    ? { of: found.number, jobId: id, unit: found.unit }
    : { of: '', jobId: null }
}

const ofBook = (of: string | undefined): Described => ({ of: of ?? '', jobId: null })

/** What a row is called, and whose it is. What was taken out is called by what it said. */
const describers: Record<string, (ask: Ask, seeing: Seeing) => Described> = {
  jobs: (ask, { key }) => ofJob(ask, key['id']),
  options: (ask, { key, cells }) => {
    const found = ask.option.get(key['id'])
    const name = found?.name ?? String(cells['name'] ?? '')
    return { ...ofJob(ask, found?.jobId ?? cells['job_id']), of: name }
  },
  work_done: (ask, { key, cells }) =>
    ofJob(ask, ask.jobOf('work_done').get(key['id'])?.jobId ?? cells['job_id']),
  job_notes: (ask, { key }) => ofJob(ask, ask.jobOf('job_notes').get(key['id'])?.jobId),
  photographs: (ask, { key }) => ofJob(ask, ask.jobOf('photographs').get(key['id'])?.jobId),
  papers: (ask, { cells }) => ofJob(ask, cells['job_id']),
  acceptances: (ask, { key }) => ofJob(ask, ask.paper.get(key['paper_id'])?.jobId),
  items: (ask, { key }) => ofBook(ask.item.get(key['id'])?.name),
  suppliers: (ask, { key }) => ofBook(ask.supplier.get(key['id'])?.name),
  supplies: (ask, { key }) => ofBook(ask.item.get(key['item_id'])?.name),
  /** A setting said for the first time is told by what of it isn't the standard. */
  settings: (_ask, { key, cells }) => {
    const standard = standardSettings[String(key['key']) as keyof Settings]
    const changed = treeDifference('value', standard, cells['value'])
    return ofBook(changed.length === 1 ? changed[0]?.[0] : '')
  },
  usual_gates: (ask, { key, cells }) => ofBook(ask.usual.get(key['id'])?.name ?? String(cells['name'] ?? '')),
  sections: (ask, { key, cells }) => ofBook(ask.section.get(key['id'])?.name ?? String(cells['name'] ?? '')),
  rack_pieces: (ask, { key }) => {
    const piece = ask.piece.get(key['id'])
    return ofBook(piece && `${piece.name}, ${writeShortMm(piece.length)}`)
  },
  orders: (ask, { key }) => ofBook(ask.order.get(key['id'])?.name),
  order_cuts: (ask, { cells }) => ofBook(ask.cut.get(cells['length_id'])?.name),
  order_receipts: (ask, { cells }) => ofBook(ask.receipt.get(cells['line_id'])?.name),
}

/**
 * A rise is a deed once it is finished, and so is its undoing. What one leaves that broke off, and rows that only came along with a job that was
 * started or brought in, are none.
 */
function asDeed(seen: Seen): Seen | undefined {
  if (seen.table === 'customers') return seen.was === null ? undefined : seen
  if (seen.table !== 'rises') return seen
  const { was, is } = seen
  const said = { origin: (is ?? was)?.['origin'], lines: (is ?? was)?.['lines'] }
  const stood = (cells: Cells | null) =>
    cells !== null && cells['finished_at'] !== null && cells['undone_at'] === null
  if (stood(was) === stood(is)) return undefined
  return { ...seen, was: stood(was) ? said : null, is: stood(is) ? said : null }
}

/** What a job that came in brought with it goes and comes with the job. */
function withoutBrought(seen: readonly Seen[]): Seen[] {
  const made = new Set(
    seen.filter(({ table, was }) => table === 'jobs' && was === null).map(({ key }) => key['id']),
  )
  return seen.filter(({ table, was, is }) => table === 'jobs' || was !== null || !made.has(is?.['job_id']))
}

/** A job that came in needs no cells, but how many papers it brought: with more than those it isn't put away any more. */
function slim(step: Omit<Step, 'of' | 'jobId'>, rows: readonly Seen[]): Omit<Step, 'of' | 'jobId'> {
  if (step.table !== 'jobs' || step.was !== null) return step
  const papers = rows.filter(
    ({ table, is }) => table === 'papers' && is?.['job_id'] === step.key['id'],
  ).length
  return { ...step, is: { papers } }
}

/** The steps of one writing, each with what it is called. */
export function describing(db: Database): (rows: readonly Seen[]) => Step[] {
  const ask = questions(db)
  return (rows) =>
    withoutBrought(seenTogether(rows).flatMap((seen) => asDeed(seen) ?? [])).flatMap((seen) => {
      const step = stepOf(seen)
      if (!step) return []
      const cells = seen.is ?? seen.was ?? {}
      const { table, key } = seen
      const described = describers[table]?.(ask, { table, key, cells }) ?? { of: '', jobId: null }
      return [{ ...slim(step, rows), ...described }]
    })
}
