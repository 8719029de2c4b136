import { betweenLedges, type Leaf } from '../gate/leaf.ts'
import { lengthTolerance, type Point } from '../geometry/point.ts'
import { clipToStrip, signedArea } from '../geometry/polygon.ts'

/** An upright rectangle on the leaf: its left edge and lower edge, how wide and high, mm. */
export type Rectangle = { x: number; y: number; width: number; height: number }

/** A rectangle's corners, anticlockwise from its lower hanging corner. */
export const cornersOf = ({ x, y, width, height }: Rectangle): Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]

const swapped = (points: readonly Point[]): Point[] => points.map(([x, y]): Point => [y, x])

/** Whether a part lies wholly to one side of a rectangle: most do, and need no clipping. */
const isApart = (part: readonly Point[], { x, y, width, height }: Rectangle): boolean =>
  part.every((point) => point[0] <= x) ||
  part.every((point) => point[0] >= x + width) ||
  part.every((point) => point[1] <= y) ||
  part.every((point) => point[1] >= y + height)

/** Whether a convex part and a rectangle lie over one another, more than touching. */
export function liesOver(part: readonly Point[], { x, y, width, height }: Rectangle): boolean {
  if (isApart(part, { x, y, width, height })) return false
  const upright = clipToStrip(part, x, x + width)
  const left = clipToStrip(swapped(upright), y, y + height)
  return Math.abs(signedArea(left)) > lengthTolerance
}

/** The braces of a leaf that a rectangle lies over, by name. */
export const bracesUnder = ({ braces }: Pick<Leaf, 'braces'>, rectangle: Rectangle): string[] =>
  braces
    .filter((brace) => liesOver(betweenLedges(brace), rectangle))
    .map(({ name }) => (name === 'single' ? 'brace' : `${name} brace`))

/** Whether two rectangles lie over one another, more than touching. */
export const collide = (one: Rectangle, other: Rectangle): boolean => liesOver(cornersOf(one), other)

/** The least height of the top over part of a leaf, mm from the foot's line. */
export function topOver(leaf: Leaf, from: number, to: number): number {
  const least = leaf.frame.length > 0 ? frameOver(leaf, from, to) : boardsOver(leaf, from, to)
  return least === Infinity ? leaf.height : least
}

function boardsOver({ boards }: Leaf, from: number, to: number): number {
  let least = Infinity
  for (const board of boards) {
    if (board.x >= to || board.x + board.width <= from) continue
    const at = (x: number) =>
      board.heads[0] + ((board.heads[1] - board.heads[0]) * (x - board.x)) / board.width
    least = Math.min(least, at(Math.max(from, board.x)), at(Math.min(to, board.x + board.width)))
  }
  return least
}

/** The lowest corner of the heads of stiles and rail near part of a leaf. */
function frameOver({ frame }: Leaf, from: number, to: number): number {
  let least = Infinity
  for (const { outline } of frame) {
    let [low, high] = [Infinity, -Infinity]
    for (const point of outline) {
      low = Math.min(low, point[1])
      high = Math.max(high, point[1])
    }
    const half = (high + low) / 2
    for (const [x, y] of outline) if (y > half && x >= from - 10 && x <= to + 10) least = Math.min(least, y)
  }
  return least
}

/** Whether a rectangle runs off the leaf at foot, top or either edge. */
export const runsOff = (leaf: Leaf, { x, y, width, height }: Rectangle): boolean =>
  x < 0 || y < 0 || x + width > leaf.width || y + height > topOver(leaf, x, x + width)

/** What lies on the back of the leaf: its left edge, width and height about the same middle as the piece, or null for nothing. */
export type OnBack = Omit<Rectangle, 'y'> | null

/** Something of a width and height on the leaf with its middle at a height. */
export const centredAt = (at: Omit<Rectangle, 'y'>, middle: number): Rectangle => ({
  ...at,
  y: middle - at.height / 2,
})

/**
 * The first of several heights (a piece's middle) at which it lies clear of braces, of what is there already and of foot and top;
 * the first of all where none does, so that a check can say so.
 */
export function firstClear(
  leaf: Leaf,
  at: Omit<Rectangle, 'y'>,
  { heights, taken, onBack }: { heights: readonly number[]; taken: readonly Rectangle[]; onBack: OnBack },
): number {
  const top = topOver(leaf, at.x, at.x + at.width)
  const clear = heights.find((middle) => {
    const own = centredAt(at, middle)
    return (
      own.y >= 0 &&
      own.y + own.height <= top &&
      (onBack === null || bracesUnder(leaf, centredAt(onBack, middle)).length === 0) &&
      !taken.some((other) => collide(own, other))
    )
  })
  const first = clear ?? heights[0]
  if (first === undefined) throw new RangeError('firstClear needs at least one height')
  return first
}
