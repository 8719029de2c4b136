import type { CutRow } from '../cutting/cutList.ts'
import { writeInches, writeShortMm } from '../units/writeLength.ts'
import type { Block } from './flow.ts'
import type { Measure } from './page.ts'
import { heading, table, type Cell } from './table.ts'

/** The single pieces of a row: 'ledges: bottom, top', 'lower brace'; boards are told apart in their own list. */
function pieces({ part, marks, quantity }: CutRow): string {
  if (part === 'board') return quantity === 1 ? 'board' : 'boards'
  if (marks.length < 2) return marks[0]?.replace(/^single /, '') ?? part
  const kind = marks[0]?.split(' ').at(-1) ?? part
  if (!marks.every((mark) => mark.endsWith(` ${kind}`))) return marks.join(', ')
  return `${kind}s: ${marks.map((mark) => mark.slice(0, -kind.length - 1)).join(', ')}`
}

/** The cut list: a box to tick, the part, its section, how many, the finished length in both units, how its ends are cut. */
export function cutTable(cuts: CutRow[], width: number, measure: Measure): Block[] {
  const columns = [
    { title: '', width: 9 },
    { title: 'Part', width: 33 },
    { title: 'Section', width: 36 },
    { title: 'No.', width: 12, align: 'end' as const, size: 14, weight: 'semibold' as const },
    { title: 'Length mm', width: 22, align: 'end' as const, size: 14, weight: 'semibold' as const },
    { title: 'inches', width: 25, align: 'end' as const, size: 14, weight: 'semibold' as const },
    { title: 'Ends', width: width - 137 },
  ]
  const rows = cuts.map((row): Cell[] => [
    { tick: true },
    pieces(row),
    `${row.section}, ${writeShortMm(row.thickness)} × ${writeShortMm(row.width)}`,
    String(row.quantity),
    writeShortMm(row.length),
    writeInches(row.length),
    row.blank > row.length ? `${row.ends}; cut first to ${writeShortMm(row.blank)}` : row.ends,
  ])
  return [heading('Cut list'), ...table({ columns, rows }, measure)]
}
