import type { Board } from '../gate/leaf.ts'
import { figureText } from '../drawing/figureText.ts'
import type { LengthUnit } from '../job/job.ts'
import type { Block } from './flow.ts'
import type { Measure } from './page.ts'
import { heading, table, type Cell } from './table.ts'

const words = { groove: 'groove', tongue: 'tongue', rip: 'rip' }

/** What each edge of a board loses: 'hanging: groove 8', 'closing: rip 9'. */
const loses = (board: Board, write: (mm: number) => string): string =>
  (['hanging', 'closing'] as const)
    .flatMap((edge) => {
      const lost = board.loses[edge]
      return lost === 'nothing' ? [] : [`${edge}: ${words[lost]} ${write(board.strip[edge])}`]
    })
    .join('; ')

const sameEnds = (one: Board, other: Board): boolean =>
  JSON.stringify([one.heads, one.feet]) === JSON.stringify([other.heads, other.feet])

/** Boards next to one another that are left as they come are one line: '2 to 7'. */
function runs(boards: Board[]): { first: number; last: number; board: Board }[] {
  const out: { first: number; last: number; board: Board }[] = []
  boards.forEach((board, i) => {
    const before = out.at(-1)
    const plain =
      board.fence === null && board.loses.hanging === 'nothing' && board.loses.closing === 'nothing'
    if (
      before &&
      plain &&
      before.board.fence === null &&
      before.board.width === board.width &&
      !before.board.ripped &&
      loses(before.board, String) === '' &&
      sameEnds(before.board, board)
    )
      before.last = i + 1
    else out.push({ first: i + 1, last: i + 1, board })
  })
  return out
}

/** Whether a line is cut slanting or curved at any board, so that its heights are wanted. */
const slanting = (boards: Board[], line: 'heads' | 'feet'): boolean => {
  const all = boards.flatMap((board) => board[line])
  return Math.max(...all) - Math.min(...all) > 1e-6
}

/** Columns for the heights of a shaped top or foot at both edges of each board. */
function endColumns(boards: Board[]): { title: string; of: (board: Board) => number }[] {
  const at = (line: 'heads' | 'feet', what: string) =>
    slanting(boards, line)
      ? (['hanging', 'closing'] as const).map((edge, i) => ({
          title: `${what}, ${edge} edge`,
          of: (board: Board) => board[line][i] ?? 0,
        }))
      : []
  return [...at('heads', 'Head'), ...at('feet', 'Foot')]
}

/** Which leaf's boards are listed: title is the list's heading. */
type RipList = { unit: LengthUnit; width: number; measure: Measure; title?: string }

/** Board by board from the hanging edge: face width, where the saw's fence stands, what comes off, and the heights of shaped ends. */
export function ripTable(boards: Board[], list: RipList): Block[] {
  const { unit, width, measure, title = 'Boards, from the hanging edge' } = list
  const { write, other } = figureText(unit)
  const ends = endColumns(boards)
  const both = width > 140 && ends.length < 4
  const taken = (both ? 81 : 61) + ends.length * (unit === 'mm' ? 22 : 26)
  const columns = [
    { title: 'Board', width: 21, size: 13 },
    { title: 'Face', width: 20, align: 'end' as const, size: 14, weight: 'semibold' as const },
    ...(both ? [{ title: unit === 'mm' ? 'inches' : 'mm', width: 20, align: 'end' as const }] : []),
    { title: 'Fence', width: 20, align: 'end' as const, size: 14, weight: 'semibold' as const },
    ...ends.map((end) => ({
      title: end.title,
      width: unit === 'mm' ? 22 : 26,
      align: 'end' as const,
      size: 14,
      weight: 'semibold' as const,
    })),
    { title: 'What it loses', width: width - taken },
  ]
  const rows = runs(boards).map(({ first, last, board }): Cell[] => [
    first === last ? String(first) : `${first} to ${last}`,
    write(board.width),
    ...(both ? [other(board.width).replace(' mm', '')] : []),
    board.fence === null ? '–' : write(board.fence),
    ...ends.map((end) => write(end.of(board))),
    loses(board, write) || 'nothing',
  ])
  return [heading(title), ...table({ columns, rows }, measure)]
}
