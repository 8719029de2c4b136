import Papa, { type ParseConfig } from 'papaparse'

/** A row of a list: the line it begins on, counted from 1, and its cells as written. */
export type Row = { line: number; cells: string[] }

/** A line that can't be told apart into cells, and why. text is what stands there, cut short. */
export type BadLine = { line: number; text: string; reason: string }

/** Where rows go as they are told apart. */
export type RowTaker = { row: (row: Row) => void; bad: (line: BadLine) => void }

/**
 * Takes a list's text piece by piece. feed answers false once there is no sense in going on; end takes what is left. gaveUp is why,
 * in a sentence, where the list as a whole can't be told apart.
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

const lineEnds = (text: string): number => text.split('\n').length - 1
const start = (text: string): string => text.slice(0, 80)

type Found = { cells: string[]; from: number; to: number; torn: boolean }

/** Tells the whole rows at the start of a text apart, until one is torn by a stray quotation mark. last: nothing follows. */
function wholeRows(
  text: string,
  how: { delimiter: string; last: boolean },
  found: (row: Found) => void,
): number {
  let from = 0
  const config: ParseConfig<string[][]> = {
    delimiter: how.delimiter,
    newline: '\n',
    step: ({ data, errors, meta }, parser) => {
      const cells = data[0]
      if (!cells) return
      const torn = errors.length > 0 && text.slice(from, meta.cursor).trimEnd().includes('\n')
      const unclosed = errors.some(({ code }) => code === 'MissingQuotes')
      found({ cells, from, to: meta.cursor, torn: torn || unclosed })
      if (torn || unclosed) parser.abort()
      else from = meta.cursor
    },
  }
  new Papa.Parser(config).parse(text, 0, !how.last)
  return from
}

/**
 * Starts reading a list whose cells stand apart by delimiter. Cells may stand in quotation marks, with line ends inside them. A
 * quotation mark that is never closed spoils its own line only: the reading goes on with the next one. Empty rows are passed over.
 */
export function readRows(delimiter: string, taker: RowTaker): RowReader {
  let held = ''
  let line = 1
  let broken = 0
  let heldReturn = false
  let gaveUp: string | undefined

  const spoil = () => {
    const end = held.indexOf('\n')
    const text = end === -1 ? held : held.slice(0, end)
    taker.bad({ line, text: start(text), reason: text.includes('"') ? notClosed : tooLong })
    held = end === -1 ? '' : held.slice(end + 1)
    line += 1
    if (++broken > mostBroken)
      gaveUp = `More than ${mostBroken} lines have a quotation mark that isn’t closed, the last on line ${line - 1}. Ask the merchant for the list anew, or choose another way of telling the columns apart.`
  }
  const take = (last: boolean) => {
    for (;;) {
      let torn = false
      const read = wholeRows(held, { delimiter, last }, (row) => {
        torn = row.torn
        if (torn) return
        const naming = line === 1 && namingLine.test(held.slice(row.from, row.to))
        if (!naming && row.cells.some((cell) => cell.trim() !== '')) taker.row({ line, cells: row.cells })
        line += lineEnds(held.slice(row.from, row.to))
      })
      held = held.slice(read)
      if (!torn && (last || held.length <= mostRow)) return
      spoil()
      if (gaveUp !== undefined || held === '') return
    }
  }
  return {
    feed: (text) => {
      if (gaveUp !== undefined) return false
      const joined = heldReturn ? `\r${text}` : text
      heldReturn = joined.endsWith('\r')
      const whole = heldReturn ? joined.slice(0, -1) : joined
      held += whole.includes('\r') ? whole.replace(/\r\n?/g, '\n') : whole
      take(false)
      return gaveUp === undefined
    },
    end: () => {
      if (heldReturn) held += '\n'
      if (gaveUp === undefined && held !== '') take(true)
    },
    lines: () => line,
    gaveUp: () => gaveUp,
  }
}
