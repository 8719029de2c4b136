import { lengthTolerance } from '../geometry/point.ts'
import type { Check } from './checks.ts'
import { fixingFigures } from './fixingFigures.ts'
import {
  braceFixings,
  braceToFix,
  crossing,
  leastOverlap,
  ledgeFixings,
  type Placed,
} from './fixingPlaces.ts'
import type { Board, Brace, Fixing, Ledge } from './leaf.ts'
import type { GateSpec } from './spec.ts'
import type { Worked } from './worked.ts'
import { writeShortMm } from '../units/writeLength.ts'

type Parts = { boards: Board[]; ledges: Ledge[]; braces: Brace[] }

/** A board that lies off its ledge, or so little on it that no fixing holds. */
function overlapStop(ledge: Ledge, board: number, overlap: number): Check {
  const off = overlap <= 0
  return {
    id: off ? 'board-off-ledge' : 'overlap-small',
    level: 'stop',
    message: off
      ? `Board ${board + 1} lies off the ${ledge.name} ledge.`
      : `Board ${board + 1} lies only ${writeShortMm(overlap)} mm on the ${ledge.name} ledge; ${leastOverlap} mm is the least that can be fixed.`,
    figures: [`ledge.${ledge.name}.shortLength`, `board.${board + 1}.width`],
    remedy: 'Lessen the ledge inset on that side, or rip elsewhere.',
    field: board === 0 ? 'ledges.hangingInset' : 'ledges.closingInset',
  }
}

function onLedges({ boards, ledges }: Parts, diameter: number): { placed: Placed[]; checks: Check[] } {
  const placed: Placed[] = []
  const checks: Check[] = []
  for (const ledge of ledges)
    boards.forEach((board, index) => {
      const crossed = crossing(board, ledge, { first: index === 0, last: index === boards.length - 1 })
      const overlap = crossed.overlap[1] - crossed.overlap[0]
      if (overlap < leastOverlap - lengthTolerance) checks.push(overlapStop(ledge, index, overlap))
      else placed.push(...ledgeFixings(crossed, ledge, { index, diameter }))
    })
  return { placed, checks }
}

/** Which boards no brace can be fixed to, said as a note. */
function unfixedNote({ boards, braces }: Parts, placed: Placed[]): Check[] {
  if (braces.length === 0) return []
  const fixed = new Set(placed.map(({ place }) => place.board))
  const loose = boards.map((_, index) => index + 1).filter((number) => !fixed.has(number - 1))
  if (loose.length === 0) return []
  return [
    {
      id: 'board-not-on-brace',
      level: 'note',
      message: `${loose.length === 1 ? 'Board' : 'Boards'} ${loose.join(', ')} can’t be fixed to a brace: the ledges alone hold ${loose.length === 1 ? 'it' : 'them'}.`,
      figures: [],
      remedy:
        'Nothing to do unless the board is narrow; ripping elsewhere or a smaller setback brings it over the brace.',
      field: 'boards.rip',
    },
  ]
}

/** Every fixing's place on the leaf: boards to ledges, then boards to braces. The count is the list's length. */
export function placeFixings(spec: GateSpec, parts: Parts): Worked<Fixing[]> {
  const { diameter } = spec.fixings
  const ledges = onLedges(parts, diameter)
  const braces = parts.braces.flatMap((brace) => {
    const fixed = braceToFix(brace, diameter)
    return parts.boards.flatMap((board, index) => braceFixings({ board, index, diameter }, fixed))
  })
  const placed = [...ledges.placed, ...braces]
  return {
    value: placed.map(({ place }) => place),
    figures: fixingFigures(placed, diameter),
    checks: [...ledges.checks, ...unfixedNote(parts, braces)],
  }
}
