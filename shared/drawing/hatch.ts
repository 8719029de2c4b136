import type { Point } from '../geometry/point.ts'

/**
 * Parallel lines across a closed shape, clipped to it (even-odd, so hollow shapes stay right). angle in degrees anticlockwise
 * on a page whose y runs down; spacing in the shape's own unit, over 0.
 */
export function hatchLines(points: Point[], angle: number, spacing: number): [Point, Point][] {
  const turn = (-angle * Math.PI) / 180
  const cos = Math.cos(turn)
  const sin = Math.sin(turn)
  const turned = points.map(([x, y]): Point => [x * cos + y * sin, -x * sin + y * cos])
  const back = ([x, y]: Point): Point => [x * cos - y * sin, x * sin + y * cos]
  const heights = turned.map((point) => point[1])
  const lines: [Point, Point][] = []
  const first = Math.ceil(Math.min(...heights) / spacing)
  const last = Math.floor(Math.max(...heights) / spacing)
  for (let row = first; row <= last; row++) {
    const cuts = crossings(turned, row * spacing)
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      const [from, to] = [cuts[i] ?? 0, cuts[i + 1] ?? 0]
      if (to - from > 0.05) lines.push([back([from, row * spacing]), back([to, row * spacing])])
    }
  }
  return lines
}

function crossings(points: Point[], height: number): number[] {
  const cuts: number[] = []
  points.forEach(([x1, y1], i) => {
    const [x2, y2] = points[(i + 1) % points.length] ?? [x1, y1]
    if (y1 > height !== y2 > height) cuts.push(x1 + ((height - y1) / (y2 - y1)) * (x2 - x1))
  })
  return cuts.sort((a, b) => a - b)
}
