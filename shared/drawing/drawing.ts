import type { Point } from '../geometry/point.ts'

/**
 * Line kinds after ISO 128: visible edges wide; hidden narrow dashed; centre chain-dotted; the rest narrow.
 * A painter turns a pen into a width and a dash; nobody else does.
 */
export type Pen = 'visible' | 'outline' | 'hidden' | 'centre' | 'narrow' | 'dimension' | 'hatch' | 'grain'

/** What a shape is filled with. Tints are quiet; 'cut' is end grain in a section. */
export type Fill = 'none' | 'board' | 'ledge' | 'brace' | 'cut' | 'paper' | 'ink' | 'accent'

/** part names the piece a mark belongs to ('board 3', 'bottom ledge', 'lower brace', 'dimension leaf width'), for highlighting. */
type Belongs = { part?: string }

export type Line = Belongs & { kind: 'line'; from: Point; to: Point; pen: Pen }
export type Polyline = Belongs & { kind: 'polyline'; points: Point[]; pen: Pen }
/** A closed shape. hatch lines are clipped to it by the painter: angle in degrees, spacing in mm on the PAPER (not scaled). */
export type Polygon = Belongs & { kind: 'polygon'; points: Point[]; pen: Pen; fill: Fill; hatch?: { angle: number; spacing: number } }
export type Circle = Belongs & { kind: 'circle'; centre: Point; radius: number; pen: Pen; fill: Fill }
/** Angles in degrees anticlockwise from x. */
export type Arc = Belongs & { kind: 'arc'; centre: Point; radius: number; start: number; end: number; pen: Pen }
/**
 * A dimension with extension lines, ticks and its figure above the line, readable from the foot or the right. from and to are the
 * points measured; offset is how far the dimension line stands off them, in mm on the PAPER, to the left of from → to
 * when positive. text is what is written (already formatted); secondary a smaller second unit.
 */
export type Dimension = Belongs & { kind: 'dimension'; from: Point; to: Point; offset: number; text: string; secondary?: string; direction?: 'horizontal' | 'vertical' | 'aligned' }
/** An angle dimension: an arc of the given paper radius about the apex, its figure beside it. Degrees. */
export type AngleDimension = Belongs & { kind: 'angle'; apex: Point; start: number; end: number; radius: number; text: string }
/** size is the cap height class on paper. at is in model mm; dx, dy shift it in paper mm. */
export type Text = Belongs & { kind: 'text'; at: Point; dx?: number; dy?: number; text: string; size: 'small' | 'normal' | 'large' | 'title'; anchor: 'start' | 'middle' | 'end'; angle?: number; weight?: 'regular' | 'semibold' }

export type Mark = Line | Polyline | Polygon | Circle | Arc | Dimension | AngleDimension | Text

/**
 * A drawing in model mm, y up. extent is the box of the object itself; a painter leaves margin (in paper mm) around it for
 * dimensions and titles. No painter knows what a gate is.
 */
export type Drawing = {
  title: string
  extent: { minX: number; minY: number; maxX: number; maxY: number }
  margin: { left: number; right: number; top: number; bottom: number }
  marks: Mark[]
}
