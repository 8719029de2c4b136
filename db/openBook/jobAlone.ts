import type { Job } from '../../shared/job/job.ts'
import type { JobFile, NamedLine } from '../../shared/openBook/jobFile.ts'
import { columnsIn, filesOf, type OpenRow, type TableName } from '../../shared/openBook/tables.ts'
import type { Connection } from '../connection.ts'
import type { BesideJob } from './besideJob.ts'
import { customersRoom } from '../customers.ts'
import { nextJobNumber } from '../jobNumber.ts'
import { jobFrom } from '../jobRows.ts'
import { jobStatements } from '../jobStatements.ts'
import { withNoteWords } from '../noteWords.ts'
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

/** Bytes that lie beside rows, in base64: those of one column, one for each row. */
const inText =
  (snapshot: Snapshot, table: TableName, rows: readonly OpenRow[]) =>
  (column: string): string[] =>
    filesOf(table)
      .filter((file) => file.column === column)
      .flatMap((file) => rows.map((row) => Buffer.from(snapshot.bytes(table, row, file)).toString('base64')))

/** One job out of a book, with its cards and its photographs where they are asked for; undefined when there is none. */
export function jobAlone(
  snapshot: Snapshot,
  jobId: number,
  wanted: { papers: boolean; photographs: boolean },
): JobFile | undefined {
  const [job] = snapshot.of('jobs', 'id', jobId)
  const [customer] = job ? snapshot.of('customers', 'id', job['customerId']) : []
  if (!job || !customer) return undefined
  const options = snapshot.of('options', 'jobId', jobId)
  const cards = snapshot.of('papers', 'jobId', jobId).filter(({ kind }) => kind === 'job-card')
  const papers = wanted.papers ? cards : []
  const photographs = wanted.photographs ? snapshot.of('photographs', 'jobId', jobId) : []
  const pictures = inText(snapshot, 'photographs', photographs)
  const ids = [...new Set(options.flatMap(({ entry }) => linesNamed(entry)))].sort((a, b) => a - b)
  const lines = ids.flatMap((id): NamedLine[] =>
    snapshot.of('items', 'id', id).map(({ kind, name }) => ({ id, kind: String(kind), name: String(name) })),
  )
  return {
    layout: snapshot.layout,
    ...{ customer, job, options, papers, lines },
    changes: snapshot.of('changes', 'jobId', jobId),
    workDone: snapshot.of('workDone', 'jobId', jobId),
    jobNotes: snapshot.of('jobNotes', 'jobId', jobId),
    pdfs: inText(snapshot, 'papers', papers)('bytes'),
    photographs,
    pictures: pictures('bytes'),
    smallPictures: pictures('thumbnail'),
  }
}

const said = (row: OpenRow, key: string): string => String(row[key] ?? '')

/** A row put in with some of its columns said anew, and a number of its own. Gives that number. */
const inserting =
  ({ db }: Connection, layout: number) =>
  (table: TableName, row: OpenRow, bytes: readonly (Uint8Array | undefined)[] = []): number => {
    const columns = columnsIn(table, layout).filter(([key]) => key !== 'id')
    const names = columns.map(([key]) => `"${inBook(key)}"`)
    const cells = columns.map(([key, column]) => cellOf(row[key] ?? null, column))
    const all = [...names, ...filesOf(table).map(({ column }) => inBook(column))]
    const sql = `INSERT INTO ${inBook(table)} (${all.join(', ')}) VALUES (${all.map(() => '?').join(', ')})`
    return Number(
      db.prepare(sql).run(...cells, ...bytes.map((beside) => Buffer.from(beside ?? []))).lastInsertRowid,
    )
  }

/** Finds the price lines of another book in this one, by kind and name. */
function linesHere({ db }: Connection, lines: readonly NamedLine[]): Map<number, number> {
  const find = db
    .prepare<[string, string], number>(
      'SELECT id FROM items WHERE kind = ? AND name = ? AND put_away = 0 ORDER BY retired, id LIMIT 1',
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

/** What it took, its notes, and what has bytes of its own: the rows of a job that come in as they are. */
function bringBelongings(
  insert: ReturnType<typeof inserting>,
  { file, beside, jobId }: { file: JobFile; beside: BesideJob; jobId: number },
): void {
  for (const row of file.workDone) insert('workDone', { ...row, jobId })
  for (const row of file.jobNotes) insert('jobNotes', { ...row, jobId })
  for (const [place, row] of file.papers.entries())
    insert('papers', { ...row, jobId }, [beside.papers[place]])
  for (const [place, row] of file.photographs.entries())
    insert('photographs', { ...row, jobId }, [beside.pictures[place], beside.smallPictures[place]])
}

/**
 * Puts a job from a file into the book, in one writing: under its own number, or the next free one with the old one in its notes and its
 * log. Its cards come in frozen as they were issued, its photographs as they were put in.
 */
export function bringJobIn(connection: Connection, file: JobFile, beside: BesideJob): CameIn {
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
    insert('changes', { jobId, path: 'broughtIn', before: null, after: old, at: now() })
    if (!kept) insert('changes', { jobId, path: 'number', before: old, after: number, at: now() })
    bringBelongings(insert, { file, beside, jobId })
    const stored = jobStatements(connection).one.get(jobId)
    if (!stored) throw new Error(`job ${number} was written and can't be read`)
    const made = jobFrom(stored)
    searchRoom(connection).keepJob(withNoteWords(db)(made))
    const leftOut = lines.filter(({ id }) => !here.has(id)).map((line) => line.name)
    return { job: made, oldNumber: kept ? null : old, leftOut }
  })
}
