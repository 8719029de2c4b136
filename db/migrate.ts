import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Database } from 'better-sqlite3'
import { BookProblem } from './bookProblem.ts'

/** One numbered step of the book's layout. Never edited once landed. */
export type Migration = { number: number; name: string; sql: string }

const stepName = /^(\d{4})-([a-z0-9-]+)\.sql$/

/**
 * The steps in a folder, in order; by default the folder beside this file, which a bundle copies along.
 * Throws when a number is missing or comes twice: a gap would leave books that no test has seen.
 */
export function readMigrations(
  folder = fileURLToPath(new URL('./migrations/', import.meta.url)),
): Migration[] {
  const found = readdirSync(folder)
    .map((file) => ({ file, match: stepName.exec(file) }))
    .flatMap(({ file, match }) =>
      match
        ? [{ number: Number(match[1]), name: match[2] ?? '', sql: readFileSync(join(folder, file), 'utf8') }]
        : [],
    )
    .sort((a, b) => a.number - b.number)
  found.forEach((step, index) => {
    if (step.number !== index + 1)
      throw new Error(`migration ${index + 1} is missing or comes twice in ${folder}`)
  })
  if (found.length === 0) throw new Error(`no migrations in ${folder}`)
  return found
}

/** The book's layout number: how many steps it has been through. */
export const layoutOf = (db: Database): number => Number(db.pragma('user_version', { simple: true }))

/** The steps a book still needs. Refuses a book laid out by a newer program: writing in it could spoil what it holds. */
export function pendingSteps(db: Database, migrations: Migration[]): Migration[] {
  const stands = layoutOf(db)
  const latest = migrations.at(-1)?.number ?? 0
  if (stands > latest)
    throw new BookProblem(
      'newer',
      'This job book was made by a newer Bracework. Bring the program up to date, then open it again.',
    )
  return migrations.filter((step) => step.number > stands)
}

function take(db: Database, step: Migration): void {
  if (layoutOf(db) >= step.number) return
  db.exec(step.sql)
  const broken = db.pragma('foreign_key_check')
  if (Array.isArray(broken) && broken.length > 0)
    throw new Error(`migration ${step.number} left ${broken.length} rows that belong to nothing`)
  db.pragma(`user_version = ${step.number}`)
}

/**
 * Takes the pending steps, each in its own transaction together with the raised layout number, so that a power cut
 * leaves the book before a step or after it. Foreign keys are off meanwhile (a table may have to be rebuilt), checked before
 * each step is kept, and on afterwards. Another window may have been quicker: the number is read again inside.
 */
export function migrate(db: Database, migrations: Migration[]): void {
  const pending = pendingSteps(db, migrations)
  db.pragma('foreign_keys = OFF')
  try {
    for (const step of pending) db.transaction(take).immediate(db, step)
  } finally {
    db.pragma('foreign_keys = ON')
  }
}
