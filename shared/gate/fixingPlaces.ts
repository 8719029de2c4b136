import { clipToStrip, extremesAlong, inset, middleOf } from '../geometry/polygon.ts'
import { lengthTolerance, type Point } from '../geometry/point.ts'
import { toRadians } from '../units/angle.ts'
import { commonPractice, type Figure } from './figures.ts'
import { betweenLedges, type Board, type Brace, type Fixing, type Ledge } from './leaf.ts'
import { shortReach } from './ledges.ts'
import { figure } from './worked.ts'

/** How far a fixing keeps from a joint between boards, and from a leaf's edge or a ledge's end, mm: common practice. */
export const fromJoint = 20
export const fromEnd = 15

/** Least overlap of a board with a ledge that can be fixed at all, mm: common practice. */
export const leastOverlap = 25

type Span = [number, number]

/** The stretch of a ledge that a board covers, and the room in it for fixings once the edges are kept clear. */
export type Crossing = { overlap: Span; room: Span }

/**
 * Where a board crosses a ledge: its face over the ledge's short edge. The room keeps 20 mm from a joint between boards and 15 mm
 * from the leaf's edge or the ledge's end.
 */
export function crossing(board: Board, ledge: Ledge, at: { first: boolean; last: boolean }): Crossing {
  const [hangingEnd, closingEnd] = shortReach(ledge)
  const [from, to] = [board.x, board.x + board.width]
  const overlap: Span = [Math.max(from, hangingEnd), Math.min(to, closingEnd)]
  const jointBefore = !at.first && from >= hangingEnd
  const jointAfter = !at.last && to <= closingEnd
  return {
    overlap,
    room: [overlap[0] + (jointBefore ? fromJoint : fromEnd), overlap[1] - (jointAfter ? fromJoint : fromEnd)],
  }
}

/** How far above and below the centre line a pair of fixings stands, mm: a quarter of the width, three diameters from the edges. */
export const stagger = (width: number, diameter: number): number =>
  Math.max(0, Math.min(width / 4, width / 2 - 3 * diameter))

/** A fixing's place with the working of both its figures. */
export type Placed = { place: Fixing; x: Figure; y: Figure }

const mm = (value: number, formula: string, inputs: Record<string, number>): Figure =>
  figure(value, 'mm', { formula, inputs, source: commonPractice })

/** A board by its number from 0 at the hanging edge, and the fixing's diameter, mm. */
export type Fixed = { board: Board; index: number; diameter: number }

/** Two fixings at the ends of the room, one above and one below the ledge's centre line. */
function staggeredPair({ overlap, room }: Crossing, ledge: Ledge, diameter: number): [Figure, Figure][] {
  const { width } = ledge.section
  const off = stagger(width, diameter)
  const y = (value: number, sign: '+' | '−') =>
    mm(value, `ledge’s centre line ${sign} min(width / 4, width / 2 − 3 × diameter), 0 at least`, {
      'ledge’s centre line': ledge.y,
      width,
      diameter,
    })
  const start = mm(room[0], 'start of the board over the ledge + distance kept', {
    'starts at': overlap[0],
    'distance kept': room[0] - overlap[0],
  })
  const end = mm(room[1], 'end of the board over the ledge − distance kept', {
    'ends at': overlap[1],
    'distance kept': overlap[1] - room[1],
  })
  return [
    [start, y(ledge.y + off, '+')],
    [end, y(ledge.y - off, '−')],
  ]
}

/** One fixing, in the middle of the board over the ledge. */
const middleOne = ({ overlap: [start, end] }: Crossing, ledge: Ledge): [Figure, Figure] => [
  mm((start + end) / 2, 'middle of the board over the ledge', { 'starts at': start, 'ends at': end }),
  mm(ledge.y, 'ledge’s centre line', { 'ledge’s centre line': ledge.y }),
]

/** The fixings of one board on one ledge: two staggered where there is room of four diameters, else one in the middle of the overlap. */
export function ledgeFixings(crossed: Crossing, ledge: Ledge, at: Omit<Fixed, 'board'>): Placed[] {
  const [from, to] = crossed.room
  const wide = to - from >= 4 * at.diameter - lengthTolerance
  const places = wide ? staggeredPair(crossed, ledge, at.diameter) : [middleOne(crossed, ledge)]
  return places.map(([x, y]) => ({
    place: { x: x.value, y: y.value, joins: 'ledge', member: `${ledge.name} ledge`, board: at.index },
    x,
    y,
  }))
}

/** A brace with the part of it in which fixings may stand: max(15, 3 diameters) in from its edges. */
export type BraceToFix = { brace: Brace; within: Point[] }

export const braceToFix = (brace: Brace, diameter: number): BraceToFix => ({
  brace,
  within: inset(betweenLedges(brace), Math.max(fromEnd, 3 * diameter)),
})

/** The part of a brace in which one board's fixings may stand: within the brace, the board's strip 20 mm in. */
export const braceRoom = (board: Board, { within }: BraceToFix): Point[] =>
  clipToStrip(within, board.x + fromJoint, board.x + board.width - fromJoint)

/** The fixings of one board on one brace: none, one, or two where four diameters lie between them along the brace. */
export function braceFixings({ board, index, diameter }: Fixed, fixed: BraceToFix): Placed[] {
  const { brace } = fixed
  const room = braceRoom(board, fixed)
  if (room.length < 3) return []
  const inputs = {
    'board starts at': board.x,
    'board width': board.width,
    'kept from its edges': fromJoint,
    'kept from the brace’s edges': Math.max(fromEnd, 3 * diameter),
    'brace angle': brace.angle,
  }
  const placed = ([x, y]: Point, where: string): Placed => ({
    place: { x, y, joins: 'brace', member: `${brace.name} brace`, board: index },
    x: mm(x, `${where} of what the board and the brace have in common, edges kept clear`, inputs),
    y: mm(y, `${where} of what the board and the brace have in common, edges kept clear`, inputs),
  })
  const slope = toRadians(brace.angle)
  const { first, last, reach } = extremesAlong(room, [Math.cos(slope), Math.sin(slope)])
  return reach >= 4 * diameter - lengthTolerance
    ? [placed(first, 'lowest corner along the brace'), placed(last, 'highest corner along the brace')]
    : [placed(middleOf(room), 'middle of the corners')]
}
