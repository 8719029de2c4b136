import { readdirSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { columnsIn, tablesIn, type OpenRow, type TableName } from '../../shared/openBook/tables.ts'
import type { Problem } from '../../shared/problem.ts'
import { asBookProblem } from '../bookProblem.ts'
import { bookMark, type Connection } from '../connection.ts'
import { migrate, type Migration } from '../migrate.ts'
import { settingProblem } from './settingProblem.ts'
import { stagedWords } from './stagedWords.ts'
import { cellOf, inBook, type Cell } from './columns.ts'
import { rowProblem } from './rowProblems.ts'

/** Where a row stands in the files, for whoever must mend it. */
export type RowToAdd = { table: TableName; row: OpenRow; where: string; bytes?: Uint8Array }

/**
 * A book being put together from open files, apart from the one in use: everything the book itself insists on is insisted on here, and the
 * book in use isn't touched.
 */
export type Staging = {
  path: string
  /** Adds a row; gives what is wrong with it where the book wouldn't take it. */
  add: (row: RowToAdd) => Problem | undefined
  /** Brings what was added up to the program's own layout, a step at a time, with the words to find it by. */
  finishSteps: () => Generator<void, void>
  /** Throws it away. */
  discard: () => void
}

/** Takes a waiting book's file away, with all that may lie beside it: also what a power cut left of one that was only begun. */
export function removeStaged(path: string): void {
  const [folder, name] = [dirname(path), basename(path)]
  for (const found of readdirSync(folder))
    if (found.startsWith(name)) rmSync(join(folder, found), { force: true })
}

/** Makes a waiting book and opens it. It is thrown away if anything goes wrong, so nothing of it needs to outlive a power cut. */
function openStaged(path: string): Connection {
  const db = new Sqlite(path)
  db.pragma(`application_id = ${bookMark}`)
  for (const setting of [
    'journal_mode = MEMORY',
    'synchronous = OFF',
    'foreign_keys = ON',
    'trusted_schema = OFF',
  ])
    db.pragma(setting)
  return {
    db,
    now: () => '',
    read: asBookProblem,
    write: (work) => asBookProblem(() => db.transaction(work).immediate()),
    close: () => void db.close(),
  }
}

const adding = ({ db }: Connection, layout: number) => {
  const statements = new Map(
    tablesIn(layout).map((table) => {
      const columns = columnsIn(table, layout)
      const own = [...columns.map(([key]) => inBook(key)), ...(table === 'papers' ? ['bytes'] : [])]
      const sql = `INSERT INTO ${inBook(table)} (${own.map((name) => `"${name}"`).join(', ')}) VALUES (${own.map(() => '?').join(', ')})`
      return [table, { columns, run: db.prepare(sql) }] as const
    }),
  )
  return ({ table, row, bytes }: RowToAdd): void => {
    const known = statements.get(table)
    if (!known) throw new Error(`layout ${layout} has no ${table}`)
    const cells: Cell[] = known.columns.map(([key, column]) => cellOf(row[key] ?? null, column))
    known.run.run(...cells, ...(table === 'papers' ? [Buffer.from(bytes ?? [])] : []))
  }
}

/** A piece that left the rack has often been cut for an order, which must be there first: it leaves only once all orders are in. */
type Left = { id: unknown; leftOn: unknown; leftWhy: unknown }
const onRack = (row: OpenRow): OpenRow => ({ ...row, leftOn: null, leftWhy: null })

/** Adds rows, holding back that a piece has left the rack until `leave`. */
function rackHeldBack({ db }: Connection, add: (one: RowToAdd) => void) {
  const left: Left[] = []
  return {
    add: (one: RowToAdd): void => {
      const { leftOn = null, leftWhy = null, id } = one.row
      if (one.table !== 'rackPieces' || (leftOn === null && leftWhy === null)) return add(one)
      add({ ...one, row: onRack(one.row) })
      left.push({ id, leftOn, leftWhy })
    },
    leave: (): void => {
      const run = db.prepare('UPDATE rack_pieces SET left_on = ?, left_why = ? WHERE id = ?')
      for (const { id, leftOn, leftWhy } of left) run.run(leftOn, leftWhy, id)
    },
  }
}

/** Begins a waiting book in the layout that the files were taken out of. */
export function beginStaging(path: string, layout: number, migrations: Migration[]): Staging {
  removeStaged(path)
  const connection = openStaged(path)
  const { db } = connection
  migrate(
    db,
    migrations.filter(({ number }) => number <= layout),
  )
  const rows = rackHeldBack(connection, adding(connection, layout))
  db.exec('BEGIN')
  db.exec('DELETE FROM sections')
  return {
    path,
    add: (one) => {
      try {
        const problem = settingProblem(one)
        if (!problem) rows.add(one)
        return problem
      } catch (error) {
        return rowProblem(db, one, error)
      }
    },
    *finishSteps() {
      rows.leave()
      db.exec('COMMIT')
      migrate(db, migrations)
      yield* stagedWords(connection)
      connection.close()
    },
    discard: () => {
      connection.close()
      removeStaged(path)
    },
  }
}
