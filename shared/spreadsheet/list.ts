import { guessLayout, type Layout } from './columns.ts'
import { delimiterOf, firstRows, type Delimiter } from './delimiter.ts'
import { readLine, type LineLayout, type ListLine } from './listLine.ts'
import { readRows, type BadLine, type Row, type RowReader } from './rows.ts'

/** A list as it looks from its start: how its columns stand apart, its first rows, and what each column is taken for. */
export type Look = { delimiter: Delimiter; rows: Row[]; layout: Layout }

/**
 * Looks at the start of a list. known: the codes that the price book has, by `codeKey`. whole: nothing follows; otherwise the last line
 * may be cut short and is left out. delimiter: as the person chose it, else found.
 */
export function lookAt(
  start: string,
  known: ReadonlySet<string>,
  how: { whole: boolean; delimiter?: Delimiter | undefined },
): Look {
  const end = Math.max(start.lastIndexOf('\n'), start.lastIndexOf('\r'))
  const text = how.whole || end === -1 ? start : start.slice(0, end + 1)
  const delimiter = how.delimiter ?? delimiterOf(text)
  const rows = firstRows(text, delimiter)
  return { delimiter, rows, layout: guessLayout(rows, known) }
}

/** Where the lines of a list go as they are read. */
export type LineTaker = { line: (line: ListLine) => void; bad: (line: BadLine) => void }

/** Starts reading a list as it was settled. What stands above its headings, and they themselves, are passed over. */
export function readList(
  how: { delimiter: Delimiter; layout: Layout & Pick<LineLayout, 'taxBp'> },
  taker: LineTaker,
): RowReader {
  const above = how.layout.headings?.line ?? 0
  return readRows(how.delimiter, {
    bad: taker.bad,
    row: (row) => {
      if (row.line <= above) return
      const read = readLine(row, how.layout)
      if (read.ok) taker.line(read.line)
      else taker.bad(read.bad)
    },
  })
}
