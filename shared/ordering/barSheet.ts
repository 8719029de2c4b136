import type { Fill, Pen } from '../drawing/drawing.ts'
import type { Primitive } from '../drawing/primitives.ts'
import type { Point } from '../geometry/point.ts'
import type { CutBar } from './barPieces.ts'
import type { BracePair, CuttingSettings } from './orderModel.ts'

/**
 * What is drawn: lengths of one section, all to one scale. numbers: the jobs', each with a tint of its own; write: a length in words; sectionWidth:
 * mm, where it is known, so that a slanting cut is as wide along the board as it will be.
 */
export type DiagramOf = {
  bars: readonly CutBar[]
  cutting: CuttingSettings
  pairs: readonly BracePair[]
  numbers: readonly string[]
  write: (mm: number) => string
  sectionWidth?: number
}

/** A diagram being drawn: paper mm to a mm of timber, and the legend's number for a part that has no room for its name. */
export type Sheet = { of: DiagramOf; scale: number; numberOf: (mark: string, length: number) => number }

/** Height of a bar, and the room left round it for its lines' breadth, mm of paper. */
export const barHeight = 12.5
export const air = 0.4

/** A stretch across the sheet, mm of paper. */
export type Room = { from: number; to: number }

/** A closed shape, y down. */
export const filled = (points: Point[], fill: Fill, pen?: Pen): Primitive => ({
  kind: 'path',
  points,
  closed: true,
  fill,
  ...(pen && { pen }),
})

const tints: Fill[] = ['board', 'brace', 'ledge']

/** Which job a mark is of, counted from 0 by the longest number that it begins with; -1 for none. */
export function jobOfMark(mark: string, numbers: readonly string[]): number {
  let best = -1
  numbers.forEach((number, place) => {
    const longer = best < 0 || number.length > (numbers[best] ?? '').length
    if (mark.startsWith(`${number} `) && longer) best = place
  })
  return best
}

/** The tint of a part: its job's. */
export const tintOf = (mark: string, numbers: readonly string[]): Fill =>
  tints[Math.max(0, jobOfMark(mark, numbers)) % tints.length] ?? 'board'
