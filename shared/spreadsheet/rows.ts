import { evenLines, wholeRows } from './wholeRows.ts'

/** A row of a list: the line it begins on, counted from 1, and its cells as written. */
export type Row = { line: number; cells: string[] }

/** A line that can't be used, and why. text is what stands there, cut short. */
export type BadLine = { line: number; text: string; reason: string }

/** Where rows go as they are told apart. */
export type RowTaker = { row: (row: Row) => void; bad: (line: BadLine) => void }

/**
 * Takes a list's text piece by piece. feed answers false once there is no sense in going on; end takes what is left. gaveUp is why,
 * in a sentence, where the list as a whole can't be told apart. lines: how many were gone through.
 */
export type RowReader = {
  feed: (text: string) => boolean
  end: () => void
  lines: () => number
  gaveUp: () => string | undefined
}

/** A row longer than this isn't one: a quotation mark was opened in it and never closed. */
const mostRow = 20_000
/** With more lines than this that can't be told apart, it is no list. */
const mostBroken = 200
const notClosed = 'a quotation mark is opened on this line and not closed'
const tooLong = 'too long to be a line of a list'

/** A first line that names the delimiter for spreadsheets ('sep=;') and is no row. */
export const namingLine = /^"?sep=([;,|\t])"?[ \t]*(?:\r\n|\n|\r|$)/i

/** What is still to be told apart, and how far the reading has come. */
type Reading = { held: string; line: number; broken: number; gaveUp: string | undefined }

const lineEnds = (text: string): number => text.split('\n').length - 1

/** Gives the line at the start of what is held up for lost. */
function spoil(reading: Reading, taker: RowTaker): void {
  const end = reading.held.indexOf('\n')
  const text = end === -1 ? reading.held : reading.held.slice(0, end)
  taker.bad({
    line: reading.line,
    text: text.slice(0, 80),
    reason: text.includes('"') ? notClosed : tooLong,
  })
  reading.held = end === -1 ? '' : reading.held.slice(end + 1)
  reading.broken += 1
  if (reading.broken > mostBroken)
    reading.gaveUp = `More than ${mostBroken} lines can’t be told apart, the last of them line ${reading.line}: a quotation mark is opened and not closed. Ask the merchant for the list anew, or say what stands between its columns.`
  reading.line += 1
}

/** Takes the rows at the start of what is held, as far as they go unbroken; answers whether a torn one stands there now. */
function takeRows(reading: Reading, how: { delimiter: string; last: boolean }, taker: RowTaker): boolean {
  const { held } = reading
  let torn = false
  const read = wholeRows(held, how, (row) => {
    torn = row.torn
    if (torn) return
    const naming = reading.line === 1 && namingLine.test(held.slice(row.from, row.to))
    if (!naming && row.cells.some((cell) => cell.trim() !== ''))
      taker.row({ line: reading.line, cells: row.cells })
    reading.line += lineEnds(held.slice(row.from, row.to))
  })
  reading.held = held.slice(read)
  return torn
}

/**
 * Starts reading a list whose cells stand apart by delimiter. Cells may stand in quotation marks, with line ends inside them. A
 * quotation mark that is never closed spoils its own line only: the reading goes on with the next one. Empty rows are passed over.
 */
export function readRows(delimiter: string, taker: RowTaker): RowReader {
  const reading: Reading = { held: '', line: 1, broken: 0, gaveUp: undefined }
  const even = evenLines()
  const take = (last: boolean) => {
    while (reading.held !== '' && reading.gaveUp === undefined) {
      const torn = takeRows(reading, { delimiter, last }, taker)
      if (!torn && (last || reading.held.length <= mostRow)) return
      spoil(reading, taker)
    }
  }
  return {
    feed: (text) => {
      reading.held += even.feed(text)
      take(false)
      return reading.gaveUp === undefined
    },
    end: () => {
      reading.held += even.end()
      take(true)
    },
    lines: () => reading.line - 1,
    gaveUp: () => reading.gaveUp,
  }
}

/** How many columns most of the rows have, and how many have that many. One column tells nothing: 1 column, 0 rows. */
export function usualCount(rows: readonly Row[]): { columns: number; rows: number } {
  const counts = new Map<number, number>()
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1)
  counts.delete(1)
  return [...counts].reduce(
    (best, [columns, times]) => (times > best.rows ? { columns, rows: times } : best),
    { columns: 1, rows: 0 },
  )
}
