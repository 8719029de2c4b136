import { copyFileSync, existsSync, mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'
import { asBookProblem, BookProblem } from '../bookProblem.ts'
import { bookMark } from '../connection.ts'
import { migrate, type Migration } from '../migrate.ts'
import { forceToDisk } from '../verifiedCopy.ts'
import { copiesFolder } from './copyNames.ts'
import { joinUp } from './joinUp.ts'
import { mendHeader } from './mendHeader.ts'
import { readKeyed, readNumbered, type Readable, type Row } from './readableRows.ts'
import { unwatched, type WorkStand } from './workStand.ts'
import { wordsAgain } from './wordsAgain.ts'

/** migrations: the steps of the layout that this program knows. */
export type SalvageTask = { bookPath: string; migrations: Migration[] }

/** path: the new book, not yet in its place. lostJobs: jobs that couldn't be read; their numbers are missing in the book. */
export type SalvageFound = { path: string; jobs: number; papers: number; lostJobs: number }

type Table = { name: string; columns: string[]; keys: string[]; numbered: boolean }

/** The tables of a book with the columns that are written, not worked out. */
function tablesOf(db: Database): Table[] {
  return db
    .prepare<[], { name: string; wr: number }>(
      "SELECT name, wr FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%'",
    )
    .all()
    .map(({ name, wr }) => {
      const columns = db
        .prepare<[string], { name: string; pk: number; hidden: number }>(
          'SELECT name, pk, hidden FROM pragma_table_xinfo(?)',
        )
        .all(name)
      const written = columns.filter(({ hidden }) => hidden === 0)
      const keys = columns.filter(({ pk }) => pk > 0).sort((a, b) => a.pk - b.pk)
      return {
        name,
        columns: written.map((column) => column.name),
        keys: keys.map((column) => column.name),
        numbered: wr === 0,
      }
    })
}

function readTable(db: Database, { name, columns, keys, numbered }: Table): Readable {
  const there = columns.map((column) => `"${column}"`).join(', ')
  try {
    return numbered ? readNumbered(db, name, there) : readKeyed(db, { table: name, columns: there, keys })
  } catch {
    // The table's very description can't be read.
    return { rows: [], unreadable: 1 }
  }
}

/** Writes the rows that the book's own rules allow; gives those that they don't. */
function fill(db: Database, { name, columns }: Table, rows: Row[]): Row[] {
  const cells = columns.map((column) => `"${column}"`).join(', ')
  const insert = db.prepare(`INSERT INTO "${name}" (${cells}) VALUES (${columns.map(() => '?').join(', ')})`)
  return rows.filter((row) => {
    try {
      insert.run(columns.map((column) => row[column] ?? null))
      return false
    } catch {
      // A cell the rules refuse: the row was damaged where it could still be read.
      return true
    }
  })
}

/** Guards that stand over later changes must not stop rows that already were in a book from going in. */
function withoutGuards(db: Database, work: () => void): void {
  const guards = db
    .prepare<[], { name: string; sql: string }>("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
    .all()
  for (const { name } of guards) db.exec(`DROP TRIGGER "${name}"`)
  work()
  for (const { sql } of guards) db.exec(sql)
}

function pour(bad: Database, made: Database, stand: WorkStand): { lostJobs: number } {
  let lostJobs = 0
  withoutGuards(made, () => {
    const tables = tablesOf(made)
    stand.begin('reading out', tables.length)
    for (const [before, table] of tables.entries()) {
      stand.reach(before)
      made.exec(`DELETE FROM "${table.name}"`)
      const { rows, unreadable } = readTable(bad, table)
      const refused = fill(made, table, rows)
      if (table.name === 'jobs') lostJobs = unreadable + refused.length
    }
    joinUp(made)
  })
  return { lostJobs }
}

/** An empty book laid out as the damaged one says it is. */
function emptyBook(path: string, layout: number, migrations: Migration[]): Database {
  const db = new Sqlite(path)
  db.pragma(`application_id = ${bookMark}`)
  migrate(
    db,
    migrations.filter((step) => step.number <= layout),
  )
  db.pragma('foreign_keys = OFF')
  return db
}

const nothingLeft = (): BookProblem =>
  new BookProblem(
    'damaged',
    'Nothing could be read out of the damaged book. It was left as it is: open a copy, or begin a fresh book.',
  )

const countOf = (db: Database, table: string): number =>
  Number(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get())

type Reading = { twin: string; path: string; migrations: Migration[]; stand: WorkStand }

function readOut({ twin, path, migrations, stand }: Reading): Omit<SalvageFound, 'path'> {
  const latest = migrations.length
  mendHeader(twin, latest)
  const bad = new Sqlite(twin)
  try {
    bad.pragma('trusted_schema = OFF')
    bad.pragma('cell_size_check = ON')
    const layout = Number(bad.pragma('user_version', { simple: true }))
    const made = emptyBook(path, layout, migrations)
    try {
      const { lostJobs } = made.transaction(pour)(bad, made, stand)
      const [jobs, papers] = [countOf(made, 'jobs'), countOf(made, 'papers')]
      if (jobs === 0 && countOf(made, 'customers') === 0 && countOf(made, 'items') === 0) throw nothingLeft()
      wordsAgain(made)
      if (made.pragma('integrity_check(1)', { simple: true }) !== 'ok') throw nothingLeft()
      return { jobs, papers, lostJobs }
    } finally {
      made.close()
    }
  } finally {
    bad.close()
  }
}

/**
 * Reads what can still be read out of a damaged book into a new one: table by table, row by row where a page is damaged, by the rules every book is
 * held to. The damaged file isn't touched: a twin of it is read. Throws BookProblem 'damaged' when nothing can be read.
 */
export function salvage({ bookPath, migrations }: SalvageTask, stand = unwatched): SalvageFound {
  return asBookProblem(() => {
    const folder = copiesFolder(bookPath)
    mkdirSync(folder, { recursive: true })
    const twin = join(folder, 'twin.unfinished')
    const path = join(folder, 'salvaged.unfinished')
    const rests = (file: string): string[] => ['', '-wal', '-shm', '-journal'].map((part) => `${file}${part}`)
    for (const rest of [...rests(twin), ...rests(path)]) rmSync(rest, { force: true })
    try {
      for (const part of ['', '-wal'])
        if (existsSync(`${bookPath}${part}`)) copyFileSync(`${bookPath}${part}`, `${twin}${part}`)
      const found = readOut({ twin, path, migrations, stand })
      forceToDisk(path)
      return { path, ...found }
    } catch (error) {
      rmSync(path, { force: true })
      throw error
    } finally {
      for (const rest of rests(twin)) rmSync(rest, { force: true })
    }
  }, bookPath)
}
