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

/** How rows of a watched table are read and written by what deeds say of them. To be called inside one writing. */
export function rowsOf({ db }: Connection, { table, key: keyNames, columns }: Watched): Rows {
  const where = keyNames.map((name) => `${quoted(name)} = ?`).join(' AND ')
  const keyCells = (key: Cells) => keyNames.map((name) => key[name])
  const trees = new Set(columns.flatMap(({ name, tree }) => (tree ? [name] : [])))
  const stored = (name: string, cell: unknown): unknown =>
    trees.has(name) && cell !== null && cell !== undefined ? JSON.stringify(cell) : (cell ?? null)
  const names = columns.map(({ name }) => name)
  return {
    read: (key) => {
      const found = db
        .prepare<unknown[], Cells>(
          `SELECT ${names.map(quoted).join(', ')} FROM main.${quoted(table)} WHERE ${where}`,
        )
        .get(...keyCells(key))
      return (
        found &&
        Object.fromEntries(
          names.map((name) => {
            const cell = found[name]
            return [name, trees.has(name) && typeof cell === 'string' ? (JSON.parse(cell) as unknown) : cell]
          }),
        )
      )
    },
    insert: (row) => {
      const marks = names.map(() => '?').join(', ')
      const cells = names.map((name) => stored(name, row[name]))
      db.prepare(`INSERT INTO main.${quoted(table)} (${names.map(quoted).join(', ')}) VALUES (${marks})`).run(
        ...cells,
      )
    },
    update: (key, row, changed) => {
      const own = names.filter((name) => changed.includes(name))
      if (own.length === 0) return
      const version = table === 'options' ? ', version = version + 1' : ''
      const sets = own.map((name) => `${quoted(name)} = ?`).join(', ')
      const cells = own.map((name) => stored(name, row[name]))
      db.prepare(`UPDATE main.${quoted(table)} SET ${sets}${version} WHERE ${where}`).run(
        ...cells,
        ...keyCells(key),
      )
    },
    drop: (key) => void db.prepare(`DELETE FROM main.${quoted(table)} WHERE ${where}`).run(...keyCells(key)),
    mark: (key, column, value) =>
      db
        .prepare(`UPDATE main.${quoted(table)} SET ${quoted(column)} = ? WHERE ${where}`)
        .run(value, ...keyCells(key)).changes > 0,
  }
}
