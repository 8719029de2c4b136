import type { Column } from '../../shared/openBook/column.ts'
import { columnsIn, type OpenRow, type TableName } from '../../shared/openBook/tables.ts'
import { BookProblem } from '../bookProblem.ts'

/** The book's own name for a table or a column: `orderLines` is `order_lines`. */
export const inBook = (name: string): string => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)

/** The open files' name for a column of the book: `price_pence` is `pricePence`. */
export const inFiles = (name: string): string =>
  name.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase())

/** A value as it lies in the book. */
export type Cell = string | number | Buffer | null

const opened = (cell: Cell, { kind, optional }: Column): unknown => {
  if (kind === 'flag') return cell === 1
  if (kind !== 'tree' || (optional && cell === null)) return cell
  return JSON.parse(String(cell)) as unknown
}

/** Makes rows of the book into rows of open files. Throws BookProblem 'damaged' where one can't be read any more. */
export function rowOpener(table: TableName, layout: number): (stored: Record<string, Cell>) => OpenRow {
  const columns = columnsIn(table, layout).map(([key, column]) => [key, inBook(key), column] as const)
  return (stored) => {
    try {
      return Object.fromEntries(
        columns.map(([key, own, column]) => [key, opened(stored[own] ?? null, column)]),
      )
    } catch (error) {
      if (!(error instanceof SyntaxError)) throw error
      throw new BookProblem(
        'damaged',
        'Part of the job book can’t be read: it is damaged there. Bring back a copy of the book.',
        error,
      )
    }
  }
}

/** A value of an open file as the book keeps it. */
export function cellOf(value: unknown, { kind, optional }: Column): Cell {
  if (kind === 'flag') return value === true ? 1 : 0
  if (optional && value === null) return null
  if (kind === 'tree') return JSON.stringify(value)
  return typeof value === 'number' || typeof value === 'string' ? value : null
}
