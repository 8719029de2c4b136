import type { CutRow } from '../cutting/cutList.ts'
import type { LeafName } from '../gate/leaf.ts'
import { writeInches, writeShortMm } from '../units/writeLength.ts'
import type { Block } from './flow.ts'
import type { Measure } from './page.ts'
import { pieceNames } from './pieceNames.ts'
import { heading, table, type Cell } from './table.ts'

/** A head's two heights stand board by board in the list of boards: here it is enough that it is cut to the top. */
const shortEnds = (ends: string): string =>
  ends.replace(/^head [\d.]+ at the hanging edge, [\d.]+ at the closing edge, cut/, 'head cut to the top')

/** Whether a board differs from the one on the line before in nothing but its lengths and the heights of its head. */
const alike = (row: CutRow, before: CutRow | undefined): boolean =>
  before !== undefined &&
  before.section === row.section &&
  before.width === row.width &&
  shortEnds(before.ends) === shortEnds(row.ends) &&
  row.blank > row.length

/** How the ends are cut and the length to start from; only that where the line before says the rest. */
function endWords(row: CutRow, before: CutRow | undefined): string {
  const first = row.blank > row.length ? `cut first to ${writeShortMm(row.blank)}` : ''
  if (alike(row, before)) return first
  return [shortEnds(row.ends), first].filter((words) => words !== '').join('; ')
}

/** boards: how many each leaf has. */
type CutList = { boards: Partial<Record<LeafName, number>>; width: number }

/** The cut list: a box to tick, the part, its section, how many, the finished length in both units, how its ends are cut. */
export function cutTable(cuts: CutRow[], { boards, width }: CutList, measure: Measure): Block[] {
  const names = cuts.map((row) => pieceNames(row, boards))
  // Boards that are named one by one with their leaf want the room; ends want it otherwise.
  const part = names.some((name) => /: board \d|board \d+, both/.test(name)) ? 41 : 33
  const columns = [
    { title: '', width: 9 },
    { title: 'Part', width: part },
    { title: 'Section', width: 36 },
    { title: 'No.', width: 12, align: 'end' as const, size: 14, weight: 'semibold' as const },
    { title: 'Length mm', width: 22, align: 'end' as const, size: 14, weight: 'semibold' as const },
    { title: 'inches', width: 25, align: 'end' as const, size: 14, weight: 'semibold' as const },
    { title: 'Ends', width: width - 104 - part },
  ]
  const rows = cuts.map((row, i): Cell[] => [
    { tick: true },
    names[i] ?? '',
    alike(row, cuts[i - 1])
      ? 'the same'
      : `${row.section}, ${writeShortMm(row.thickness)} × ${writeShortMm(row.width)}`,
    String(row.quantity),
    writeShortMm(row.length),
    writeInches(row.length),
    endWords(row, cuts[i - 1]),
  ])
  return [heading('Cut list'), ...table({ columns, rows }, measure)]
}

/** How many boards each leaf of a gate has. */
export const boardCounts = (
  leaves: readonly { name: LeafName; boards: readonly unknown[] }[],
): Partial<Record<LeafName, number>> =>
  Object.fromEntries(leaves.map(({ name, boards }) => [name, boards.length]))
