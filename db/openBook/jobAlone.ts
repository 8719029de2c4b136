import { createHash } from 'node:crypto'
import type { Job } from '../../shared/job/job.ts'
import { received } from '../../shared/gate/parseSpec.ts'
import type { JobFile, NamedLine } from '../../shared/openBook/jobFile.ts'
import { columnsIn, type OpenRow, type TableName } from '../../shared/openBook/tables.ts'
import { bad, good, type Result } from '../../shared/problem.ts'
import type { Connection } from '../connection.ts'
import { customersRoom } from '../customers.ts'
import { nextJobNumber } from '../jobNumber.ts'
import { jobFrom } from '../jobRows.ts'
import { jobStatements } from '../jobStatements.ts'
import { searchRoom } from '../search.ts'
import { cellOf, inBook } from './columns.ts'
import type { Snapshot } from './snapshot.ts'

/** A job that came in, the number it had where that was taken, and the price lines that this book hasn't. */
export type CameIn = { job: Job; oldNumber: string | null; leftOut: string[] }

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** The price lines an option's entry names: those chosen, and its finish. */
function linesNamed(entry: unknown): number[] {
  if (!isObject(entry)) return []
  const finish = isObject(entry['finish']) ? [entry['finish']['itemId']] : []
  const chosen = isObject(entry['chosen']) ? Object.values(entry['chosen']) : []
  return [...chosen, ...finish].filter((id) => typeof id === 'number')
}

/** One job out of a book, with its cards where they are asked for; undefined when there is none. */
export function jobAlone(snapshot: Snapshot, jobId: number, withPapers: boolean): JobFile | undefined {
  const [job] = snapshot.of('jobs', 'id', jobId)
  const [customer] = job ? snapshot.of('customers', 'id', job['customerId']) : []
  if (!job || !customer) return undefined
  const options = snapshot.of('options', 'jobId', jobId)
  const cards = snapshot.of('papers', 'jobId', jobId).filter(({ kind }) => kind === 'job-card')
  const papers = withPapers ? cards : []
  const ids = [...new Set(options.flatMap(({ entry }) => linesNamed(entry)))].sort((a, b) => a - b)
  const lines = ids.flatMap((id): NamedLine[] =>
    snapshot.of('items', 'id', id).map(({ kind, name }) => ({ id, kind: String(kind), name: String(name) })),
  )
  return {
    layout: snapshot.layout,
    ...{ customer, job, options, papers, lines },
    changes: snapshot.of('changes', 'jobId', jobId),
    workDone: snapshot.of('workDone', 'jobId', jobId),
    pdfs: papers.map((paper) => Buffer.from(snapshot.paperBytes(paper)).toString('base64')),
  }
}

/** Papers whose bytes aren't those that were issued. */
export function changedPapers({ papers, pdfs }: JobFile): Result<Uint8Array[]> {
  const bytes = pdfs.map((words) => Buffer.from(words, 'base64'))
  const wrong = papers.flatMap(({ sha256 }, place) => {
    const got = createHash('sha256')
      .update(bytes[place] ?? '')
      .digest('hex')
    if (got === sha256) return []
    const message = `this isn’t the paper as it was issued: its fingerprint is ${received(got)}, accepted is ${received(sha256)}`
    return [{ code: 'refused', field: `pdfs[${place}]`, message }]
  })
  return wrong.length > 0 ? bad(...wrong) : good(bytes)
}

const said = (row: OpenRow, key: string): string => String(row[key] ?? '')

/** A row put in with some of its columns said anew, and a number of its own. Gives that number. */
const inserting =
  ({ db }: Connection, layout: number) =>
  (table: TableName, row: OpenRow, bytes?: Uint8Array): number => {
    const columns = columnsIn(table, layout).filter(([key]) => key !== 'id')
    const names = columns.map(([key]) => `"${inBook(key)}"`)
    const cells = columns.map(([key, column]) => cellOf(row[key] ?? null, column))
    const all = bytes ? [...names, 'bytes'] : names
    const sql = `INSERT INTO ${inBook(table)} (${all.join(', ')}) VALUES (${all.map(() => '?').join(', ')})`
    return Number(db.prepare(sql).run(...cells, ...(bytes ? [Buffer.from(bytes)] : [])).lastInsertRowid)
  }

