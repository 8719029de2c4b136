import type { Database } from 'better-sqlite3'

/** A table's cells as they lie in a book. */
export type Row = Record<string, unknown>

/** What could be read of a table, and how many rows answered with an error. */
export type Readable = { rows: Row[]; unreadable: number }

const atOnce = 500
/** How many whole pieces in a row may give nothing before a table whose end can't be asked for is taken to have ended. */
const emptyPieces = 8
const farthest = 50_000_000

type Piece = { rows: Row[]; failed: number }

/** Reads rows first to last by their number; a piece that can't be read is halved, down to single rows. */
function readPiece(ask: (from: number, to: number) => Row[], from: number, to: number): Piece {
  try {
    return { rows: ask(from, to), failed: 0 }
  } catch {
    // The page is damaged: narrower pieces may miss it. What can't be read is counted, and told.
    if (from === to) return { rows: [], failed: 1 }
    const middle = Math.floor((from + to) / 2)
    const [low, high] = [readPiece(ask, from, middle), readPiece(ask, middle + 1, to)]
    return { rows: [...low.rows, ...high.rows], failed: low.failed + high.failed }
  }
}

/** The highest row number, or null where not even that can be read. */
function highest(db: Database, table: string): number | null {
  try {
    const found: unknown = db.prepare(`SELECT max(rowid) FROM "${table}"`).pluck().get()
    return typeof found === 'number' ? found : 0
  } catch {
    return null
  }
}

/** Every row of a table with row numbers that can still be read. The table's name and columns are the program's own. */
export function readNumbered(db: Database, table: string, columns: string): Readable {
  const question = db.prepare<[number, number], Row>(
    `SELECT ${columns} FROM "${table}" NOT INDEXED WHERE rowid BETWEEN ? AND ?`,
  )
  const ask = (from: number, to: number): Row[] => question.all(from, to)
  const end = highest(db, table)
  const rows: Row[] = []
  let [unreadable, trailing, empty] = [0, 0, 0]
  for (let from = 1; from <= Math.min(end ?? farthest, farthest); from += atOnce) {
    const piece = readPiece(ask, from, Math.min(from + atOnce - 1, end ?? farthest))
    rows.push(...piece.rows)
    trailing += piece.failed
    empty = piece.rows.length === 0 ? empty + 1 : 0
    // Failures past the last row that is there are of rows that never were.
    if (piece.rows.length > 0 || end !== null) {
      unreadable += trailing
      trailing = 0
    }
    if (end === null && empty >= emptyPieces) break
  }
  return { rows, unreadable }
}

/** Rows of a table without row numbers: from its beginning until one can't be read, and from its end likewise. */
export function readKeyed(
  db: Database,
  { table, columns, keys }: { table: string; columns: string; keys: string[] },
): Readable {
  const found = new Map<string, Row>()
  let unreadable = 0
  for (const direction of ['ASC', 'DESC']) {
    const order = keys.map((key) => `"${key}" ${direction}`).join(', ')
    try {
      for (const row of db.prepare<[], Row>(`SELECT ${columns} FROM "${table}" ORDER BY ${order}`).iterate())
        found.set(JSON.stringify(keys.map((key) => row[key])), row)
    } catch {
      // The end of what can be read from this side; at least one row stood there.
      unreadable = 1
    }
  }
  return { rows: [...found.values()], unreadable }
}
