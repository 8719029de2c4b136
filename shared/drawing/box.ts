import type { Point } from '../geometry/point.ts'

/** A box by two corners, anticlockwise. */
export const box = ([left, foot]: Point, [right, head]: Point): Point[] => [
  [left, foot],
  [right, foot],
  [right, head],
  [left, head],
]
