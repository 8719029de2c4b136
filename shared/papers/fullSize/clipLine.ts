import type { Point } from '../../geometry/point.ts'
import type { Extent } from './template.ts'

/** What share of the way from one place to another lies inside a view: [from, to], or undefined for none (Liang and Barsky's rule). */
function sharesInside([x1, y1]: Point, [x2, y2]: Point, view: Extent): [number, number] | undefined {
  const [dx, dy] = [x2 - x1, y2 - y1]
  let [start, end] = [0, 1]
  const sides = [
    [-dx, x1 - view.minX],
    [dx, view.maxX - x1],
    [-dy, y1 - view.minY],
    [dy, view.maxY - y1],
  ] as const
  for (const [towards, room] of sides) {
    if (towards === 0) {
      if (room < 0) return undefined
      continue
    }
    const share = room / towards
    if (towards < 0) start = Math.max(start, share)
    else end = Math.min(end, share)
  }
  return start < end ? [start, end] : undefined
}

/** The parts of a line through several places that lie inside a view. */
export function clipLine(points: readonly Point[], view: Extent): Point[][] {
  const out: Point[][] = []
  let run: Point[] = []
  const close = () => {
    if (run.length > 1) out.push(run)
    run = []
  }
  points.slice(1).forEach((to, i) => {
    const from = points[i] ?? to
    const shares = sharesInside(from, to, view)
    if (!shares) return close()
    const at = (share: number): Point => [
      from[0] + (to[0] - from[0]) * share,
      from[1] + (to[1] - from[1]) * share,
    ]
    if (run.length === 0 || shares[0] > 0) {
      close()
      run.push(at(shares[0]))
    }
    run.push(at(shares[1]))
    if (shares[1] < 1) close()
  })
  close()
  return out
}
