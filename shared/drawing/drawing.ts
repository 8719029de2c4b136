import type { Point } from '../geometry/point.ts'

/**
 * Line kinds after ISO 128: visible edges wide; hidden narrow dashed; centre chain-dotted; the rest narrow.
 * `pens.ts` turns a pen into a width and a dash; nobody else does.
 */
export type Pen =
  'visible' | 'outline' | 'hidden' | 'centre' | 'narrow' | 'dimension' | 'tick' | 'hatch' | 'grain' | 'thrust'

/** What a shape is filled with. Tints are quiet; 'cut' is end grain in a section, 'metal' ironmongery. */
export type Fill = 'none' | 'board' | 'ledge' | 'brace' | 'cut' | 'metal' | 'paper' | 'ink' | 'accent'

/**
 * Where a dimension's figure comes from; mm is what it measures (degrees for an angle). entry: it is an entered value, standing in the spec at field; what is
 * entered there is times × figure + add (a ledge's height is its foot's distance and half its width more). worked: the id of the working
 * behind it.
 */
export type FigureSource = {
  mm: number
  entry?: { field: string; times: 1 | -1; add: number }
  worked?: string
}

/** part names the piece a mark belongs to ('board 3', 'bottom ledge', 'lower brace', 'dimension width'), for lighting it. */
type Belongs = { part?: string }

/** extend runs the two ends on, and dx shifts the line to the right, by mm on paper. */
export type Line = Belongs & {
  kind: 'line'
  from: Point
  to: Point
  pen: Pen
  extend?: [from: number, to: number]
  dx?: number
}

/** Two hairlines either side of from → to, as a V joint is drawn: apart in model mm, but never closer than least mm on paper. */
export type Pair = Belongs & { kind: 'pair'; from: Point; to: Point; apart: number; least: number; pen: Pen }

export type Polyline = Belongs & { kind: 'polyline'; points: Point[]; pen: Pen }

/** A closed shape, drawn without an edge when it has no pen. Hatch: angle in degrees, spacing in mm on the paper. */
export type Polygon = Belongs & {
  kind: 'polygon'
  points: Point[]
  pen?: Pen
  fill: Fill
  hatch?: { angle: number; spacing: number }
}

/** Angles in degrees anticlockwise from x. */
export type Arc = Belongs & {
  kind: 'arc'
  centre: Point
  radius: number
  start: number
  end: number
  pen: Pen
}

/** A mark of constant size on paper: a screw's head with its slot crossed, a nail's dot, a ring about a letter. */
export type Symbol = Belongs & { kind: 'symbol'; at: Point; shape: 'screw' | 'nail' }

/** An arrow with its head at to. */
export type Arrow = Belongs & { kind: 'arrow'; from: Point; to: Point; pen: Pen }

/** What is written over one length of a chain; texts from the fullest to the shortest. secondary stands small beyond the line. */
export type ChainLabel = {
  text: string
  secondary?: string
  part?: string
  source?: FigureSource
  /** Neighbours of one group may be written once as '6 × 112' where each alone has no room. */
  group?: string
}

/**
 * A row of dimensions end to end. stops are the places along the axis, rising; labels[i] is written between stops i and i + 1 (null:
 * nothing). base is where the extension lines spring from on the other axis; offset is how far the row stands from it, mm on
 * paper, positive towards rising values. reach is how far figures may stand past the ends, mm on paper.
 */
export type Chain = Belongs & {
  kind: 'chain'
  axis: 'x' | 'y'
  base: number
  offset: number
  stops: number[]
  labels: (ChainLabel | null)[]
  reach?: { before: number; after: number }
}

/** Where a figure is written when there is no room at its own place; nowhere when height (model mm) is under least (paper mm). */
export type Aside = {
  at: Point
  dx: number
  dy: number
  anchor: 'start' | 'end'
  height: number
  least: number
  text: string
}

/**
 * A dimension along a slope. from and to are the points measured; offset is how far its line stands off, mm on paper, to the
 * left of from → to when positive. texts from the fullest to the shortest: the first with room is written. They stand over the first
 * within model mm of the length. room is what is free beside the middle of the slope, model mm: with too little of it the figure is written aside.
 */
export type Dimension = Belongs & {
  kind: 'dimension'
  from: Point
  to: Point
  offset: number
  texts: string[]
  over: Fill
  room: number
  aside: Aside
  within: number
  source?: FigureSource
}

/**
 * The angle between two directions at an apex: an arc and its figure beside it. Degrees anticlockwise from x; radius in mm on
 * paper, room the model lengths free along x and y from the apex: with too little of it the figure is written aside.
 */
export type AngleDimension = Belongs & {
  kind: 'angle'
  apex: Point
  start: number
  end: number
  radius: number
  room: { x: number; y: number }
  text: string
  over: Fill
  aside: Aside
  source?: FigureSource
}

/** small is for names and other words; figures are 'figure' where room is short, or larger. */
export type TextSize = 'small' | 'figure' | 'normal' | 'large' | 'title'

/**
 * at is in model mm; dx (right) and dy (up) shift it in paper mm. over lays a patch of that fill behind the words. within is the
 * model breadth they must keep to: with less, they are left out.
 */
export type Text = Belongs & {
  kind: 'text'
  at: Point
  dx?: number
  dy?: number
  text: string
  size: TextSize
  anchor: 'start' | 'middle' | 'end'
  angle?: number
  weight?: 'regular' | 'semibold'
  over?: Fill
  within?: number
  /** The height they stand in, model mm, and the least of it on paper, mm, at which they are written. */
  height?: { model: number; least: number }
}

/** A letter in a ring, as H marks the hinge line. */
export type Badge = Belongs & { kind: 'badge'; at: Point; dx?: number; dy?: number; text: string }

export type Mark =
  Line | Pair | Polyline | Polygon | Arc | Symbol | Arrow | Chain | Dimension | AngleDimension | Text | Badge

/**
 * A drawing in model mm, y up. extent is the box of the object itself; margin (paper mm) is left around it for dimensions and
 * words. title stands over it, notes under it; description says in a sentence what is seen. No painter knows what a gate is.
 */
export type Drawing = {
  title: string
  description: string
  extent: { minX: number; minY: number; maxX: number; maxY: number }
  margin: { left: number; right: number; top: number; bottom: number }
  marks: Mark[]
  notes: string[]
}
