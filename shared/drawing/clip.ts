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

/** A clipped outline's edges as open lines, without the one along the break at x = end; all of them when nothing is broken off. */
export function openEdges(points: Point[], end: number, broken: boolean): Point[][] {
  if (!broken) return [[...points, points[0] ?? [0, 0]]]
  const runs: Point[][] = [[]]
  points.forEach((point, i) => {
    const next = points[(i + 1) % points.length] ?? point
    runs.at(-1)?.push(point)
    if (point[0] === end && next[0] === end) runs.push([])
    else if (i === points.length - 1) runs.at(-1)?.push(next)
  })
  return runs.filter((run) => run.length > 1)
}
