import type { Point } from '../geometry/point.ts'
import type { Section } from './spec.ts'

/** Which edge a board loses its tongue or groove at, because it is cut or planed off there. */
export type LostEdge = {
  hanging: 'nothing' | 'groove' | 'tongue' | 'rip'
  closing: 'nothing' | 'groove' | 'tongue' | 'rip'
}

/**
 * One board, hanging → closing. x is its hanging-side face edge; width its seen face; length finished; blank the length
 * to cut first, with trim at each end; fence the saw's fence for an edge board (face + kept tongue), null when uncut.
 * ripped: narrower than a full board. strip: what the saw takes off, by edge, from the full board (0 where none).
 * All mm.
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
 * coordinates, anticlockwise from the foot's hanging-side corner.
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
  section: Section
}

/** A screw or nail's place on the leaf. board counts from 0 at the hanging edge; member is the part it goes through. */
export type Fixing = {
  x: number
  y: number
  joins: 'ledge' | 'brace'
  member: string
  board: number
}

/** A stile or rail of a framed gate. */
export type FramePart = {
  name: 'hanging stile' | 'closing stile' | 'top rail'
  length: number
  shoulder: number
}

/** One leaf, every part sized, in its own frame of reference (x from the hanging edge, y up from the foot). mm. */
export type Leaf = {
  width: number
  height: number
  boards: Board[]
  ledges: Ledge[]
  braces: Brace[]
  frame: FramePart[]
  fixings: Fixing[]
}
