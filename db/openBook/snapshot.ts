import { createHash } from 'node:crypto'
import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'
import {
  columnsIn,
  tableOf,
  type OpenRow,
  type RowFile,
  type TableName,
} from '../../shared/openBook/tables.ts'
import { asBookProblem, BookProblem } from '../bookProblem.ts'
import { layoutOf } from '../migrate.ts'
import { paperName } from '../papers.ts'
import { inBook, rowOpener, type Cell } from './columns.ts'

/**
 * The whole book as it stood at one moment, to be read in its own time while work goes on. Prices of a rise that isn't finished are left
 * out: they count for nothing. Close it when it is read.
 */
export type Snapshot = {
  layout: number
  count: (table: TableName) => number
  /** The rows of a table in order, one after another. */
  all: (table: TableName) => Generator<OpenRow>
  /** The rows that belong to something: those whose column holds the number. */
  of: (table: TableName, column: string, id: unknown) => OpenRow[]
  /** The very bytes that lie beside a row. Throws BookProblem 'damaged' when they are no longer those that were issued or put in. */
  bytes: (table: TableName, row: OpenRow, file: RowFile) => Uint8Array
  /** Those bytes as they lie in the book, and whether they are still what was issued or put in; none where they can't be read. */
  bytesAsTheyLie: (table: TableName, row: OpenRow, file: RowFile) => { bytes: Uint8Array; sound: boolean }
  close: () => void
}

const finished: Partial<Record<TableName, string>> = {
  rises: 'finished_at IS NOT NULL',
  prices: '(SELECT finished_at FROM rises WHERE rises.id = prices.rise_id) IS NOT NULL',
}

const asked = (table: TableName, layout: number): { columns: string; from: string; order: string } => ({
  columns: columnsIn(table, layout)
    .map(([key]) => `"${inBook(key)}"`)
    .join(', '),
  from: `FROM ${inBook(table)} WHERE ${finished[table] ?? 'TRUE'}`,
  order: `ORDER BY ${tableOf(table)
    .order.map((key) => `"${inBook(key)}"`)
    .join(', ')}`,
})

/** What is said of bytes that are no longer those whose hash was kept with them. */
function damaged(table: TableName, row: OpenRow): BookProblem {
  if (table === 'photographs')
    return new BookProblem(
      'damaged',
      `A photograph is damaged (number ${String(row['place'])} of its job, added ${String(row['addedAt']).slice(0, 10)}): it is no longer what was put in, so it can’t be taken out. Bring back a copy of the book.`,
    )
  const kind = row['kind'] === 'quotation' ? 'quotation' : 'job-card'
  return new BookProblem(
    'damaged',
    `A paper is damaged (${paperName({ kind, revision: Number(row['revision']) })}, issued ${String(row['issuedAt']).slice(0, 10)}): it is no longer what was issued, so it can’t be taken out. Put it back from a copy under Safe keeping.`,
  )
}

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** Bytes on a page that can't be read are none: the rest of the book is read all the same. */
function bytesThere(read: () => Uint8Array | undefined): Uint8Array {
  try {
    return asBookProblem(read) ?? new Uint8Array()
  } catch (problem) {
    if (problem instanceof BookProblem && problem.code === 'damaged') return new Uint8Array()
    throw problem
  }
}

/** Questions about a thing's number, each made ready once. */
function questionsOf(db: Database) {
  const ready = new Map<string, ReturnType<typeof db.prepare<[unknown], Record<string, Cell>>>>()
  return (sql: string) => {
    const known = ready.get(sql) ?? db.prepare<[unknown], Record<string, Cell>>(sql)
    ready.set(sql, known)
    return known
  }
}

/** Looks at the book at a path as it stands now, beside whoever has it open. */
export function snapshotOf(path: string): Snapshot {
  const db = asBookProblem(() => new Sqlite(path, { readonly: true, fileMustExist: true }))
  db.exec('BEGIN')
  const layout = layoutOf(db)
  const question = questionsOf(db)
  const read = (table: TableName, row: OpenRow, { column }: RowFile): Uint8Array | undefined => {
    const sql = `SELECT "${inBook(column)}" AS bytes FROM ${inBook(table)} WHERE id = ?`
    const bytes = asBookProblem(() => question(sql).get(row['id']))?.['bytes']
    return Buffer.isBuffer(bytes) ? bytes : undefined
  }
  return {
    layout,
    count: (table) =>
      asBookProblem(
        () =>
          db.prepare<[], { n: number }>(`SELECT count(*) AS n ${asked(table, layout).from}`).get()?.n ?? 0,
      ),
    *all(table) {
      const { columns, from, order } = asked(table, layout)
      const open = rowOpener(table, layout)
      for (const row of db.prepare<[], Record<string, Cell>>(`SELECT ${columns} ${from} ${order}`).iterate())
        yield open(row)
    },
    of: (table, column, id) => {
      const { columns, from, order } = asked(table, layout)
      const sql = `SELECT ${columns} ${from} AND "${inBook(column)}" = ? ${order}`
      return asBookProblem(() => question(sql).all(id)).map(rowOpener(table, layout))
    },
    bytes: (table, row, file) => {
      const bytes = read(table, row, file)
      if (bytes && hashOf(bytes) === row[file.hash]) return bytes
      throw damaged(table, row)
    },
    bytesAsTheyLie: (table, row, file) => {
      const bytes = bytesThere(() => read(table, row, file))
      return { bytes, sound: hashOf(bytes) === row[file.hash] }
    },
    close: () => void db.close(),
  }
}
