import type { Database } from 'better-sqlite3'
import { BookProblem } from '../bookProblem.ts'
import { connect, type Connection } from '../connection.ts'

type Named = { name: string }
type Guard = Named & { sql: string }

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`

/** The book's ordinary tables, those that are pointed at before those that point: by how often each must wait for another. */
function tablesOf(db: Database): string[] {
  const names = db
    .prepare<[], Named>(
      `SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name`,
    )
    .all()
    .map(({ name }) => name)
  const pointsAt = new Map(
    names.map((name) => [
      name,
      db
        .prepare<[string], { table: string }>('SELECT "table" FROM pragma_foreign_key_list(?)')
        .all(name)
        .map(({ table }) => table)
        .filter((table) => table !== name),
    ]),
  )
  const placed: string[] = []
  while (placed.length < names.length) {
    const next = names.filter(
      (name) => !placed.includes(name) && pointsAt.get(name)?.every((other) => placed.includes(other)),
    )
    if (next.length === 0) throw new Error('tables of the book point at each other in a ring')
    placed.push(...next)
  }
  return placed
}

/** Columns that hold something of their own: not those worked out of others. */
const columnsOf = (db: Database, table: string): string =>
  db
    .prepare<[string], Named>("SELECT name FROM pragma_table_xinfo(?, 'main') WHERE hidden = 0 ORDER BY cid")
    .all(table)
    .map(({ name }) => quoted(name))
    .join(', ')

const wordTables = {
  job_words: 'rowid, number, customer, town, phone, title, notes, sizes',
  customer_words: 'rowid, name, town, phone',
}

function replaceRows(db: Database): void {
  const tables = tablesOf(db)
  for (const table of Object.keys(wordTables)) db.exec(`DELETE FROM main.${table}`)
  for (const table of [...tables].reverse()) db.exec(`DELETE FROM main.${quoted(table)}`)
  for (const table of tables) {
    const columns = columnsOf(db, table)
    db.exec(`INSERT INTO main.${quoted(table)} (${columns}) SELECT ${columns} FROM coming.${quoted(table)}`)
  }
  for (const [table, columns] of Object.entries(wordTables))
    db.exec(`INSERT INTO main.${table} (${columns}) SELECT ${columns} FROM coming.${table}`)
}

/** bookPath: the book, which may be open; staged: the waiting book. */
export type TakeOverTask = { bookPath: string; staged: string }

/**
 * Puts a waiting book's rows in the place of a book's, all or none, by a connection of its own. The guards that keep jobs and papers in the book
 * are lifted for this one writing and stand again at its end; a copy of the book must have been made before, and nobody else may write meanwhile.
 */
export function takeOver({ bookPath, staged }: TakeOverTask): void {
  const connection = connect(bookPath, () => '')
  try {
    replaceBy(connection, staged)
  } finally {
    connection.close()
  }
}

function replaceBy({ db, read, write }: Connection, staged: string): void {
  read(() => db.prepare('ATTACH ? AS coming').run(staged))
  try {
    write(() => {
      db.pragma('defer_foreign_keys = ON')
      const guards = db
        .prepare<[], Guard>("SELECT name, sql FROM main.sqlite_schema WHERE type = 'trigger' ORDER BY rowid")
        .all()
      for (const { name } of guards) db.exec(`DROP TRIGGER main.${quoted(name)}`)
      replaceRows(db)
      for (const { sql } of guards) db.exec(sql)
      const lost = db.pragma('main.foreign_key_check')
      if (!Array.isArray(lost) || lost.length > 0)
        throw new BookProblem(
          'unsafe',
          'What was to be brought in doesn’t hold together, so the book was left as it is.',
        )
    })
  } finally {
    db.exec('DETACH coming')
  }
}
