import { clearanceDrill, leadDrill, leadHole, type LeadHole } from '../gate/leadHole.ts'
import type { GateSpec } from '../gate/spec.ts'
import { workshopOf } from '../gate/standardSpec.ts'
import type { Point } from '../geometry/point.ts'
import { ovenDryGravity, speciesNamed } from '../timber/species.ts'
import { catalogue, entryOf } from './catalogue.ts'
import type { Rectangle } from './clearPlace.ts'
import type { Drilling } from './fitting.ts'
import { hingeLines, lineAt } from './hingeLines.ts'
import { leafThickness, strapOf } from './pieceSize.ts'
import type { PlacedPiece } from './placePieces.ts'
import { keyholeAt } from './shapes.ts'

/** Wood left between the end of a screw's lead hole and the far surface, mm: common practice. */
export const woodLeft = 3

/** Clearance round a bolt, mm at most: EN 1995-1-1 §10.4.3, a bolt's hole no more than 1 mm over the bolt; from memory. */
const mostBoltClearance = 1

/** Wood under a piece, mm: the leaf's whole thickness over a ledge, rail or stile, else the boards alone. */
export function woodUnder(spec: GateSpec, { leaf, rectangle, height }: PlacedPiece): number {
  const middle = rectangle.x + rectangle.width / 2
  const onStile =
    spec.frame !== undefined &&
    (middle <= spec.frame.stile.width || middle >= leaf.width - spec.frame.stile.width)
  const thick = onStile || lineAt(hingeLines(leaf), height) !== null
  return thick ? leafThickness(spec) : spec.boards.section.thickness
}

const edge = 8

/** Screw places on a plate: two columns (or rows, when it lies wide) near its edges. */
function onPlate({ x, y, width, height }: Rectangle, count: number): Point[] {
  const upright = height >= width
  const rows = Math.ceil(count / 2)
  return Array.from({ length: count }, (_, i): Point => {
    const row = Math.floor(i / 2)
    const share = rows === 1 ? 0.5 : row / (rows - 1)
    const along = edge + share * ((upright ? height : width) - 2 * edge)
    const second = i % 2 === 1
    const over = second ? (upright ? width : height) - edge : edge
    return upright ? [x + over, y + along] : [x + along, y + over]
  })
}

/** Places along a strap from beyond its eye to short of its tip, turn about above and below the centre line. */
function alongStrap({ rectangle, height }: PlacedPiece, count: number): Point[] {
  const [first, last] = [rectangle.x + 35, rectangle.x + rectangle.width - 15]
  const over = rectangle.height / 4
  return Array.from({ length: count }, (_, i): Point => [
    count === 1 ? (first + last) / 2 : first + ((last - first) * i) / (count - 1),
    height + (i % 2 === 0 ? over : -over) * (i === count - 1 ? 0.5 : 1),
  ])
}

/** The lead hole for a piece's screws by the rule chosen: shank and root in mm, and the rule in words. */
export type ScrewLead = { shank: number; root: number; lead: LeadHole; count: number }

/** The screws of a listed piece and their lead hole in the wood that they bite in; undefined for a piece that isn't listed. */
export function screwLead(spec: GateSpec, { piece }: PlacedPiece): ScrewLead | undefined {
  const screws = catalogue.find(({ id }) => id === piece.id)?.screws
  const section = piece.kind === 'hinge' ? spec.ledges.section : spec.boards.section
  const timber = speciesNamed(section.species, spec.timbers)
  if (!screws || !timber) return undefined
  // The hole in the metal is half a millimetre over the screw it is made for.
  const shank = screws.diameter - 0.5
  const root = (2 / 3) * shank
  const lead = leadHole(workshopOf(spec).leadRule, ovenDryGravity(timber.density), { root, shank })
  return { shank, root, lead, count: screws.count }
}

function screwHoles(spec: GateSpec, placed: PlacedPiece): Drilling[] {
  const found = screwLead(spec, placed)
  if (!found || found.lead.diameter === null) return []
  const { shank, count } = found
  const exact = found.lead.diameter
  return [
    {
      what: 'screw hole',
      count,
      size: { exact, drill: leadDrill(exact, shank, workshopOf(spec).drills) },
      depth: woodUnder(spec, placed) - woodLeft,
      places: placed.piece.kind === 'hinge' ? alongStrap(placed, count) : onPlate(placed.rectangle, count),
    },
  ]
}

/** Diameter of the hole for a coach bolt, mm: the bolt and the workshop's clearance, up to 1. A 10 mm bolt at 0.5: 10.5. */
export const boltHole = (spec: GateSpec, bolt: number): number =>
  bolt + Math.min(workshopOf(spec).clearance, mostBoltClearance)

/** A hole right through: what it is for, its size, the least that what goes through it needs, and where; mm. */
type Through = { what: Drilling['what']; exact: number; least: number; places: Point[] }

function through(spec: GateSpec, { what, exact, least, places }: Through): Drilling {
  const drill = clearanceDrill(exact, least, workshopOf(spec).drills)
  return { what, count: places.length, size: { exact, drill }, depth: null, places }
}

function hingeBolts(spec: GateSpec, placed: PlacedPiece): Drilling[] {
  const { bolt } = strapOf(placed.piece)
  if (!bolt) return []
  const { x, width } = placed.rectangle
  const places = Array.from({ length: bolt.count }, (_, i): Point => [
    x + 60 + (i * (width - 120)) / Math.max(1, bolt.count - 1),
    placed.height,
  ])
  return [
    through(spec, { what: 'bolt hole', exact: boltHole(spec, bolt.diameter), least: bolt.diameter, places }),
  ]
}

function lockHoles(spec: GateSpec, placed: PlacedPiece): Drilling[] {
  const lock = entryOf(placed.piece.id, 'lock')
  if (!lock) return []
  const [x, y] = keyholeAt(placed, placed.leaf)
  const { drill, length } = lock.keyhole
  const ends = (length - drill) / 2
  const keyhole = through(spec, {
    what: 'keyhole',
    exact: drill,
    least: drill,
    places: [
      [x, y + ends],
      [x, y - ends],
    ],
  })
  if (lock.spindle === null) return [keyhole]
  // Handles of a rim lock turn a quarter of the case above its keyhole.
  const at: Point = [x, y + lock.plate.height / 4]
  return [
    keyhole,
    through(spec, { what: 'spindle hole', exact: lock.spindle, least: lock.spindle, places: [at] }),
  ]
}

function latchHoles(spec: GateSpec, { piece, rectangle, height }: PlacedPiece): Drilling[] {
  const latch = entryOf(piece.id, 'latch')
  if (!latch) return []
  const at: Point = [rectangle.x + rectangle.width / 2, height]
  return [through(spec, { what: 'latch hole', exact: latch.spindle, least: latch.spindle, places: [at] })]
}

/** What to drill in the leaf for a piece that the list of ironmongery holds; nothing for one that it doesn't. */
export function drillingsOf(spec: GateSpec, placed: PlacedPiece): Drilling[] {
  const { kind } = placed.piece
  const own =
    kind === 'hinge'
      ? hingeBolts(spec, placed)
      : kind === 'lock'
        ? lockHoles(spec, placed)
        : kind === 'latch'
          ? latchHoles(spec, placed)
          : []
  return [...own, ...screwHoles(spec, placed)]
}
