import type { Point } from './point.ts'

/** Area of a simple polygon, mm², positive when its points run anticlockwise (shoelace formula). */
export function signedArea(points: readonly Point[]): number {
  let twice = 0
  for (let i = 0; i < points.length; i += 1) {
    const here = points[i] as Point
    const next = points[i + 1 === points.length ? 0 : i + 1] as Point
    twice += here[0] * next[1] - next[0] * here[1]
  }
  return twice / 2
}

/** Mean of the vertices; for a convex polygon it lies inside. */
export function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce<[number, number]>(([sx, sy], [x, y]) => [sx + x, sy + y], [0, 0])
  return [sum[0] / points.length, sum[1] / points.length]
}

/** A half-plane: the points where normal · p ≥ reach. */
type HalfPlane = { normal: Point; reach: number }

/** A convex polygon cut by a half-plane (Sutherland–Hodgman, one edge). Empty when nothing is left. */
function cutBy(points: readonly Point[], { normal, reach }: HalfPlane): Point[] {
  const side = (point: Point) => normal[0] * point[0] + normal[1] * point[1] - reach
  const kept: Point[] = []
  const [start] = points
  if (start === undefined) return kept
  const first = side(start)
  let here = first
  for (let i = 0; i < points.length; i += 1) {
    const point = points[i] as Point
    const last = i + 1 === points.length
    const next = last ? start : (points[i + 1] as Point)
    const there = last ? first : side(next)
    if (here >= 0) kept.push(point)
    if (here * there < 0) {
      const share = here / (here - there)
      kept.push([point[0] + share * (next[0] - point[0]), point[1] + share * (next[1] - point[1])])
    }
    here = there
  }
  return kept
}

/** A convex polygon between two upright lines x = left and x = right. Empty when nothing is left. */
export const clipToStrip = (points: readonly Point[], left: number, right: number): Point[] =>
  right <= left
    ? []
    : cutBy(cutBy(points, { normal: [1, 0], reach: left }), { normal: [-1, 0], reach: -right })

/** A convex, anticlockwise polygon drawn in by margin mm along every edge. Empty when nothing is left. */
export function inset(points: readonly Point[], margin: number): Point[] {
  return points.reduce<Point[]>(
    (left, [x, y], i) => {
      const [nextX, nextY] = points[(i + 1) % points.length] as Point
      const [dx, dy] = [nextX - x, nextY - y]
      const length = Math.hypot(dx, dy)
      const normal: Point = [-dy / length, dx / length]
      return cutBy(left, { normal, reach: normal[0] * x + normal[1] * y + margin })
    },
    [...points],
  )
}

/** The points farthest back and farthest on along a direction, and how far apart they are along it, mm. */
export function extremesAlong(
  points: readonly Point[],
  direction: Point,
): { first: Point; last: Point; reach: number } {
  const along = ([x, y]: Point) => x * direction[0] + y * direction[1]
  const sorted = [...points].sort((a, b) => along(a) - along(b))
  const first = sorted[0] as Point
  const last = sorted.at(-1) as Point
  return { first, last, reach: along(last) - along(first) }
}
