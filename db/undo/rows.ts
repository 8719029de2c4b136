import type { Cells } from '../../shared/undo/step.ts'
import type { Connection } from '../connection.ts'
import type { Watched } from './watched.ts'

/** The rows of one watched table, by their key, as cells with their trees opened. */
export type Rows = {
  read: (key: Cells) => Cells | undefined
  insert: (row: Cells) => void
  update: (key: Cells, row: Cells, names: readonly string[]) => void
  drop: (key: Cells) => void
  /** Sets a mark of the row's own: put_away, taken_back_at. False when there is no such row. */
  mark: (key: Cells, column: string, value: unknown) => boolean
}

const quoted = (name: string): string => `"${name}"`

/** What a row says, trees opened; and a cell as it is kept. */
const opened = ({ columns }: Watched, found: Cells): Cells =>
  Object.fromEntries(
    columns.map(({ name, tree }) => {
      const cell = found[name]
      return [name, tree && typeof cell === 'string' ? (JSON.parse(cell) as unknown) : cell]
    }),
  )

const shut =
  ({ columns }: Watched) =>
  (row: Cells, name: string): unknown => {
    const cell = row[name] ?? null
    const tree = columns.some((column) => column.name === name && column.tree)
    return tree && cell !== null ? JSON.stringify(cell) : cell
  }

/** How rows of a watched table are read and written by what deeds say of them. To be called inside one writing. */
export function rowsOf({ db }: Connection, watched: Watched): Rows {
  const table = `main.${quoted(watched.table)}`
  const where = watched.key.map((name) => `${quoted(name)} = ?`).join(' AND ')
  const keyCells = (key: Cells) => watched.key.map((name) => key[name])
  const stored = shut(watched)
  const names = watched.columns.map(({ name }) => name)
  const listed = names.map(quoted).join(', ')
  return {
    read: (key) => {
      const read = db.prepare<unknown[], Cells>(`SELECT ${listed} FROM ${table} WHERE ${where}`)
      const found = read.get(...keyCells(key))
      return found && opened(watched, found)
    },
    insert: (row) => {
      const marks = names.map(() => '?').join(', ')
      const cells = names.map((name) => stored(row, name))
      db.prepare(`INSERT INTO ${table} (${listed}) VALUES (${marks})`).run(...cells)
    },
    update: (key, row, changed) => {
      const own = names.filter((name) => changed.includes(name))
      if (own.length === 0) return
      const version = watched.table === 'options' ? ', version = version + 1' : ''
      const sets = own.map((name) => `${quoted(name)} = ?`).join(', ')
      const cells = own.map((name) => stored(row, name))
      db.prepare(`UPDATE ${table} SET ${sets}${version} WHERE ${where}`).run(...cells, ...keyCells(key))
    },
    drop: (key) => void db.prepare(`DELETE FROM ${table} WHERE ${where}`).run(...keyCells(key)),
    mark: (key, column, value) => {
      const set = db.prepare(`UPDATE ${table} SET ${quoted(column)} = ? WHERE ${where}`)
      return set.run(value, ...keyCells(key)).changes > 0
    },
  }
}
