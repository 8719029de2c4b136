import type { Leaf } from '../gate/leaf.ts'
import type { Point } from '../geometry/point.ts'
import { entryOf } from './catalogue.ts'
import { cornersOf } from './clearPlace.ts'
import type { FittingShape } from './fitting.ts'
import type { PlacedPiece } from './placePieces.ts'
import { boltForm, strapOf, type Strap } from './pieceSize.ts'

/** A round seen from the front as a polygon of so many sides: enough that it reads as round at any scale printed. */
const sides = 16
const round = ([x, y]: Point, radius: number): Point[] =>
  Array.from({ length: sides }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / sides
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)]
  })

/** A strap from its pin: straight, then tapering over its last fifth to just over half its width. */
function strapOutline({ strapLength, band }: Strap, pin: number, y: number): Point[] {
  const half = band.width / 2
  const [shoulder, tip] = [pin + strapLength * 0.8, pin + strapLength]
  return [
    [pin, y - half],
    [shoulder, y - half],
    [tip, y - half * 0.55],
    [tip, y + half * 0.55],
    [shoulder, y + half],
    [pin, y + half],
  ]
}

function hingeShapes({ piece, height, rectangle }: PlacedPiece): FittingShape[] {
  const strap = strapOf(piece)
  const pin = rectangle.x
  const { width, height: high } = strap.plate
  return [
    { part: 'strap', outline: strapOutline(strap, pin, height) },
    {
      part: 'post plate',
      outline: cornersOf({ x: pin - strap.pin / 2 - width, y: height - high / 2, width, height: high }),
    },
    { part: 'pin', outline: round([pin, height], strap.pin / 2) },
  ]
}

/** How far along a lock's case the keyhole's middle is: its backset from the edge of the leaf that it stands at. */
export function keyholeAt({ piece, rectangle, height, side }: PlacedPiece, leaf: Pick<Leaf, 'width'>): Point {
  const backset = entryOf(piece.id, 'lock')?.backset ?? rectangle.width * 0.6
  return [side === 'hanging' ? backset : leaf.width - backset, height]
}

function lockShapes(placed: PlacedPiece): FittingShape[] {
  const [x, y] = keyholeAt(placed, placed.leaf)
  const keyhole = entryOf(placed.piece.id, 'lock')?.keyhole ?? { drill: 10, length: 24 }
  const { drill: width, length: height } = keyhole
  return [
    { part: 'case', outline: cornersOf(placed.rectangle) },
    { part: 'keyhole', outline: cornersOf({ x: x - width / 2, y: y - height / 2, width, height }) },
  ]
}

function boltShapes({ piece, rectangle }: PlacedPiece): FittingShape[] {
  const rod = entryOf(piece.id, 'bolt')?.rod ?? 12
  const { x, y, width, height } = rectangle
  const lying = boltForm(piece) === 'barrel'
  return [
    { part: 'plate', outline: cornersOf(rectangle) },
    {
      part: 'rod',
      outline: cornersOf(
        lying
          ? { x, y: y + height / 2 - rod / 2, width, height: rod }
          : { x: x + width / 2 - rod / 2, y, width: rod, height },
      ),
    },
  ]
}

/** What a piece looks like from the front, in leaf coordinates: outlines anticlockwise. */
export function shapesOf(placed: PlacedPiece): FittingShape[] {
  const { kind } = placed.piece
  if (kind === 'hinge') return hingeShapes(placed)
  if (kind === 'lock') return lockShapes(placed)
  if (kind === 'bolt') return boltShapes(placed)
  return [{ part: 'plate', outline: cornersOf(placed.rectangle) }]
}
