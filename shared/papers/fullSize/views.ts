import type { Point } from '../../geometry/point.ts'
import { clipLine } from './clipLine.ts'
import type { Extent, Template } from './template.ts'

/** How much of a template two neighbouring tiles both show, mm: enough for a figure to stand whole on one of them. */
export const overlap = 20

/** A view on a template, and its place among the others: columns from the left, rows from the foot up. */
export type Tile = { view: Extent; column: number; row: number }

/** Nearer to the middle of a joint than this, a hole is hard to prick and a figure hard to read, mm. */
const clearOfJoint = 18

/** How many views of a size it takes to see a length, each overlapping the next. */
const count = (length: number, size: number): number =>
  length <= size ? 1 : Math.ceil((length - overlap) / (size - overlap))

/** A stretch to be seen through views of a size at most, and the places to keep off, mm. */
type Seen = { from: number; to: number; size: number; keepOff: readonly number[] }

/** The place nearest to one where a joint is clear of all there is to keep off, or the place itself where none is near. */
function clearPlace(at: number, keepOff: readonly number[]): number {
  for (let away = 0; away <= 30; away++)
    for (const place of [at + away, at - away])
      if (keepOff.every((one) => Math.abs(one - place) >= clearOfJoint)) return place
  return at
}

/** So many views, their joints as evenly spaced as what they keep off lets them. */
function viewsOf({ from, to, keepOff }: Seen, n: number): [number, number][] {
  const each = (to - from + (n - 1) * overlap) / n
  const joints = Array.from({ length: n - 1 }, (_, i) =>
    clearPlace(from + (i + 1) * (each - overlap) + overlap / 2, keepOff),
  )
  return Array.from({ length: n }, (_, i): [number, number] => [
    (joints[i - 1] ?? from + overlap / 2) - overlap / 2,
    (joints[i] ?? to - overlap / 2) + overlap / 2,
  ])
}

/** The fewest views along one way; one more where only that keeps the joints clear. */
function views(seen: Seen): [number, number][] {
  const least = count(seen.to - seen.from, seen.size)
  const found = [least, least + 1]
    .map((n) => viewsOf(seen, n))
    .find((ways) => ways.every(([from, to]) => to - from <= seen.size + 1e-9))
  return found ?? viewsOf({ ...seen, keepOff: [] }, least)
}

/** Room over and under a line that tiles follow, for its figures, mm. */
const besideLine = { over: 4, under: 39 }

/** What each column of tiles shows of a line that they follow: from somewhat under it to just over it. */
const alongLine = (followed: readonly Point[], columns: readonly [number, number][]): [number, number][] =>
  columns.map(([minX, maxX]) => {
    const heights = clipLine(followed, { minX, maxX, minY: -Infinity, maxY: Infinity }).flatMap((run) =>
      run.map(([, y]) => y),
    )
    return [Math.min(...heights) - besideLine.under, Math.max(...heights) + besideLine.over]
  })

/**
 * Windows on a template that fit a box. Those of a line that they follow each lie where the line is, or in rows with the ones left out that it
 * doesn't cross where it is too steep for that.
 */
export function tilesOf(
  { extent, followed, keepOff = { x: [], y: [] } }: Template,
  box: { width: number; height: number },
): Tile[] {
  const columns = views({ from: extent.minX, to: extent.maxX, size: box.width, keepOff: keepOff.x })
  const own = followed && alongLine(followed, columns)
  if (own?.every(([minY, maxY]) => maxY - minY <= box.height))
    return columns.map(([minX, maxX], column) => {
      const [minY, maxY] = own[column] as [number, number]
      return { view: { minX, maxX, minY, maxY }, column, row: 0 }
    })
  const rows = views({ from: extent.minY, to: extent.maxY, size: box.height, keepOff: keepOff.y })
  const all = rows.flatMap(([minY, maxY], row) =>
    columns.map(([minX, maxX], column) => ({ view: { minX, maxX, minY, maxY }, column, row })),
  )
  return followed ? all.filter(({ view }) => clipLine(followed, view).length > 0) : all
}
