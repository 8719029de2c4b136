import type { Block } from './flow.ts'
import type { Measure, PageMark } from './page.ts'
import { hairline, strongLine, type, words } from './quotationLook.ts'
import { fitWords, lineHeight, linesAt, setLines } from './words.ts'

/** Columns of figures at the right of a price, each so wide, mm; the words have what is left of width. */
export type PriceColumns = { width: number; figure: number; count: number; measure: Measure }

/** A row of a price: its words, and the figures in its columns from left to right. strong: large, under a heavy line. */
export type PriceRow = { words: string; figures: string[]; strong?: boolean; quiet?: boolean }

const padding = 1.3

/** Space between a figure and what stands at its left, mm. */
const gutter = 3

/** Right edge of each column of figures from the left of the price, mm. */
const edges = ({ width, figure, count }: PriceColumns): number[] =>
  Array.from({ length: count }, (_, i) => width - (count - 1 - i) * figure)

/** One row: words wrapped at the left, figures against the right of their columns on its first line. */
export function priceRow(row: PriceRow, columns: PriceColumns): Block {
  const { width, figure, count, measure } = columns
  const weight = row.strong ? 'semibold' : 'regular'
  const size = row.strong ? type.heading : type.body
  const ink = row.quiet ? 'grey' : 'black'
  const room = width - count * figure - gutter
  const lines = setLines([{ text: row.words, weight }], { width: room, size, measure })
  const height = lines.length * lineHeight(size) + 2 * padding
  return {
    height,
    marks: (x, y) => {
      const baseline = y + padding + size * 0.3
      return [
        ...linesAt(lines, { x, y: baseline, size, ink }),
        ...edges(columns).flatMap((edge, i): PageMark[] => {
          const text = row.figures[i] ?? ''
          if (text === '') return []
          const fitted = fitWords(text, { width: figure - gutter, most: size, least: 6, weight }, measure)
          return [words(fitted.text, { x: x + edge, y: baseline }, { ...fitted, weight, ink, anchor: 'end' })]
        }),
        row.strong ? strongLine(x, y + height, width) : hairline(x, y + height, width),
      ]
    },
  }
}

/** Headings over the columns of figures, wrapped and set against their right. */
export function priceHead(titles: string[], columns: PriceColumns): Block {
  const { width, figure, measure } = columns
  const size = type.small
  const set = titles.map((text) =>
    setLines([{ text, weight: 'regular' }], { width: figure - gutter, size, measure }),
  )
  const deepest = Math.max(1, ...set.map((lines) => lines.length))
  const height = deepest * lineHeight(size) + padding
  return {
    height,
    above: 1,
    withNext: true,
    marks: (x, y) => [
      ...edges(columns).flatMap((edge, i) => {
        const lines = set[i] ?? []
        const top = y + size * 0.3 + (deepest - lines.length) * lineHeight(size)
        return linesAt(lines, { x: x + edge, y: top, size, ink: 'grey' }).map((mark) => ({
          ...mark,
          x: x + edge,
          anchor: 'end' as const,
        }))
      }),
      strongLine(x, y + height, width),
    ],
  }
}

/** Rows of a price under their headings, which are set again where the rows go on over a page. */
export const underHead = (head: Block | undefined, rows: Block[]): Block[] =>
  head ? [head, ...rows.map((row, i) => (i === 0 ? row : { ...row, again: head }))] : rows

/** Rows as blocks: the first two keep together, and the sums with the last line before them. */
export const priceRows = (rows: PriceRow[], columns: PriceColumns, sums: number): Block[] =>
  rows.map((row, i): Block => ({
    ...priceRow(row, columns),
    withNext: i < rows.length - 1 && (i === 0 || i >= rows.length - 1 - sums),
  }))
