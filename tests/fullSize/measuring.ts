import type { Point } from '../../shared/geometry/point.ts'
import type { Raster } from './raster.ts'

/** Where the ink along a short way from one place to another has its middle nearest to the way's own middle, mm; undefined without ink. */
export function inkOn({ perMm, dark }: Raster, from: Point, to: Point): Point | undefined {
  const steps = Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) * perMm * 2)
  const at = (i: number): Point => [
    from[0] + ((to[0] - from[0]) * i) / steps,
    from[1] + ((to[1] - from[1]) * i) / steps,
  ]
  const inked = (i: number): boolean => {
    const [x, y] = at(i)
    return dark(Math.floor(x * perMm), Math.floor(y * perMm))
  }
  let best: number | undefined
  for (let i = 0; i <= steps; i++) {
    if (!inked(i)) continue
    let end = i
    while (end < steps && inked(end + 1)) end++
    const middle = (i + end) / 2
    if (best === undefined || Math.abs(middle - steps / 2) < Math.abs(best - steps / 2)) best = middle
    i = end
  }
  return best === undefined ? undefined : at(best)
}

/** A straight line found in the ink: a place on it and its direction (of length 1), mm, y down. */
export type Found = { at: Point; along: Point }

/** The straight line through places, by least squares of their distances from it. */
function through(places: Point[]): Found {
  const n = places.length
  const [mx, my] = [
    places.reduce((sum, [x]) => sum + x, 0) / n,
    places.reduce((sum, [, y]) => sum + y, 0) / n,
  ]
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of places) {
    xx += (x - mx) ** 2
    xy += (x - mx) * (y - my)
    yy += (y - my) ** 2
  }
  const turn = Math.atan2(2 * xy, xx - yy) / 2
  return { at: [mx, my], along: [Math.cos(turn), Math.sin(turn)] }
}

/** The line in the ink near a way that is roughly known: looked for every half millimetre, within 1 mm to both sides, the ends left out. */
export function lineNear(raster: Raster, from: Point, to: Point): Found {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [dx, dy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
  const clear = Math.min(4, long / 5)
  const places: Point[] = []
  for (let along = clear; along <= long - clear; along += 0.5) {
    const [x, y] = [from[0] + dx * along, from[1] + dy * along]
    const found = inkOn(raster, [x - dy, y + dx], [x + dy, y - dx])
    if (found) places.push(found)
  }
  if (places.length < 8) throw new Error('no line there')
  // A figure or a crossing line beside the way is no part of the line: what lies off the first fit is left out of the second.
  const first = through(places)
  const near = places.filter((place) => distance(first, place) < 0.25)
  return through(near.length >= 8 ? near : places)
}

/** How far a place lies from a line, mm. */
export const distance = ({ at, along }: Found, [x, y]: Point): number =>
  Math.abs((x - at[0]) * along[1] - (y - at[1]) * along[0])

/** Where two lines cross, mm. */
export function crossing(one: Found, other: Found): Point {
  const [dx, dy] = [other.at[0] - one.at[0], other.at[1] - one.at[1]]
  const share =
    (dx * other.along[1] - dy * other.along[0]) /
    (one.along[0] * other.along[1] - one.along[1] * other.along[0])
  return [one.at[0] + one.along[0] * share, one.at[1] + one.along[1] * share]
}

/** The sharp angle of two lines, degrees. */
export function angleOf(one: Found, other: Found): number {
  const dot = Math.abs(one.along[0] * other.along[0] + one.along[1] * other.along[1])
  const cross = Math.abs(one.along[0] * other.along[1] - one.along[1] * other.along[0])
  return (Math.atan2(cross, dot) * 180) / Math.PI
}

export const apart = (one: Point, other: Point): number => Math.hypot(one[0] - other[0], one[1] - other[1])

/** The longest run of ink along the rows (or columns) of a part of the page, in dots, and where its middle row lies. */
function longestRun({ perMm, dark }: Raster, part: Part, along: 'x' | 'y') {
  const [x1, x2, y1, y2] = [part.left, part.right, part.top, part.bottom].map((mm) =>
    Math.round(mm * perMm),
  ) as [number, number, number, number]
  const [from, to, low, high] = along === 'x' ? [x1, x2, y1, y2] : [y1, y2, x1, x2]
  const inked = (at: number, across: number) => (along === 'x' ? dark(at, across) : dark(across, at))
  let best = { long: 0, start: 0, across: 0 }
  for (let across = low; across < high; across++)
    for (let at = from; at < to; at++) {
      if (!inked(at, across)) continue
      let end = at
      while (end < to && inked(end + 1, across)) end++
      if (end - at > best.long) best = { long: end - at, start: at, across }
      at = end
    }
  return best
}

type Part = { left: number; right: number; top: number; bottom: number }

/**
 * Length of the 100 mm line in a part of the page, mm, from the middle of one end's tick to the middle of the other's. Found in the ink alone:
 * the longest line there, and the ticks that cross its ends.
 */
export function checkLine(raster: Raster, part: Part, along: 'x' | 'y'): number {
  const { long, start, across } = longestRun(raster, part, along)
  const { perMm, dark } = raster
  const beside = across - Math.round(1.2 * perMm)
  const inked = (at: number) => (along === 'x' ? dark(at, beside) : dark(beside, at))
  const tick = (near: number): number => {
    const reach = Math.round(0.6 * perMm)
    const dots = Array.from({ length: 2 * reach + 1 }, (_, i) => near - reach + i).filter(inked)
    if (dots.length === 0) throw new Error('the line has no tick at its end')
    return (Math.min(...dots) + Math.max(...dots)) / 2
  }
  return (tick(start + long) - tick(start)) / perMm
}

/** Middle and diameter of a ring near a place, mm: looked for along four slants, clear of the cross in it. */
export function ringAt(raster: Raster, near: Point, radius: number): { middle: Point; diameter: number } {
  const slants = [25, 65, 115, 155, 205, 245, 295, 335].map((angle) => (angle * Math.PI) / 180)
  const places = slants.map((turn): Point => {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
    const at = (r: number): Point => [near[0] + r * cos, near[1] + r * sin]
    const found = inkOn(raster, at(radius - 0.5), at(radius + 0.5))
    if (!found) throw new Error('no ring there')
    return found
  })
  const middle: Point = [
    places.reduce((sum, [x]) => sum + x, 0) / places.length,
    places.reduce((sum, [, y]) => sum + y, 0) / places.length,
  ]
  return {
    middle,
    diameter: (2 * places.reduce((sum, place) => sum + apart(place, middle), 0)) / places.length,
  }
}
