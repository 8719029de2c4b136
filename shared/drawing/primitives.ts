import type { Point } from '../geometry/point.ts'
import type { FigureSource, Fill, Pen } from './drawing.ts'

type Belongs = { part?: string }

/** Straight lines joined up; closed and filled when said. Paper mm, y down. */
export type PathPrimitive = Belongs & {
  kind: 'path'
  points: Point[]
  closed: boolean
  fill: Fill
  pen?: Pen
}

/** Many separate short lines with one pen: hatching, ticks, the slots of screws. Paper mm, y down. */
export type StrokesPrimitive = Belongs & { kind: 'strokes'; lines: [Point, Point][]; pen: Pen }

export type CirclePrimitive = Belongs & {
  kind: 'circle'
  centre: Point
  radius: number
  fill: Fill
  pen?: Pen
}

/** A line of words: x, y where its baseline is anchored, size the type size in mm, angle in degrees anticlockwise. */
export type TextPrimitive = Belongs & {
  kind: 'text'
  x: number
  y: number
  text: string
  size: number
  weight: 'regular' | 'semibold'
  anchor: 'start' | 'middle' | 'end'
  angle: number
  tone: 'ink' | 'dimension'
  /** Where a dimension's figure comes from. */
  source?: FigureSource
}

/** What every painter draws, and all that it draws. */
export type Primitive = PathPrimitive | StrokesPrimitive | CirclePrimitive | TextPrimitive

/** A drawing laid out on a box of paper, mm. */
export type LaidOut = { width: number; height: number; scale: number; primitives: Primitive[] }
