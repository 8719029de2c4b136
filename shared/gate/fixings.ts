import { lengthTolerance } from '../geometry/point.ts'
import type { Check } from './checks.ts'
import { commonPractice, geometry, type Figures } from './figures.ts'
import { braceFixings, crossing, fromEnd, fromJoint, leastOverlap, ledgeFixings } from './fixingPlaces.ts'
import type { Board, Brace, Fixing, Ledge } from './leaf.ts'
import type { GateSpec } from './spec.ts'
import { figure, type Worked } from './worked.ts'
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

function onLedges({ boards, ledges }: Parts, diameter: number): { places: Fixing[]; checks: Check[] } {
  const places: Fixing[] = []
  const checks: Check[] = []
  for (const ledge of ledges)
    boards.forEach((board, index) => {
      const crossed = crossing(board, ledge, { first: index === 0, last: index === boards.length - 1 })
      const overlap = crossed.overlap[1] - crossed.overlap[0]
      if (overlap < leastOverlap - lengthTolerance) checks.push(overlapStop(ledge, index, overlap))
      else places.push(...ledgeFixings(crossed, ledge, index, diameter))
    })
  return { places, checks }
}

/** Which boards no brace can be fixed to, said as a note. */
function unfixedNote({ boards, braces }: Parts, places: Fixing[]): Check[] {
  if (braces.length === 0) return []
  const fixed = new Set(places.map((place) => place.board))
  const loose = boards.map((_, index) => index + 1).filter((number) => !fixed.has(number - 1))
  if (loose.length === 0) return []
  return [
    {
      id: 'board-not-on-brace',
      level: 'note',
      message: `${loose.length === 1 ? 'Board' : 'Boards'} ${loose.join(', ')} can't be fixed to a brace: the ledges alone hold ${loose.length === 1 ? 'it' : 'them'}.`,
      figures: [],
      remedy:
        'Nothing to do unless the board is narrow; ripping elsewhere or a smaller setback brings it over the brace.',
      field: 'boards.rip',
    },
  ]
}

function fixingFigures(places: Fixing[], diameter: number): Figures {
  const figures: Figures = {}
  for (const joins of ['ledge', 'brace'] as const) {
    const own = places.filter((place) => place.joins === joins)
    if (own.length === 0) continue
    const crossings = new Set(own.map((place) => `${place.member}|${place.board}`)).size
    figures[`fixings.${joins}`] = figure(own.length, 'no.', {
      formula: 'crossings with room for one + 2 × crossings with room of 4 × diameter or more',
      inputs: {
        'crossings with room for one': 2 * crossings - own.length,
        'crossings with room for two': own.length - crossings,
        diameter,
      },
      source:
        joins === 'ledge'
          ? 'two staggered fixings a crossing: L. Goring, Manual of Purpose-Made Woodworking Joinery, p. 86'
          : commonPractice,
    })
  }
  figures['fixings.count'] = figure(places.length, 'no.', {
    formula: 'places on the ledges + places on the braces',
    inputs: {
      'places on the ledges': places.filter((place) => place.joins === 'ledge').length,
      'places on the braces': places.filter((place) => place.joins === 'brace').length,
    },
    source: geometry,
  })
  figures['fixings.fromJoint'] = figure(fromJoint, 'mm', {
    formula: 'set distance from a board joint',
    inputs: { set: fromJoint },
    source: commonPractice,
  })
  figures['fixings.fromEnd'] = figure(fromEnd, 'mm', {
    formula: "set distance from a leaf's or ledge's end",
    inputs: { set: fromEnd },
    source: commonPractice,
  })
  return figures
}

/** Every fixing's place on the leaf: boards to ledges, then boards to braces. The count is the list's length. */
export function placeFixings(spec: GateSpec, parts: Parts): Worked<Fixing[]> {
  const { diameter } = spec.fixings
  const ledges = onLedges(parts, diameter)
  const braces = parts.braces.flatMap((brace) =>
    parts.boards.flatMap((board, index) => braceFixings(board, brace, index, diameter)),
  )
  const places = [...ledges.places, ...braces]
  return {
    value: places,
    figures: fixingFigures(places, diameter),
    checks: [...ledges.checks, ...unfixedNote(parts, braces)],
  }
}
