import type { Block } from './flow.ts'
import type { Measure, PageMark, Weight } from './page.ts'
import { lineHeight, linesAt, setLines, type Setting } from './words.ts'

/** A column: its heading, its width in mm, and how its figures are set. size in points. */
export type Column = { title: string; width: number; align?: 'start' | 'end'; size?: number; weight?: Weight }

/** What stands in a cell: words, or a box to tick. */
export type Cell = string | { tick: true }

const [headSize, bodySize, padding, gutter] = [11, 11, 1.2, 3]

type Grid = { columns: Column[]; measure: Measure }

function cellLines(cell: Cell, column: Column, measure: Measure) {
  if (typeof cell !== 'string') return []
  const size = column.size ?? bodySize
  return setLines([{ text: cell, weight: column.weight ?? 'regular' }], {
    width: column.width - gutter,
    size,
    measure,
  })
}

const lefts = (columns: Column[]): number[] =>
  columns.map((_, i) => columns.slice(0, i).reduce((sum, column) => sum + column.width, 0))

/** A line under a row: light between rows, heavy under the headings. */
const rule = (x: number, y: number, { width, heavy }: { width: number; heavy: boolean }): PageMark => ({
  kind: 'line',
  x1: x,
  y1: y,
  x2: x + width,
  y2: y,
  width: heavy ? 0.4 : 0.18,
  ink: heavy ? 'black' : 'grey',
})

/** A cell in its column, with its place on the page, mm. */
type PlacedCell = { cell: Cell; column: Column; x: number; y: number; baseline: number }

/** Words of a cell at the top left of its place; figures of an end-aligned column stand against its right. */
function cellMarks({ cell, column, ...at }: PlacedCell, measure: Measure): PageMark[] {
  if (typeof cell !== 'string')
    return [
      { kind: 'box', x: at.x, y: at.y + padding, width: 5, height: 5, stroke: { width: 0.4, ink: 'black' } },
    ]
  const size = column.size ?? bodySize
  const lines = cellLines(cell, column, measure)
  const marks = linesAt(lines, { x: at.x, y: at.baseline, size, ink: 'black' })
  if (column.align !== 'end') return marks
  return marks.map((mark) => ({ ...mark, x: at.x + column.width - gutter, anchor: 'end' }))
}

function row(cells: Cell[], { columns, measure }: Grid): Block {
  const biggest = Math.max(...columns.map((column) => column.size ?? bodySize))
  const rise = biggest * 0.27
  const depths = columns.map((column, i) => {
    const lines = cellLines(cells[i] ?? '', column, measure)
    return Math.max(0, lines.length - 1) * lineHeight(column.size ?? bodySize)
  })
  const least = cells.some((cell) => typeof cell !== 'string') ? 5 : 4.2
  const height = Math.max(least, rise + Math.max(...depths)) + 2 * padding
  const width = columns.reduce((sum, column) => sum + column.width, 0)
  return {
    height,
    marks: (x, y) => [
      ...columns.flatMap((column, i) =>
        cellMarks(
          {
            cell: cells[i] ?? '',
            column,
            x: x + (lefts(columns)[i] ?? 0),
            y,
            baseline: y + padding + Math.max(rise, 3.6),
          },
          measure,
        ),
      ),
      rule(x, y + height, { width, heavy: false }),
    ],
  }
}

function head({ columns, measure }: Grid): Block {
  const set = columns.map((column) =>
    setLines([{ text: column.title, weight: 'regular' }], {
      width: column.width - gutter + 1.5,
      size: headSize,
      measure,
    }),
  )
  const deepest = Math.max(1, ...set.map((lines) => lines.length))
  const height = deepest * lineHeight(headSize) + 1.6
  const width = columns.reduce((sum, column) => sum + column.width, 0)
  return {
    height,
    withNext: true,
    marks: (x, y) => [
      ...columns.flatMap((column, i) => {
        const lines = set[i] ?? []
        const top = y + 3.3 + (deepest - lines.length) * lineHeight(headSize)
        const left = x + (lefts(columns)[i] ?? 0)
        const marks = linesAt(lines, { x: left, y: top, size: headSize, ink: 'grey' })
        return column.align === 'end'
          ? marks.map((mark) => ({ ...mark, x: left + column.width - gutter, anchor: 'end' as const }))
          : marks
      }),
      rule(x, y + height, { width, heavy: true }),
    ],
  }
}

/** The first rows stay together, and the last two; the last stays with a note under the table. */
const keepsNext = (i: number, count: number, followed: boolean): boolean =>
  i === count - 1 ? followed : i < 2 || i === count - 2

/** A table: its columns, the cells of each row, and whether the last row is kept with the block that comes after it. */
export type Table = { columns: Column[]; rows: Cell[][]; followed?: boolean }

/** A table as blocks: its heading row kept with the first rows and set again where it goes on over a page, each row in one piece. */
export function table({ columns, rows, followed = false }: Table, measure: Measure): Block[] {
  const grid = { columns, measure }
  const first = head(grid)
  return [
    first,
    ...rows.map((cells, i): Block => ({
      ...row(cells, grid),
      withNext: keepsNext(i, rows.length, followed),
      ...(i > 0 ? { again: first } : {}),
    })),
  ]
}

/** A section's own heading, kept with what follows. room is given where its words aren't the program's own: they go on over the line. */
export function heading(text: string, room?: Omit<Setting, 'size'>): Block {
  const run = { text, weight: 'semibold' as const }
  const lines = room ? setLines([run], { ...room, size: 14 }) : [[{ ...run, x: 0 }]]
  return {
    height: 7.2 + (lines.length - 1) * lineHeight(14),
    above: 4.3,
    withNext: true,
    marks: (x, y) => linesAt(lines, { x, y: y + 4.8, size: 14, ink: 'black' }),
  }
}

/** Words across a width as one block, in the body's size unless another is given. */
export function paragraph(text: string, setting: Omit<Setting, 'size'> & { size?: number }): Block {
  const { size = bodySize } = setting
  const lines = setLines([{ text, weight: 'regular' }], { ...setting, size })
  return {
    height: lines.length * lineHeight(size) + 0.6,
    above: 0.8,
    marks: (x, y) => linesAt(lines, { x, y: y + size * 0.3, size, ink: 'black' }),
  }
}
