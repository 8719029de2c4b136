import { readMoney } from '../../shared/pricing/moneyText.ts'
import { isPence, toPence, type Pence } from '../../shared/pricing/pence.ts'
import { decimalOf, readAmount } from '../../shared/spreadsheet/amount.ts'
import { unguard } from '../../shared/spreadsheet/guard.ts'
import type { PriceRow } from './priceRows.ts'

/** What became of a pasted column: a price for each row from the one it was pasted on, and what couldn't be used, in a sentence. */
export type PastedColumn = { prices: { row: PriceRow; pence: Pence }[]; trouble: string }

/** The cells of the column that was copied: of several columns the last one that holds figures. */
function cellsOf(text: string): string[] {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n$/, '').split('\n')
  const cells = lines.map((line) => line.split('\t').map((cell) => unguard(cell.trim())))
  const width = Math.max(...cells.map(({ length }) => length))
  const columns = Array.from({ length: width }, (_, column) => cells.map((row) => row[column] ?? ''))
  const figures = (column: string[]) => column.filter((cell) => readMoney(cell, 'GBP').ok).length
  return columns.reduce((best, column) =>
    figures(column) >= figures(best) && figures(column) > 0 ? column : best,
  )
}

/**
 * Lays a column copied from a spreadsheet onto rows, cell by cell; the column's decimal mark is told from all of it. An empty cell leaves its
 * row as it is. What can't be read is named with the place in the column, and so is what is left over past the last row.
 */
export function pasteColumn(text: string, rows: readonly PriceRow[]): PastedColumn {
  const cells = cellsOf(text)
  const decimal = decimalOf(cells, 'point')
  const prices: PastedColumn['prices'] = []
  const wrong: string[] = []
  for (const [index, cell] of cells.entries()) {
    const row = rows[index]
    if (cell === '' || !row) continue
    const read = readAmount(cell, decimal)
    const sum = read.ok ? toPence(read.hundredths) : undefined
    if (!read.ok) wrong.push(`number ${index + 1}: ${read.reason}`)
    else if (!row.line) wrong.push(`number ${index + 1}: ${row.item.name} isn’t priced by anything yet`)
    else if (isPence(sum)) prices.push({ row, pence: sum })
  }
  const over = Math.max(0, cells.length - rows.length)
  const left = over > 0 ? [`${over} more than there are lines below`] : []
  const all = [...wrong.slice(0, 3), ...(wrong.length > 3 ? [`${wrong.length - 3} more`] : []), ...left]
  return { prices, trouble: all.length === 0 ? '' : `Not taken from what was pasted: ${all.join('; ')}.` }
}
