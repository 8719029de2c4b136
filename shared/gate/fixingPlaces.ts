import { clipToStrip, extremesAlong, inset, middleOf } from '../geometry/polygon.ts'
import { lengthTolerance, type Point } from '../geometry/point.ts'
import type { Board, Brace, Fixing, Ledge } from './leaf.ts'
import { shortReach } from './ledges.ts'

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

/** The fixings of one board on one ledge: two staggered where there is room of four diameters, else one in the middle of the overlap. */
export function ledgeFixings(crossed: Crossing, ledge: Ledge, board: number, diameter: number): Fixing[] {
  const member = `${ledge.name} ledge`
  const [from, to] = crossed.room
  const place = (x: number, y: number): Fixing => ({ x, y, joins: 'ledge', member, board })
  if (to - from < 4 * diameter - lengthTolerance)
    return [place((crossed.overlap[0] + crossed.overlap[1]) / 2, ledge.y)]
  const off = stagger(ledge.section.width, diameter)
  return [place(from, ledge.y + off), place(to, ledge.y - off)]
}

/** The part of a brace in which one board's fixings may stand: the board's strip 20 mm in, the brace max(15, 3 diameters) in. */
export const braceRoom = (board: Board, brace: Brace, diameter: number): Point[] =>
  clipToStrip(
    inset(brace.outline, Math.max(fromEnd, 3 * diameter)),
    board.x + fromJoint,
    board.x + board.width - fromJoint,
  )

/** The fixings of one board on one brace: none, one, or two where four diameters lie between them along the brace. */
export function braceFixings(board: Board, brace: Brace, index: number, diameter: number): Fixing[] {
  const room = braceRoom(board, brace, diameter)
  if (room.length < 3) return []
  const place = ([x, y]: Point): Fixing => ({
    x,
    y,
    joins: 'brace',
    member: `${brace.name} brace`,
    board: index,
  })
  const slope = (brace.angle * Math.PI) / 180
  const { first, last, reach } = extremesAlong(room, [Math.cos(slope), Math.sin(slope)])
  return reach >= 4 * diameter - lengthTolerance ? [place(first), place(last)] : [place(middleOf(room))]
}
