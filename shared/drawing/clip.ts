import type { Point } from '../geometry/point.ts'

/** A closed shape cut off square at x = limit, keeping what lies below it. */
export function clipAt(points: Point[], limit: number): Point[] {
  const out: Point[] = []
  points.forEach((point, i) => {
    const next = points[(i + 1) % points.length] ?? point
    if (point[0] <= limit) out.push(point)
    if (point[0] <= limit !== next[0] <= limit) {
      const share = (limit - point[0]) / (next[0] - point[0])
      out.push([limit, point[1] + share * (next[1] - point[1])])
    }
  })
  return out
}
