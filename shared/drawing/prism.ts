import { signedArea } from '../geometry/polygon.ts'
import type { Point } from '../geometry/point.ts'
import type { Fill, Mark } from './drawing.ts'

/**
 * How depth is drawn in a view from the back with the face behind: a millimetre nearer is so far to the right and up the sheet. Parallel, so that
 * every length along it is to one scale.
 */
const nearer: Point = [0.5, -0.34]

/** Where a point of a leaf comes that lies z mm from the face towards the eye. */
export const projected = ([x, y]: Point, z: number): Point => [x + nearer[0] * z, y + nearer[1] * z]

/** A flat piece in space: its outline on the leaf, from which z to which, and how it looks. */
export type Prism = { outline: Point[]; from: number; to: number; fill: Fill; part: string }

/**
 * A flat piece seen from the back: the sides that turn towards the eye (its upper and hanging ones), then its back over them. Each piece's filled
 * back is its one polygon with a pen, its sides have the same part.
 */
export function prismMarks({ outline, from, to, fill, part }: Prism): Mark[] {
  const points = signedArea(outline) < 0 ? [...outline].reverse() : outline
  const sides = points.flatMap((start, i): Mark[] => {
    const end = points[(i + 1) % points.length] ?? start
    const outward: Point = [end[1] - start[1], start[0] - end[0]]
    // The far side lies up and to the left, so a side shows where it turns that way.
    if (outward[0] * nearer[0] + outward[1] * nearer[1] >= -1e-9) return []
    const quad = [projected(start, to), projected(end, to), projected(end, from), projected(start, from)]
    return [{ kind: 'polygon', points: quad, fill: 'cut', pen: 'narrow', part }]
  })
  const back = points.map((point) => projected(point, to))
  return [...sides, { kind: 'polygon', points: back, fill, pen: 'outline', part }]
}
