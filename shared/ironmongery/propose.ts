import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec, Ironmongery } from '../gate/spec.ts'
import { footAbove } from './allot.ts'
import { bolts } from './bolts.ts'
import { bracesUnder, collide, runsOff } from './clearPlace.ts'
import type { BoltEntry, CatalogueEntry, Finish } from './entry.ts'
import { handles } from './handles.ts'
import { latches } from './latches.ts'
import { locks } from './locks.ts'
import { leafThickness } from './pieceSize.ts'
import { placePieces } from './placePieces.ts'
import { proposeHinge, type LeafWeight } from './proposeHinge.ts'
import { wantedFinish } from './wantedFinish.ts'

/** A leaf that hangs, with its weight. */
export type WeighedLeaf = { leaf: Leaf; weight: LeafWeight }

/** A spec whose whole ironmongery goes on one leaf, as if that were the gate. */
const ofOneLeaf = (spec: GateSpec, ironmongery: Ironmongery[]): GateSpec => ({
  ...spec,
  ironmongery,
  leaves: 1,
  stable: undefined,
})

const asPiece = (entry: CatalogueEntry, quantity: number, side: 'hanging' | 'closing'): Ironmongery => ({
  id: entry.id,
  kind: entry.kind,
  name: entry.name,
  quantity,
  massKg: entry.massKg,
  side,
  ...(entry.kind === 'hinge' ? { strapLength: entry.strapLength, maxLeafMassKg: entry.maxLeafMassKg } : {}),
})

/** The first of a list that suits, in one finish. */
const pick = <T extends CatalogueEntry>(
  list: readonly T[],
  finish: Finish,
  suits: (entry: T) => boolean,
): T[] => list.filter((entry) => entry.finish === finish && suits(entry)).slice(0, 1)

/** Whether pieces, where they would stand by themselves, all lie on the leaf, clear of the braces and of one another. */
function standClear(spec: GateSpec, leaf: Leaf, entries: readonly CatalogueEntry[]): boolean {
  const pieces = entries.map((entry) => asPiece(entry, 1, 'closing'))
  const placed = placePieces(ofOneLeaf(spec, pieces), [{ ...leaf, name: 'leaf' }])
  return placed.every(
    ({ rectangle, onBack }, index) =>
      !runsOff(leaf, rectangle) &&
      (onBack === null || bracesUnder(leaf, onBack).length === 0) &&
      !placed.slice(index + 1).some((other) => collide(rectangle, other.rectangle)),
  )
}

/** The longest bolt of a form up to a third of the leaf's height, so that the hand finds it, clear of the braces; else the shortest. */
function boltFor(spec: GateSpec, form: BoltEntry['form'], leaf: Leaf): BoltEntry[] {
  const finish = wantedFinish(spec)
  const own = bolts.filter((bolt) => bolt.form === form && bolt.finish === finish)
  const bolt =
    own.filter(({ length }) => length <= leaf.height / 3).findLast((one) => standClear(spec, leaf, [one])) ??
    own[0]
  return bolt ? [bolt] : []
}

/** Bolts of a leaf: drop bolt and, under a head, top bolt on a pair's second leaf; a barrel bolt on each half of a stable door. */
function boltsOf(spec: GateSpec, leaf: Leaf): BoltEntry[] {
  if (spec.stable) return boltFor(spec, 'barrel', leaf)
  if (leaf.name !== 'second leaf') return []
  const underHead = spec.size.from === 'opening' && spec.size.headGap !== undefined
  return [...boltFor(spec, 'drop', leaf), ...(underHead ? boltFor(spec, 'top', leaf) : [])]
}

/**
 * Latch, lock and handle: on the leaf that opens first; a stable door's latch and handle on its lower half. On a low leaf without room for
 * all of them the lock or the handle is left out; the latch stays.
 */
function closingPieces(spec: GateSpec, leaf: Leaf, finish: Finish): CatalogueEntry[] {
  if (leaf.name === 'second leaf' || leaf.name === 'upper half') return []
  const thickness = leafThickness(spec)
  const latch = pick(latches, finish, ({ thickestLeaf }) => thickestLeaf >= thickness)
  const lock = leaf.name === 'lower half' ? [] : pick(locks, finish, () => true)
  const handle = pick(handles, finish, () => true)
  const choices = [
    [...latch, ...lock, ...handle],
    [...latch, ...lock],
    [...latch, ...handle],
  ]
  return choices.find((choice) => standClear(spec, leaf, choice)) ?? latch
}

/** The heights that the pieces would find by themselves, from the foot of the whole on a stable door. */
function withHeights(spec: GateSpec, leaf: Leaf, pieces: Ironmongery[]): Ironmongery[] {
  const placed = placePieces(ofOneLeaf(spec, pieces), [{ ...leaf, name: 'leaf' }])
  const above = footAbove(spec, leaf)
  return pieces.map((piece, entry) => ({
    ...piece,
    heights: placed.filter((one) => one.entry === entry).map(({ height }) => height + above),
  }))
}

/**
 * The ironmongery proposed for one leaf: hinges long enough and rated for it on its ledges' lines, latch, lock and handle, and bolts where
 * it stays shut; each with side and heights, in the spec's own form, so that it can be taken into the spec and overruled there.
 */
export function proposeIronmongery(spec: GateSpec, leaf: Leaf, weight: LeafWeight): GateSpec['ironmongery'] {
  const finish = wantedFinish(spec)
  const proposed = proposeHinge(spec, leaf, { weight, finish })
  const pieces = [
    ...(proposed ? [asPiece(proposed.hinge, proposed.places.length, 'hanging')] : []),
    ...[...closingPieces(spec, leaf, finish), ...boltsOf(spec, leaf)].map((entry) =>
      asPiece(entry, 1, 'closing'),
    ),
  ]
  return withHeights(spec, leaf, pieces)
}

const sameHeights = (one: Ironmongery, other: Ironmongery): boolean =>
  (one.heights ?? []).every((height, i) => Math.abs(height - (other.heights?.[i] ?? NaN)) < 0.5)

/** Two leaves' pieces of one id as one entry: a pair's hinges share their heights, and have none when those differ. */
function joined(spec: GateSpec, one: Ironmongery, other: Ironmongery): Ironmongery {
  const both = { ...one, quantity: one.quantity + other.quantity }
  if (spec.stable) return { ...both, heights: [...(one.heights ?? []), ...(other.heights ?? [])] }
  if (sameHeights(one, other)) return both
  const { heights: _differ, ...without } = both
  return without
}

/** The ironmongery proposed for a whole gate: each leaf's, like pieces in one entry. A pair's leaves are hung alike, for the heavier. */
export function proposeForGate(spec: GateSpec, leaves: readonly WeighedLeaf[]): GateSpec['ironmongery'] {
  const byId = new Map<string, Ironmongery>()
  const heaviest = [...leaves].sort((a, b) => b.weight.massKg - a.weight.massKg)[0]?.weight
  for (const { leaf, weight } of leaves)
    for (const piece of proposeIronmongery(spec, leaf, (spec.leaves === 2 && heaviest) || weight)) {
      const there = byId.get(piece.id)
      byId.set(piece.id, there ? joined(spec, there, piece) : piece)
    }
  return [...byId.values()]
}
