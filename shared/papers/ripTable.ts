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
      loses(before.board, String) === ''
    )
      before.last = i + 1
    else out.push({ first: i + 1, last: i + 1, board })
  })
  return out
}

/** Board by board from the hanging edge: face width, where the saw's fence stands, what comes off. */
export function ripTable(
  boards: Board[],
  { unit, width, measure }: { unit: LengthUnit; width: number; measure: Measure },
): Block[] {
  const { write, other } = figureText(unit)
  const both = width > 140
  const columns = [
    { title: 'Board', width: 21, size: 13 },
    { title: 'Face', width: 20, align: 'end' as const, size: 13, weight: 'semibold' as const },
    ...(both ? [{ title: unit === 'mm' ? 'inches' : 'mm', width: 20, align: 'end' as const }] : []),
    { title: 'Fence', width: 20, align: 'end' as const, size: 13, weight: 'semibold' as const },
    { title: 'What it loses', width: width - (both ? 81 : 61) },
  ]
  const rows = runs(boards).map(({ first, last, board }): Cell[] => [
    first === last ? String(first) : `${first} to ${last}`,
    write(board.width),
    ...(both ? [other(board.width).replace(' mm', '')] : []),
    board.fence === null ? '–' : write(board.fence),
    loses(board, write) || 'nothing',
  ])
  return [heading('Boards, from the hanging edge'), ...table({ columns, rows }, measure)]
}
