import type { Point } from '../geometry/point.ts'
import type { Notch } from './notch.ts'
import type { Section } from './spec.ts'

/** Which leaf of a gate: the one, the first or second of a pair, or a half of a stable door. */
export type LeafName = 'leaf' | 'first leaf' | 'second leaf' | 'lower half' | 'upper half'

/** Which edge a board loses its tongue or groove at, because it is cut or planed off there. */
export type LostEdge = {
  hanging: 'nothing' | 'groove' | 'tongue' | 'rip'
  closing: 'nothing' | 'groove' | 'tongue' | 'rip'
}

/**
 * One board, hanging → closing. x is its hanging-side face edge; width its seen face; length finished; blank the length
 * to cut first, with trim at each end; fence the saw's fence for an edge board (face + kept tongue), null when uncut.
 * ripped: narrower than a full board. strip: what the saw takes off, by edge, from the full board (0 where none).
 * heads and feet: where its top and foot come at its hanging and closing edges, y. length is to its highest point. All mm.
 */
export type Board = {
  x: number
  width: number
  length: number
  blank: number
  fence: number | null
  ripped: boolean
  loses: LostEdge
  strip: { hanging: number; closing: number }
  heads: [number, number]
  feet: [number, number]
}

/** One ledge, bottom → top. y is its centre line, x the hanging end of its long edge. mm. */
export type Ledge = {
  name: 'bottom' | 'middle' | 'top'
  y: number
  x: number
  length: number
  shortLength: number
  section: Section
}

/**
 * One brace, foot on the hanging side. angle from the horizontal and sawSetting off square in degrees; edgeLength
 * and length (long point to long point) in mm; contact is the length of each end along its ledge. outline in leaf
 * coordinates, anticlockwise from the foot's hanging-side corner, notches and all; notch null when its ends are flush.
 */
export type Brace = {
  name: 'single' | 'lower' | 'upper'
  angle: number
  sawSetting: number
  edgeLength: number
  length: number
  contact: number
  clearHeight: number
  run: number
  outline: Point[]
  notch: Notch | null
  section: Section
}

/** The part of a brace between the ledge edges, without notches: [foot hanging, foot closing, head closing, head hanging]. */
export const betweenLedges = ({ outline, notch }: Pick<Brace, 'outline' | 'notch'>): Point[] =>
  notch === null ? outline : [0, 2, 3, 5].map((index) => outline[index] as Point)

/** A screw or nail's place on the leaf. board counts from 0 at the hanging edge; member is the part it goes through. */
export type Fixing = {
  x: number
  y: number
  joins: 'ledge' | 'brace'
  member: string
  board: number
}

/**
 * A stile or rail of a framed gate. length is what to cut (horns or tenons in it), shoulder between horns or tenons; blankWidth what to
 * start from under a shaped top; outline in leaf coordinates, anticlockwise, horns and tenons left out. mm.
 */
export type FramePart = {
  name: 'hanging stile' | 'closing stile' | 'top rail'
  length: number
  shoulder: number
  section: Section
  blankWidth: number
  outline: Point[]
}

/** One leaf, every part sized, in its own frame of reference (x from the hanging edge, y up from the foot). height is to the top's highest point. mm. */
export type Leaf = {
  name: LeafName
  width: number
  height: number
  boards: Board[]
  ledges: Ledge[]
  braces: Brace[]
  frame: FramePart[]
  fixings: Fixing[]
}