/** Finds the price lines of another book in this one, by kind and name. */
function linesHere({ db }: Connection, lines: readonly NamedLine[]): Map<number, number> {
  const find = db
    .prepare<[string, string], number>(
      'SELECT id FROM items WHERE kind = ? AND name = ? ORDER BY retired, id LIMIT 1',
    )
    .pluck()
  return new Map(
    lines.flatMap(({ id, kind, name }): [number, number][] => {
      const here = find.get(kind, name)
      return here === undefined ? [] : [[id, here]]
    }),
  )
}

/** An option's entry with its price lines those of this book; the choices that find none are let go. */
function entryHere(entry: unknown, here: Map<number, number>): unknown {
  if (!isObject(entry)) return entry
  const chosen = Object.entries(isObject(entry['chosen']) ? entry['chosen'] : {}).flatMap(
    ([line, id]): [string, number][] => {
      const own = typeof id === 'number' ? here.get(id) : undefined
      return own === undefined ? [] : [[line, own]]
    },
  )
  const finish = isObject(entry['finish']) ? entry['finish'] : null
  const itemId = typeof finish?.['itemId'] === 'number' ? here.get(finish['itemId']) : undefined
  return {
    ...entry,
    chosen: Object.fromEntries(chosen),
    finish: finish && itemId !== undefined ? { ...finish, itemId } : null,
  }
}

const numberTaken = ({ db }: Connection, number: string): boolean =>
  db.prepare<[string], { id: number }>('SELECT id FROM jobs WHERE number = ?').get(number) !== undefined

/** The number a job had when it can keep it: free here, and not a sample's. */
export const freeNumber = (connection: Connection, number: string): string | undefined =>
  number.startsWith('S') || numberTaken(connection, number) ? undefined : number

/**
 * Puts a job from a file into the book, in one writing: under its own number, or the next free one with the old one in its notes and its
 * log. Its cards come in frozen as they were issued.
 */
export function bringJobIn(connection: Connection, file: JobFile, bytes: readonly Uint8Array[]): CameIn {
  const { db, now, write } = connection
  return write(() => {
    const { job, customer: who, lines } = file
    const insert = inserting(connection, file.layout)
    const [name, address, town, phone, email] = ['name', 'address', 'town', 'phone', 'email'].map((key) =>
      said(who, key),
    )
    const whole = {
      name: name ?? '',
      address: address ?? '',
      town: town ?? '',
      phone: phone ?? '',
      email: email ?? '',
    }
    const customer = customersRoom(connection).take(whole, false)
    const old = said(job, 'number')
    const kept = freeNumber(connection, old)
    const number = kept ?? nextJobNumber(db, said(job, 'createdAt'), false)
    const before = said(job, 'notes')
    const notes = kept
      ? before
      : `Was job ${old} in the book it came from.${before === '' ? '' : `\n${before}`}`
    const own = { number, customerId: customer.id, notes, version: 1, updatedAt: now(), sample: false }
    const jobId = insert('jobs', { ...job, ...own })
    const here = linesHere(connection, lines)
    for (const row of file.options) insert('options', { ...row, jobId, entry: entryHere(row['entry'], here) })
    for (const row of file.changes) insert('changes', { ...row, jobId })
    if (!kept) insert('changes', { jobId, path: 'number', before: old, after: number, at: now() })
    for (const row of file.workDone) insert('workDone', { ...row, jobId })
    for (const [place, row] of file.papers.entries()) insert('papers', { ...row, jobId }, bytes[place])
    const stored = jobStatements(connection).one.get(jobId)
    if (!stored) throw new Error(`job ${number} was written and can't be read`)
    const made = jobFrom(stored)
    searchRoom(connection).keepJob(made)
    const leftOut = lines.filter(({ id }) => !here.has(id)).map((line) => line.name)
    return { job: made, oldNumber: kept ? null : old, leftOut }
  })
}
