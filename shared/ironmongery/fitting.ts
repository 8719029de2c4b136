import type { LeafName } from '../gate/leaf.ts'
import type { DrillChoice } from '../gate/holes.ts'
import type { Ironmongery } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'

/** What to drill for a piece: how many of one size and where (leaf coordinates), mm. depth null: right through. */
export type Drilling = {
  what: 'screw hole' | 'bolt hole' | 'keyhole' | 'spindle hole' | 'latch hole'
  count: number
  size: DrillChoice
  depth: number | null
  places: Point[]
}

/** A part of a piece as it is drawn, in leaf coordinates; what lies on the post has x under 0 or over the leaf's width. */
export type FittingShape = {
  part: 'strap' | 'pin' | 'plate' | 'post plate' | 'case' | 'keyhole' | 'rod'
  outline: Point[]
}

/**
 * Where a bolt's socket is drilled, mm: across from the leaf's hanging edge to its middle (null: at the bolt's own height), how deep, and how far the
 * rod reaches into it (null where the gap that it crosses isn't known).
 */
export type SocketPlace = { across: number | null; depth: number; reach: number | null }

/**
 * One piece of ironmongery where it goes on its leaf. entry is its place in the spec's list; surface the side of the leaf that it lies on;
 * height its middle from the leaf's foot, mm; on the ledge or rail under a hinge, or ''; shapes for drawing, drillings for the bench;
 * socket what to drill in ground, head or post for a bolt, mm, and socketPlace where and how deep; figures the ids of what it was worked from.
 */
export type Fitting = {
  id: string
  entry: number
  kind: Ironmongery['kind']
  name: string
  leaf: LeafName
  side: 'hanging' | 'closing'
  surface: 'face' | 'back'
  height: number
  on: string
  shapes: FittingShape[]
  drillings: Drilling[]
  socket: number | null
  socketPlace: SocketPlace | null
  figures: string[]
}
