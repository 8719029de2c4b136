import { createHash } from 'node:crypto'
import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'

type Table = { name: string; type: string }

/**
 * What counts, of tables that hold more: a rise that broke off counts for nothing, and is cleared away when the book is next opened; what the
 * book remembers of its copies changes with every opening.
 */
const counting: Record<string, string> = {
  settings: "WHERE key <> 'keeping'",
  rises: 'WHERE finished_at IS NOT NULL',
  prices: 'WHERE rise_id IN (SELECT id FROM rises WHERE finished_at IS NOT NULL)',
}

/** Everything a person could find in a book, word index included: the rows of all its tables, as one hash. */
export function digestOf(db: Database): string {
  const tables = db
    .prepare<[], Table>(
      `SELECT name, type FROM pragma_table_list WHERE schema = 'main' AND type IN ('table', 'virtual')
       AND name NOT LIKE 'sqlite_%' ORDER BY name`,
    )
    .all()
  const hash = createHash('sha256').update(`layout ${String(db.pragma('user_version', { simple: true }))}`)
  for (const { name, type } of tables) {
    const columns = type === 'virtual' ? 'rowid, *' : '*'
    const rows = db
      .prepare(`SELECT ${columns} FROM "${name}" ${counting[name] ?? ''} ORDER BY 1, 2`)
      .raw(true)
      .iterate()
    hash.update(`\n${name}\n`)
    for (const row of rows) hash.update(JSON.stringify(row))
  }
  return hash.digest('hex')
}

/** What makes a file no sound book; nothing when it is one. */
export function faultsOf(db: Database): string[] {
  const sound = db.pragma('integrity_check', { simple: true })
  const orphans = db.prepare('SELECT * FROM pragma_foreign_key_check').all()
  const torn = db
    .prepare<[], { id: number; bytes: Uint8Array; sha256: string }>('SELECT id, bytes, sha256 FROM papers')
    .all()
    .filter(({ bytes, sha256 }) => createHash('sha256').update(bytes).digest('hex') !== sha256)
  return [
    ...(sound === 'ok' ? [] : [String(sound)]),
    ...(orphans.length === 0 ? [] : [`${orphans.length} rows that belong to nothing`]),
    ...torn.map(({ id }) => `paper ${id} is no longer what was issued`),
  ]
}

/** A book's digest and faults, looked at from outside without writing in it. */
export function lookedAt(path: string): { digest: string; faults: string[] } {
  const db = new Sqlite(path, { readonly: true })
  try {
    return { digest: digestOf(db), faults: faultsOf(db) }
  } finally {
    db.close()
  }
}

/** The same, looked at in a twin with the pages last written to it, so that nothing comes to lie beside the file. What is no book has that as its fault. */
export function twinLookedAt(path: string): { digest: string; faults: string[] } {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-twin-'))
  try {
    for (const part of ['', '-wal'])
      if (existsSync(`${path}${part}`)) copyFileSync(`${path}${part}`, join(folder, `twin.book${part}`))
    return lookedAt(join(folder, 'twin.book'))
  } catch (error) {
    return { digest: '', faults: [String(error)] }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
