import { isSumWithPence } from './amount.ts'
import { namingLine, readRows, usualCount, type Row } from './rows.ts'

/** What may stand between the cells of a list, likeliest last where nothing else decides. */
export const delimiters = [',', '|', ';', '\t'] as const
export type Delimiter = (typeof delimiters)[number]

/** How many rows of a list's start are looked at to tell its columns. */
export const sampleRows = 200

/** The first rows of a text with its cells apart by a delimiter. */
export function firstRows(text: string, delimiter: Delimiter): Row[] {
  const rows: Row[] = []
  const reader = readRows(delimiter, { row: (row) => rows.push(row), bad: () => {} })
  reader.feed(text)
  reader.end()
  return rows.slice(0, sampleRows)
}

/** The delimiter that a first line such as 'sep=;' names; undefined where there is none. */
export const namedDelimiter = (text: string): Delimiter | undefined =>
  delimiters.find((one) => one === namingLine.exec(text)?.[1])

/**
 * How well a delimiter fits: the share of rows with the usual count of columns, and the share with a whole sum in a cell of its own
 * (a comma that parts pounds from pence makes even columns too); more columns decide between equals.
 */
function fit(text: string, delimiter: Delimiter): number {
  const rows = firstRows(text, delimiter)
  const usual = usualCount(rows)
  if (usual.rows === 0) return 0
  const withSum = rows.filter(({ cells }) => cells.some(isSumWithPence)).length
  return (usual.rows + withSum) / rows.length + Math.min(usual.columns, 50) / 1000
}

/** The delimiter of a list from its start: as its first line names it, else the best fit. ';' for a list of one column. */
export function delimiterOf(text: string): Delimiter {
  const named = namedDelimiter(text)
  if (named) return named
  const fits = delimiters.map((delimiter) => ({ delimiter, fit: fit(text, delimiter) }))
  return fits.reduce((best, one) => (one.fit >= best.fit && one.fit > 0 ? one : best), {
    delimiter: ';' as Delimiter,
    fit: 0,
  }).delimiter
}
