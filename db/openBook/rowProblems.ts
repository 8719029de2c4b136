import type { Database } from 'better-sqlite3'
import { received } from '../../shared/gate/parseSpec.ts'
import type { OpenRow, TableName } from '../../shared/openBook/tables.ts'
import type { Problem } from '../../shared/problem.ts'
import { inBook, inFiles } from './columns.ts'

/** A row and where it stands in its file. */
type RowInFile = { table: TableName; row: OpenRow; where: string }

type Pointer = { from: string; table: string; to: string | null }

const refused = (field: string, message: string): Problem => ({ code: 'refused', field, message })

/** What a row points at that isn't there. */
function lostPointer(db: Database, table: TableName, row: OpenRow): Problem | undefined {
  const pointers = db
    .prepare<[string], Pointer>('SELECT "from", "table", "to" FROM pragma_foreign_key_list(?)')
    .all(inBook(table))
  for (const { from, table: other, to } of pointers) {
    const value = row[inFiles(from)] ?? null
    const there = db.prepare<[unknown], { id: unknown }>(
      `SELECT "${to ?? 'id'}" AS id FROM ${other} WHERE "${to ?? 'id'}" = ?`,
    )
    if (value !== null && !there.get(value))
      return refused(
        inFiles(from),
        `got ${received(value)}, which none of ${inFiles(other)} has; accepted is the number of one that is there`,
      )
  }
  return undefined
}

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : ''

function problemFor(db: Database, { table, row }: RowInFile, error: Error): Problem {
  const code = codeOf(error)
  if (code === 'SQLITE_CONSTRAINT_FOREIGNKEY')
    return lostPointer(db, table, row) ?? refused('', 'it points at something that isn’t there')
  if (code === 'SQLITE_CONSTRAINT_UNIQUE' || code === 'SQLITE_CONSTRAINT_PRIMARYKEY') {
    const fields = [...error.message.matchAll(/\.(\w+)/g)].map(([, column]) => inFiles(column ?? ''))
    const got = fields.map((field) => received(row[field])).join(', ')
    return refused(fields.join(', '), `got ${got} a second time, accepted is once`)
  }
  if (code === 'SQLITE_CONSTRAINT_TRIGGER') return refused('', `the book doesn’t take it: ${error.message}`)
  return refused(
    '',
    `the book doesn’t take it: these can’t stand together (${error.message.replace(/^.*failed: /, '')})`,
  )
}

/** What is wrong with a row that the book wouldn't take, in words that name its field. Anything but a refused row is thrown on. */
export function rowProblem(db: Database, at: RowInFile, error: unknown): Problem {
  if (!(error instanceof Error) || !codeOf(error).startsWith('SQLITE_CONSTRAINT')) throw error
  const problem = problemFor(db, at, error)
  return { ...problem, field: problem.field === '' ? at.where : `${at.where}.${problem.field}` }
}
