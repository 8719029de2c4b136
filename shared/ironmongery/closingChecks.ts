import type { Check } from '../gate/checks.ts'
import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { writeShortMm } from '../units/writeLength.ts'
import { footAbove } from './allot.ts'
import { entryOf } from './catalogue.ts'
import { bracesUnder, collide, runsOff } from './clearPlace.ts'
import { fittingPrefix } from './fittings.ts'
import { boltForm, leafThickness } from './pieceSize.ts'
import type { PlacedPiece } from './placePieces.ts'
import { leastInSocket, socketIn, socketPlaceOf } from './socket.ts'

const mm = (length: number): string => `${writeShortMm(length)} mm`

/** Heights above the foot between which a lock is easy to reach, mm: common practice, about the published lock rail. */
export const lockReach = { from: 600, to: 1200 }

const heightFigure = (placed: PlacedPiece, all: readonly PlacedPiece[]): string => {
  const alike = all.filter(({ leaf, piece }) => leaf === placed.leaf && piece.kind === placed.piece.kind)
  return `${fittingPrefix(placed.leaf.name)}.${placed.piece.kind}.${alike.indexOf(placed) + 1}.height`
}

type Said = { id: string; message: string; remedy: string }

/** A bolt that doesn't reach across its gap, or hardly into its socket. */
function tooShort(spec: GateSpec, placed: PlacedPiece): Said[] {
  const reach = socketPlaceOf(spec, placed)?.reach ?? null
  if (reach === null || reach >= leastInSocket) return []
  const into = socketIn(spec, placed)
  const { name } = placed.piece
  return [
    {
      id: 'bolt-short',
      message:
        reach > 0
          ? `${name} shoots only ${mm(reach)} into ${into}; ${leastInSocket} mm or more holds.`
          : `${name} doesn’t reach ${into}.`,
      remedy: 'Take a bolt with a longer throw, or set it nearer.',
    },
  ]
}

/** Over a brace, off the leaf, out of reach or too short for the leaf's thickness: what one piece can be said to be. */
function onePiece(spec: GateSpec, placed: PlacedPiece): Said[] {
  const { piece, leaf, height, rectangle, onBack } = placed
  const out: Said[] = []
  const braces = onBack ? bracesUnder(leaf, onBack) : []
  if (braces.length > 0)
    out.push({
      id: 'ironmongery-on-brace',
      message: `${piece.name} lies over the ${braces.join(' and the ')}.`,
      remedy: 'Move it up or down clear of the brace; never cut the brace for it.',
    })
  if (runsOff(leaf, rectangle))
    out.push({
      id: 'ironmongery-off-leaf',
      message: `${piece.name} at ${mm(height)} from the foot runs off the leaf.`,
      remedy: 'Move it, or take a smaller one.',
    })
  const above = height + footAbove(spec, leaf)
  if (piece.kind === 'lock' && (above < lockReach.from || above > lockReach.to))
    out.push({
      id: 'lock-reach',
      message: `The lock stands ${mm(above)} above the foot; ${lockReach.from} to ${lockReach.to} mm is easy to reach.`,
      remedy: 'Move the lock, or the ledge that it stands on.',
    })
  out.push(...tooShort(spec, placed))
  const thickest = entryOf(piece.id, 'latch')?.thickestLeaf
  if (thickest !== undefined && thickest < leafThickness(spec))
    out.push({
      id: 'latch-thickness',
      message: `${piece.name} reaches through ${mm(thickest)}; the leaf is ${mm(leafThickness(spec))} thick.`,
      remedy: 'Take a latch for a thicker leaf.',
    })
  return out
}

/** Pieces at the closing edge that lie over one another. */
const collisions = (pieces: readonly PlacedPiece[]): [PlacedPiece, PlacedPiece][] =>
  pieces.flatMap((one, index) =>
    pieces
      .slice(index + 1)
      .filter((other) => other.leaf === one.leaf && collide(one.rectangle, other.rectangle))
      .map((other): [PlacedPiece, PlacedPiece] => [one, other]),
  )

const whole = (said: Pick<Check, 'id' | 'level' | 'message' | 'remedy'>): Check => ({
  ...said,
  figures: [],
  field: 'ironmongery',
})

/** What is missing from the closing side of the whole gate. */
function missing(leaves: readonly Leaf[], pieces: readonly PlacedPiece[]): Check[] {
  const out: Check[] = []
  const held = pieces.some(({ piece }) => ['latch', 'lock', 'bolt'].includes(piece.kind))
  if (!held)
    out.push(
      whole({
        id: 'latch-none',
        level: 'note',
        message: 'Nothing is listed to hold the gate shut.',
        remedy: 'Choose a latch, or take the one proposed.',
      }),
    )
  const second = leaves.find(({ name }) => name === 'second leaf')
  const drop = pieces.some(
    ({ leaf, piece }) => leaf === second && piece.kind === 'bolt' && boltForm(piece) === 'drop',
  )
  if (second && !drop)
    out.push(
      whole({
        id: 'bolt-missing',
        level: 'caution',
        message:
          'The second leaf of the pair has no drop bolt: nothing holds it while the first is opened or shut.',
        remedy: 'Add a drop bolt, and a top bolt where there is a head over the gate.',
      }),
    )
  return out
}

/** What there is to say of latch, lock, bolts and handles. None of it stops a gate from being made. */
export function checkClosing(
  spec: GateSpec,
  leaves: readonly Leaf[],
  placed: readonly PlacedPiece[],
): Check[] {
  const pieces = placed.filter(({ piece }) => piece.kind !== 'hinge')
  const own = pieces.flatMap((one) =>
    onePiece(spec, one).map((said): Check => ({
      ...said,
      level: said.id === 'lock-reach' ? 'note' : 'caution',
      figures: [heightFigure(one, placed)],
      field: `ironmongery.${one.entry}.heights`,
    })),
  )
  const over = collisions(pieces).map(([one, other]): Check => ({
    id: 'ironmongery-meets',
    level: 'caution',
    message: `${one.piece.name} and ${other.piece.name} lie over one another.`,
    remedy: 'Move one of them up or down.',
    figures: [heightFigure(one, placed), heightFigure(other, placed)],
    field: `ironmongery.${other.entry}.heights`,
  }))
  return [...own, ...over, ...missing(leaves, pieces)]
}
