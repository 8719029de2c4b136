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
  /** How much wider than its face the board is left at a rebated meeting, mm; on the first leaf's closing board only. */
  lap?: number
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
 * start from under a shaped top, or with the lap of a rebated meeting; outline in leaf coordinates, anticlockwise, horns, tenons and lap left out. mm.
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

/**
 * One hinge, bottom → top: its height y in mm, its pull away from the post in N (under 0 where it presses on it; a hinge between the
 * outer two takes none), and its equal share of the weight in N. The whole weight may fall on any one.
 */
export type HungOn = { y: number; pullN: number; shareN: number }

/**
 * What one brace carries, N: the upright load on its head, the thrust along it, and the share of the thrust along the ledge.
 * toe: the stress that its foot puts on the ledge and what the timber may bear, N/mm², null where the timber's strength isn't
 * known. heldBy: what holds the share along the ledge, and how much it holds in N (null where that isn't known).
 */
export type BraceLoad = {
  name: Brace['name']
  loadN: number
  thrustN: number
  alongLedgeN: number
  toe: { stress: number; allowed: number } | null
  heldBy: { by: 'fixings' | 'notch'; count: number; holdN: number | null }
}

/**
 * A leaf as it hangs: its parts, its mass in kg (± 10 %) and the centre of it, its hinges and what they carry, what each brace carries,
 * and the push of the wind on it in N when it is shut (null where no gust is given).
 */
export type HangingLeaf = Leaf & {
  massKg: number
  centre: { x: number; y: number }
  hinges: HungOn[]
  loads: BraceLoad[]
  windN: number | null
}
