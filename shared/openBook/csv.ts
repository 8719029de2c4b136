import { bad, good, type Problem, type Result } from '../problem.ts'
import { columnsIn, type OpenRow, type TableName } from './tables.ts'
import { text, type Column } from './column.ts'

/** A spreadsheet would work out a cell that begins so; an apostrophe before it keeps it words. Ours comes off again on reading. */
const guarded = /^[=+\-@\t\r']/
const quoted = /[",\r\n]/
const mark = '\ufeff'

const asWords = (value: unknown, { kind }: Column): string => {
  if (value === null || value === undefined) return ''
  if (kind === 'flag') return value === true ? 'yes' : 'no'
  if (kind !== 'text') return String(value)
  const words = String(value)
  return guarded.test(words) ? `'${words}` : words
}

const cell = (words: string): string => (quoted.test(words) ? `"${words.replaceAll('"', '""')}"` : words)

/** Columns that stand in a list for whoever reads it: what the numbers beside them are called. They are not read back. */
const besides: Partial<Record<TableName, readonly string[]>> = {
  prices: ['itemName', 'supplierName', 'origin'],
}

const headOf = (table: TableName, layout: number): string[] => [
  ...columnsIn(table, layout).map(([key]) => key),
  ...(besides[table] ?? []),
]

/** The first line of a table's list: its columns' names. */
export const csvHead = (table: TableName, layout: number): string =>
  `${mark}${headOf(table, layout).join(',')}\r\n`

/** One row of a table as a line of its list, with the words for its reader. A cell left empty holds nothing. */
export const csvLine = (
  table: TableName,
  layout: number,
): ((row: OpenRow, beside?: readonly string[]) => string) => {
  const columns = columnsIn(table, layout)
  return (row, beside = []) =>
    `${[
      ...columns.map(([key, column]) => cell(asWords(row[key], column))),
      ...beside.map((words) => cell(asWords(words, text))),
    ].join(',')}\r\n`
}

type Cells = { cells: string[]; line: number }

/** Where a quoted cell ends: at the quote that isn't doubled. -1: nowhere. */
function endOfQuoted(list: string, from: number): number {
  for (let at = list.indexOf('"', from); at >= 0; at = list.indexOf('"', at + 2))
    if (list[at + 1] !== '"') return at
  return -1
}

/** The cells of a list line by line. Throws RangeError with the line's number where a quote has no end. */
function* linesOf(list: string): Generator<Cells> {
  let at = list.startsWith(mark) ? 1 : 0
  let line = 1
  while (at < list.length) {
    const cells: string[] = []
    for (;;) {
      if (list[at] === '"') {
        const end = endOfQuoted(list, at + 1)
        if (end < 0) throw new RangeError(String(line))
        cells.push(list.slice(at + 1, end).replaceAll('""', '"'))
        at = end + 1
      } else {
        const start = at
        while (at < list.length && list[at] !== ',' && list[at] !== '\r' && list[at] !== '\n') at += 1
        cells.push(list.slice(start, at))
      }
      if (list[at] !== ',') break
      at += 1
    }
    if (list[at] === '\r') at += 1
    if (list[at] === '\n') at += 1
    else if (at < list.length) throw new RangeError(String(line))
    yield { cells, line }
    line += 1
  }
}

const number = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/

function valueOf(words: string, { kind, optional }: Column): unknown {
  if (words === '' && (optional || kind !== 'text')) return null
  if (kind === 'number') return number.test(words) ? Number(words) : words
  if (kind === 'flag') return words === 'yes' ? true : words === 'no' ? false : words
  return words.startsWith("'") ? words.slice(1) : words
}

const wrong = (field: string, message: string): Problem => ({ code: 'refused', field, message })

/**
 * Reads a table's list: a step for every row, `{ row, where }` with where as 'line 12', or the one problem that ends it. Cells hold values
 * not yet checked; the row's own reader does that.
 */
export function* csvRows(
  list: string,
  table: TableName,
  layout: number,
): Generator<Result<{ row: OpenRow; where: string }>> {
  const columns = columnsIn(table, layout)
  const head = headOf(table, layout)
  const accepted = head.join(', ')
  try {
    for (const { cells, line } of linesOf(list)) {
      if (line === 1) {
        if (cells.join(', ') === accepted) continue
        return yield bad(
          wrong('line 1', `got the columns ${cells.join(', ').slice(0, 200)}, accepted are ${accepted}`),
        )
      }
      if (cells.length !== head.length)
        return yield bad(wrong(`line ${line}`, `got ${cells.length} cells, accepted are ${head.length}`))
      const row = Object.fromEntries(
        columns.map(([key, column], place) => [key, valueOf(cells[place] ?? '', column)]),
      )
      yield good({ row, where: `line ${line}` })
    }
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    yield bad(
      wrong(
        `line ${error.message}`,
        'a quotation mark there has no fellow; accepted is a list as it was taken out',
      ),
    )
  }
}
