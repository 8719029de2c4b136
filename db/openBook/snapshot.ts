import { createHash } from 'node:crypto'
import Sqlite from 'better-sqlite3'
import { columnsIn, tableOf, type OpenRow, type TableName } from '../../shared/openBook/tables.ts'
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
  /** A paper's very bytes. Throws BookProblem 'damaged' when they are no longer those that were issued. */
  paperBytes: (paper: OpenRow) => Uint8Array
  /** A paper's bytes as they lie in the book, and whether they are still those that were issued; none where they can't be read. */
  paperAsItLies: (paper: OpenRow) => { bytes: Uint8Array; sound: boolean }
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

const isSound = (paper: OpenRow, bytes: Uint8Array): boolean =>
  createHash('sha256').update(bytes).digest('hex') === paper['sha256']

function checkedBytes(paper: OpenRow, bytes: Uint8Array | undefined): Uint8Array {
  if (bytes && isSound(paper, bytes)) return bytes
  const kind = paper['kind'] === 'quotation' ? 'quotation' : 'job-card'
  throw new BookProblem(
    'damaged',
    `A paper is damaged (${paperName({ kind, revision: Number(paper['revision']) })}, issued ${String(paper['issuedAt']).slice(0, 10)}): it is no longer what was issued, so it can’t be taken out. Put it back from a copy under Safe keeping.`,
  )
}

/** Bytes on a page that can't be read are none: the rest of the book is read all the same. */
function bytesThere(read: () => Uint8Array | undefined): Uint8Array {
  try {
    return asBookProblem(read) ?? new Uint8Array()
  } catch (problem) {
    if (problem instanceof BookProblem && problem.code === 'damaged') return new Uint8Array()
    throw problem
  }
}

/** Looks at the book at a path as it stands now, beside whoever has it open. */
export function snapshotOf(path: string): Snapshot {
  const db = asBookProblem(() => new Sqlite(path, { readonly: true, fileMustExist: true }))
  db.exec('BEGIN')
  const layout = layoutOf(db)
  const bytes = db.prepare<[unknown], { bytes: Uint8Array }>('SELECT bytes FROM papers WHERE id = ?')
  const questions = new Map<string, ReturnType<typeof db.prepare<[unknown], Record<string, Cell>>>>()
  const question = (sql: string) => {
    const known = questions.get(sql) ?? db.prepare<[unknown], Record<string, Cell>>(sql)
    questions.set(sql, known)
    return known
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
    paperAsItLies: (paper) => {
      const found = bytesThere(() => bytes.get(paper['id'])?.bytes)
      return { bytes: found, sound: isSound(paper, found) }
    },
    paperBytes: (paper) => checkedBytes(paper, asBookProblem(() => bytes.get(paper['id']))?.bytes),
    close: () => void db.close(),
  }
}
