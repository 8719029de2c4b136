import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec, Ironmongery } from '../gate/spec.ts'

/** One piece of ironmongery on one leaf. entry is its place in the spec's list; height from that leaf's foot as entered, or null. */
export type Allotted = { piece: Ironmongery; entry: number; leaf: Leaf; height: number | null }

/** A line of the spec's ironmongery and its place in the list. */
type Listed = { piece: Ironmongery; entry: number }

/** How far a leaf's foot stands above the foot of the whole, mm: the upper half of a stable door stands on the lower one. */
export const footAbove = (spec: GateSpec, leaf: Pick<Leaf, 'name'>): number =>
  spec.stable && leaf.name === 'upper half' ? spec.stable.lowerHeight + spec.stable.gap : 0

/** Which leaf a height from the foot of the whole falls on. */
function leafAt(spec: GateSpec, leaves: readonly Leaf[], height: number): Leaf | undefined {
  return [...leaves].reverse().find((leaf) => height >= footAbove(spec, leaf)) ?? leaves[0]
}

/** Hinges of one entry: shared out evenly, the first leaf taking an odd one; on a pair the heights hold for each leaf. */
function hinges(spec: GateSpec, leaves: readonly Leaf[], { piece, entry }: Listed): Allotted[] {
  const { heights, quantity } = piece
  if (spec.stable && heights)
    return heights.flatMap((height) => {
      const leaf = leafAt(spec, leaves, height)
      return leaf ? [{ piece, entry, leaf, height: height - footAbove(spec, leaf) }] : []
    })
  return leaves.flatMap((leaf, index) => {
    const share = Math.floor(quantity / leaves.length) + (index < quantity % leaves.length ? 1 : 0)
    const count = heights ? Math.min(share, heights.length) : share
    return Array.from({ length: count }, (_, i) => ({ piece, entry, leaf, height: heights?.[i] ?? null }))
  })
}

/** The leaf that the n-th of an entry's pieces goes on when its height doesn't say. */
function ownLeaf(leaves: readonly Leaf[], kind: Ironmongery['kind'], index: number): Leaf | undefined {
  const last = leaves.length - 1
  if (leaves[0]?.name === 'first leaf' && kind === 'bolt') return leaves[last]
  return leaves[Math.min(index, last)]
}

function others(spec: GateSpec, leaves: readonly Leaf[], { piece, entry }: Listed): Allotted[] {
  return Array.from({ length: piece.quantity }, (_, index) => index).flatMap((index): Allotted[] => {
    const height = piece.heights?.[index]
    const leaf =
      spec.stable && height !== undefined ? leafAt(spec, leaves, height) : ownLeaf(leaves, piece.kind, index)
    if (!leaf) return []
    return [
      {
        piece,
        entry,
        leaf,
        height: height === undefined ? null : height - (spec.stable ? footAbove(spec, leaf) : 0),
      },
    ]
  })
}

/**
 * Every piece of a gate's ironmongery with the leaf it goes on. Heights are from the leaf's foot, on a stable door from the foot of the
 * whole door. On a pair bolts go on the second leaf, latch, lock and handle on the one that opens first; of two alike the second
 * goes on the other leaf. Common practice.
 */
export const allot = (spec: GateSpec, leaves: readonly Leaf[]): Allotted[] =>
  spec.ironmongery.flatMap((piece, entry) =>
    piece.kind === 'hinge' ? hinges(spec, leaves, { piece, entry }) : others(spec, leaves, { piece, entry }),
  )
