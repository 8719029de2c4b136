import { createHash } from 'node:crypto'
import Sqlite from 'better-sqlite3'
import { staysHome } from '../../shared/openBook/tables.ts'

/**
 * What isn't compared. The index of words keeps pages of its own beside what it holds (`…_data`, `_idx`, `_content`, `_docsize`,
 * `_config`), whose layout follows the order of writing; what it holds is compared. What SQLite keeps for itself isn't the book's, and what can be taken back
 * stays with the book it was done in.
 */
const own = /^sqlite_|_(data|idx|content|docsize|config)$/

const plain = (value: unknown): unknown =>
  Buffer.isBuffer(value) ? createHash('sha256').update(value).digest('hex') : value

/** Every row of every table, columns that are worked out included, by table. */
export function everyRow(path: string): Record<string, unknown[]> {
  const db = new Sqlite(path, { readonly: true })
  try {
    const tables = db
      .prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
      .all()
      .map(({ name }) => name)
      .filter((name) => !own.test(name) && !staysHome.includes(name))
    return Object.fromEntries(
      tables.map((table) => {
        const columns = db
          .prepare<[string], { name: string }>('SELECT name FROM pragma_table_xinfo(?) WHERE hidden <> 1')
          .all(table)
          .map(({ name }) => `"${name}"`)
        const id = table.endsWith('_words') ? ['rowid', ...columns] : columns
        const rows = db
          .prepare<[], Record<string, unknown>>(`SELECT ${id.join(', ')} FROM "${table}"`)
          .all()
          .map((row) => Object.fromEntries(Object.entries(row).map(([key, value]) => [key, plain(value)])))
          .map((row) => JSON.stringify(row))
        return [table, rows.sort()]
      }),
    )
  } finally {
    db.close()
  }
}

/** The rules a book keeps: its tables, indexes and guards. */
export function rulesOf(path: string): string[] {
  const db = new Sqlite(path, { readonly: true })
  try {
    return db
      .prepare<[], { sql: string }>('SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY sql')
      .all()
      .map(({ sql }) => sql)
  } finally {
    db.close()
  }
}
