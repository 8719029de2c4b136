import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'
import { BookProblem } from './bookProblem.ts'

/** Forces a file onto the disk, so that a power cut can't take it back. */
export function forceToDisk(path: string): void {
  const file = openSync(path, 'r+')
  try {
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
}

/** Forces a new or renamed file's entry in its folder onto the disk. Windows keeps it with the file and can't be asked. */
export function forceFolderToDisk(path: string): void {
  if (process.platform === 'win32') return
  const folder = openSync(dirname(path), 'r')
  try {
    fsyncSync(folder)
  } finally {
    closeSync(folder)
  }
}

/** How many rows each ordinary table holds. */
export function rowCounts(db: Database): Record<string, number> {
  const tables = db
    .prepare<[], { name: string }>(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name",
    )
    .all()
  const count = (name: string) =>
    db.prepare<[], { rows: number }>(`SELECT count(*) AS rows FROM "${name.replaceAll('"', '""')}"`).get()
      ?.rows ?? 0
  return Object.fromEntries(tables.map(({ name }) => [name, count(name)]))
}

/** The first name that nothing has yet: without a suffix, then with -2, -3 … taken: what else than a file of that name stands in the way. */
export const freeName = (
  wanted: (suffix: string) => string,
  taken: (path: string) => boolean = existsSync,
): string => {
  for (let turn = 1; ; turn += 1) {
    const path = wanted(turn === 1 ? '' : `-${turn}`)
    if (!taken(path)) return path
  }
}

function check(path: string, original: Database): void {
  const copy = new Sqlite(path, { readonly: true })
  try {
    const sound = copy.pragma('integrity_check', { simple: true }) === 'ok'
    const alike = ['application_id', 'user_version'].every(
      (name) => copy.pragma(name, { simple: true }) === original.pragma(name, { simple: true }),
    )
    const whole = JSON.stringify(rowCounts(copy)) === JSON.stringify(rowCounts(original))
    if (!sound || !alike || !whole)
      throw new BookProblem(
        'unsafe',
        'A safe copy of the job book could not be made, so it was left as it is. Check the disk and try again.',
      )
  } finally {
    copy.close()
  }
}

/**
 * A copy of an open book in one file of its own, checked before it gets its name: written under a temporary name, opened,
 * its soundness and its row counts compared, forced to disk, then renamed. Never writes over an older copy
 * (`…-2` is tried next). `wanted` makes the name from a suffix. Gives the copy's path.
 */
export function verifiedCopy(db: Database, wanted: (suffix: string) => string): string {
  const path = freeName(wanted)
  const unfinished = `${path}.unfinished`
  rmSync(unfinished, { force: true })
  try {
    db.prepare('VACUUM INTO ?').run(unfinished)
    check(unfinished, db)
    forceToDisk(unfinished)
    renameSync(unfinished, path)
    forceFolderToDisk(path)
  } finally {
    rmSync(unfinished, { force: true })
  }
  return path
}
