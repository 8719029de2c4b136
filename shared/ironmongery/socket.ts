import { commonPractice, geometry, type Figure } from '../gate/figures.ts'
import type { GateSpec } from '../gate/spec.ts'
import { figure } from '../gate/worked.ts'
import { catalogueSource, entryOf } from './catalogue.ts'
import type { BoltEntry } from './entry.ts'
import type { SocketPlace } from './fitting.ts'
import { boltForm } from './pieceSize.ts'
import type { PlacedPiece } from './placePieces.ts'

/** Left under the end of a bolt that is right home, so that grit doesn't hold it up, mm: common practice. */
export const roomPastRod = 10

/** Less than this of a rod in its socket holds nothing for long, mm: common practice. */
export const leastInSocket = 20

type Opening = Extract<GateSpec['size'], { from: 'opening' }>

/** The gap that a barrel bolt crosses into post or other leaf, mm. */
function sideGap(spec: GateSpec, size: Opening, side: PlacedPiece['side']): number {
  if (side === 'hanging') return size.hangingGap
  return spec.leaves === 2 ? (size.meetingGap ?? 0) : size.closingGap
}

/** The gap between leaf and ground, head or post as surveyed, mm; null where it isn't known at the bolt: no opening measured, or ground that slopes under a level foot. */
function gapAt(spec: GateSpec, form: BoltEntry['form'], side: PlacedPiece['side']): number | null {
  const { size } = spec
  if (size.from !== 'opening') return null
  if (form === 'barrel') return sideGap(spec, size, side)
  if (form === 'top') return size.headGap ?? null
  return (spec.site?.slopeAlong ?? 0) === 0 || spec.foot === 'follows-ground' ? size.groundGap : null
}

/** How far short of the leaf's foot a drop bolt's rod ends, mm; 0 for other bolts, which end at the leaf's top or edge. */
const shortOfFoot = (form: BoltEntry['form'], { rectangle }: PlacedPiece): number =>
  form === 'drop' ? Math.max(0, rectangle.y) : 0

/** Whether a bolt of a stable door would run into its other half, where there is no socket to drill. */
const intoOtherHalf = ({ form }: BoltEntry, { leaf }: PlacedPiece): boolean =>
  (form === 'drop' && leaf.name === 'upper half') || (form === 'top' && leaf.name === 'lower half')

/**
 * Where a listed bolt's socket goes: across from the leaf's hanging edge to the hole's middle (null for a barrel bolt, whose socket
 * stands at its own height), and how deep; null for another piece. The rod of a drop bolt of throw 150 that
 * ends at the foot, 50 over the ground, goes 100 in: the socket is 110 deep. Where the gap isn't known the whole throw is
 * allowed for. No slot is wanted: ledges don't change in length, so a bolt stays within the hole's own play.
 */
export function socketPlaceOf(spec: GateSpec, placed: PlacedPiece): SocketPlace | null {
  const bolt = entryOf(placed.piece.id, 'bolt')
  if (!bolt || intoOtherHalf(bolt, placed)) return null
  const gap = gapAt(spec, bolt.form, placed.side)
  const inside = bolt.throw - shortOfFoot(bolt.form, placed) - (gap ?? 0)
  const { x, width } = placed.rectangle
  return {
    across: bolt.form === 'barrel' ? null : x + width / 2,
    depth: Math.max(0, inside) + roomPastRod,
    reach: gap === null ? null : inside,
  }
}

const acrossFigure = (placed: PlacedPiece, across: number): Figure => {
  const { x, width } = placed.rectangle
  return figure(across, 'mm', {
    formula: 'plate’s edge from the hanging edge + width of the plate / 2',
    inputs: { 'plate’s edge from the hanging edge': x, 'width of the plate': width },
    source: geometry,
  })
}

function depthFigure(
  spec: GateSpec,
  placed: PlacedPiece,
  { bolt, socket }: { bolt: BoltEntry; socket: SocketPlace },
): Figure {
  const gap = gapAt(spec, bolt.form, placed.side)
  const short = shortOfFoot(bolt.form, placed)
  const parts = [
    ...(short > 0 ? [['rod short of the foot', short] as const] : []),
    ...(gap === null ? [] : [['gap it crosses', gap] as const]),
  ]
  const way = parts.map(([name]) => ` − ${name}`).join('')
  return figure(socket.depth, 'mm', {
    formula: `throw of the bolt${way} + room past its end`,
    inputs: {
      'throw of the bolt': bolt.throw,
      ...Object.fromEntries(parts),
      'room past its end': roomPastRod,
    },
    source: `${catalogueSource}; room past its end: ${commonPractice}`,
  })
}

/** The worked figures of a bolt's socket, by the end of their ids; none for another piece. */
export function socketFigures(spec: GateSpec, placed: PlacedPiece): [string, Figure][] {
  const bolt = entryOf(placed.piece.id, 'bolt')
  const socket = socketPlaceOf(spec, placed)
  if (!bolt || !socket) return []
  const size = figure(bolt.socket, 'mm', {
    formula: 'socket as listed',
    inputs: { socket: bolt.socket },
    source: catalogueSource,
  })
  return [
    ...(socket.across === null
      ? []
      : [['socketAcross', acrossFigure(placed, socket.across)] as [string, Figure]]),
    ['socketHole', size],
    ['socketDepth', depthFigure(spec, placed, { bolt, socket })],
  ]
}

/** Where a bolt's rod goes: 'the ground', 'the head', 'the post' or, on a pair, 'the other leaf'. */
export function socketIn(spec: Pick<GateSpec, 'leaves'>, { piece, side }: PlacedPiece): string {
  const form = boltForm(piece)
  if (form === 'drop') return 'the ground'
  if (form === 'top') return 'the head'
  return spec.leaves === 2 && side === 'closing' ? 'the other leaf' : 'the post'
}
