import Papa, { type ParseConfig } from 'papaparse'

/** A row found at the start of a text: its cells, and from where to where it stands. torn: a stray quotation mark runs through its end. */
export type FoundRow = { cells: string[]; from: number; to: number; torn: boolean }

/**
 * Tells the whole rows of a text apart, until one is torn. Lines end with \n. last: nothing follows, so that the last row is whole too.
 * Gives where the first row that wasn't told apart begins.
 */
export function wholeRows(
  text: string,
  how: { delimiter: string; last: boolean },
  found: (row: FoundRow) => void,
): number {
  let from = 0
  const config: ParseConfig<string[][]> = {
    delimiter: how.delimiter,
    newline: '\n',
    step: ({ data, errors, meta }) => {
      const cells = data[0]
      if (!cells) return
      const runsOn = text.slice(from, meta.cursor).trimEnd().includes('\n')
      const unclosed = errors.some(({ code }) => code === 'MissingQuotes')
      const torn = unclosed || (errors.length > 0 && runsOn)
      found({ cells, from, to: meta.cursor, torn })
      if (torn) parser.abort()
      else from = meta.cursor
    },
  }
  const parser = new Papa.Parser(config)
  parser.parse(text, 0, !how.last)
  return from
}

/** Makes all three ways of ending a line into \n, piece by piece: a piece may end between the two letters of one. */
export function evenLines(): { feed: (text: string) => string; end: () => string } {
  let held = false
  return {
    feed: (text) => {
      const all = held ? `\r${text}` : text
      held = all.endsWith('\r')
      const whole = held ? all.slice(0, -1) : all
      return whole.includes('\r') ? whole.replace(/\r\n?/g, '\n') : whole
    },
    end: () => (held ? '\n' : ''),
  }
}
