import type { Point } from '../geometry/point.ts'
import type { Mark } from './drawing.ts'

/** Hatching of end grain: wide enough apart and heavy enough to come through a photocopier. */
export const hatch = { angle: 45, spacing: 1.9 }

/** A piece cut across its grain: hatched one way or, as its neighbour, the other; outlined. */
export const endGrain = (points: Point[], part: string, other = false): Mark => ({
  kind: 'polygon',
  points,
  fill: 'cut',
  pen: 'visible',
  hatch: { ...hatch, angle: other ? 180 - hatch.angle : hatch.angle },
  part,
})

/** Shares of a piece's thickness at which a line of grain is suggested. */
const grainShares = [0.2, 0.42, 0.63, 0.83]

/** Lines of grain along a piece that is cut along it: from and to are the corners of the box they fill, across is the axis they are spread over. */
export function grainLines([from, to]: [Point, Point], across: 'x' | 'y', part: string): Mark[] {
  const [along, over] = across === 'y' ? ([0, 1] as const) : ([1, 0] as const)
  return grainShares.map((share): Mark => {
    const at = from[over] + share * (to[over] - from[over])
    const room = to[along] - from[along]
    const start = from[along] + room * (0.03 + 0.06 * ((share * 7) % 1))
    const end = to[along] - room * 0.04 * ((share * 5) % 1)
    return across === 'y'
      ? { kind: 'line', from: [start, at], to: [end, at], pen: 'grain', part }
      : { kind: 'line', from: [at, start], to: [at, end], pen: 'grain', part }
  })
}

/** The zigzag where a piece is broken off: upright at x between two heights, a little past both. */
export function breakLine(x: number, [foot, head]: Point): Mark {
  const depth = head - foot
  const [low, high, middle] = [foot - 0.18 * depth, foot + 1.18 * depth, foot + depth / 2]
  const tooth = depth * 0.09
  const points: Point[] = [
    [x, low],
    [x, middle - tooth],
    [x - tooth, middle - tooth / 3],
    [x + tooth, middle + tooth / 3],
    [x, middle + tooth],
    [x, high],
  ]
  return { kind: 'polyline', points, pen: 'narrow' }
}

/** The same across, level at y between two places. */
export function breakAcross(y: number, between: Point): Mark {
  const upright = breakLine(y, between)
  return upright.kind === 'polyline'
    ? { ...upright, points: upright.points.map(([along, across]): Point => [across, along]) }
    : upright
}

/** Words beside a detail, small. */
export const beside = (at: Point, text: string, by: { dx: number; dy: number }): Mark => ({
  kind: 'text',
  at,
  dx: by.dx,
  dy: by.dy,
  text,
  size: 'small',
  anchor: by.dx < 0 ? 'end' : by.dx > 0 ? 'start' : 'middle',
})
