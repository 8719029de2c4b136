import { workshopSetting, type Figure } from '../gate/figures.ts'
import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec, Ironmongery } from '../gate/spec.ts'
import { figure } from '../gate/worked.ts'
import { allot, type Allotted } from './allot.ts'
import { centredAt, firstClear, type Rectangle } from './clearPlace.ts'
import { hingeLines, lineAt, standardHingePlaces, type HingeLine } from './hingeLines.ts'
import { backBoxOf, boltForm, boxOf, strapOf, type Box } from './pieceSize.ts'
import { usualHeights } from './usualHeights.ts'

/**
 * A piece in its place on a leaf. height is its middle from the leaf's foot and how says how that was found; rectangle what it lies on;
 * onBack what it
 * takes up on the back, or null; line the ledge or rail under a hinge, or null.
 */
export type PlacedPiece = {
  piece: Ironmongery
  entry: number
  leaf: Leaf
  side: 'hanging' | 'closing'
  height: number
  how: Figure
  rectangle: Rectangle
  onBack: Rectangle | null
  line: HingeLine | null
}

/** How far in from the leaf's edge a handle or a bolt that runs up and down stands, mm: common practice, room for knuckles. */
const standsIn = { handle: 60, bolt: 15 }

const asEntered = (y: number): Figure =>
  figure(y, 'mm', { formula: 'height as entered', inputs: { entered: y }, source: workshopSetting })

const lineFigure = (line: HingeLine | null, y: number): Figure =>
  figure(y, 'mm', {
    formula: line ? `centre line of the ${line.name}` : 'evenly between the outer hinges',
    inputs: { [line ? `${line.name} from the foot` : 'height']: y },
    source: 'common practice: hinges on the lines of the ledges',
  })

/** The hinges of one leaf in their places. pin is how far in from the hanging edge they turn, mm. */
function placeHinges(leaf: Leaf, hinges: readonly Allotted[], pin: number): PlacedPiece[] {
  const usual = standardHingePlaces(leaf, hinges.length)
  return hinges.flatMap(({ piece, entry, height }, index): PlacedPiece[] => {
    const place = usual[index]
    const y = height ?? place?.y
    if (y === undefined) return []
    const line = height === null ? (place?.line ?? null) : lineAt(hingeLines(leaf), y)
    const { strapLength, band } = strapOf(piece)
    return [
      {
        piece,
        entry,
        leaf,
        side: 'hanging',
        height: y,
        how: height === null ? lineFigure(line, y) : asEntered(height),
        rectangle: { x: pin, y: y - band.width / 2, width: strapLength, height: band.width },
        onBack: null,
        line,
      },
    ]
  })
}

/** Where a piece begins across the leaf, from the edge it belongs to. */
function across(piece: Ironmongery, leaf: Leaf, box: Box): Omit<Rectangle, 'y'> {
  const upright = piece.kind === 'bolt' && boltForm(piece) !== 'barrel'
  const inset = piece.kind === 'handle' ? standsIn.handle : upright ? standsIn.bolt : 0
  return { ...box, x: piece.side === 'hanging' ? inset : leaf.width - inset - box.width }
}

/** Pieces in the order that they find their places in: a lock before the latch that stands beside it. */
const order: readonly Ironmongery['kind'][] = ['lock', 'latch', 'bolt', 'handle', 'other']

function placeOthers(spec: GateSpec, leaf: Leaf, pieces: readonly Allotted[]): PlacedPiece[] {
  const placed: PlacedPiece[] = []
  for (const kind of order)
    for (const { piece, entry, height } of pieces.filter((one) => one.piece.kind === kind)) {
      const at = across(piece, leaf, boxOf(piece))
      const behind = backBoxOf(spec, piece)
      const onBack = behind && across(piece, leaf, behind)
      const taken = placed.map(({ rectangle }) => rectangle)
      const found = height === null ? usualHeights({ spec, leaf, piece }, at, taken) : [asEntered(height)]
      const y = firstClear(leaf, at, { heights: found.map(({ value }) => value), taken, onBack })
      const how = found.find(({ value }) => value === y) ?? asEntered(y)
      const side = piece.side ?? 'closing'
      placed.push({
        piece,
        entry,
        leaf,
        side,
        height: y,
        how,
        rectangle: centredAt(at, y),
        onBack: onBack && centredAt(onBack, y),
        line: null,
      })
    }
  return placed
}

/** Every piece of a gate in its place, leaf by leaf: hinges bottom up, then what belongs to the closing edge. */
export function placePieces(spec: GateSpec, leaves: readonly Leaf[]): PlacedPiece[] {
  const all = allot(spec, leaves)
  return leaves.flatMap((leaf) => {
    const own = all.filter((one) => one.leaf === leaf)
    const hinges = own.filter(({ piece }) => piece.kind === 'hinge')
    return [
      ...placeHinges(leaf, hinges, spec.site?.pinInset ?? 0).sort((a, b) => a.height - b.height),
      ...placeOthers(
        spec,
        leaf,
        own.filter(({ piece }) => piece.kind !== 'hinge'),
      ),
    ]
  })
}
