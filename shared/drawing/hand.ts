import type { Point } from '../geometry/point.ts'
import type { AngleDimension, Aside, Chain, Dimension, Drawing, Mark, Text } from './drawing.ts'

/**
 * Turns a drawing over left for right about x = width / 2. Places move; words keep reading forwards, and stay on the same
 * side of what they speak of. Twice over is the drawing as it was.
 */
export function mirror(drawing: Drawing, width: number): Drawing {
  const { extent, margin } = drawing
  return {
    ...drawing,
    extent: { ...extent, minX: width - extent.maxX, maxX: width - extent.minX },
    margin: { ...margin, left: margin.right, right: margin.left },
    marks: drawing.marks.map((mark) => mirrorMark(mark, width)),
  }
}

const otherAnchor = { start: 'end', middle: 'middle', end: 'start' } as const

/** No minus nought, so that a drawing turned over twice is the same to the last figure. */
const negative = (value: number): number => (value === 0 ? 0 : -value)

/** A shift along the sheet, turned over. */
const otherWay = (dx: number | undefined): number | undefined => (dx === undefined ? undefined : negative(dx))

/** One mark turned over about x = width / 2, as `mirror` does with a whole drawing. */
export function mirrorMark(mark: Mark, width: number): Mark {
  const turned = ([x, y]: Point): Point => [width - x, y]
  switch (mark.kind) {
    case 'line':
      return { ...mark, from: turned(mark.from), to: turned(mark.to), dx: otherWay(mark.dx) }
    case 'pair':
    case 'arrow':
      return { ...mark, from: turned(mark.from), to: turned(mark.to) }
    case 'polyline':
    case 'polygon':
      return { ...mark, points: mark.points.map(turned) }
    case 'arc':
      return { ...mark, centre: turned(mark.centre), start: 180 - mark.end, end: 180 - mark.start }
    case 'symbol':
      return { ...mark, at: turned(mark.at) }
    case 'badge':
      return { ...mark, at: turned(mark.at), dx: otherWay(mark.dx) }
    case 'dimension':
    case 'angle':
      return mirrorFigure(mark, width)
    case 'chain':
      return mirrorChain(mark, width)
    case 'text':
      return mirrorText(mark, width)
  }
}

/** A dimension or an angle: its figure aside goes to the other side of the leaf with it. */
function mirrorFigure(mark: Dimension | AngleDimension, width: number): Mark {
  const aside = mirrorAside(mark.aside, width)
  const turned = ([x, y]: Point): Point => [width - x, y]
  return mark.kind === 'dimension'
    ? { ...mark, from: turned(mark.from), to: turned(mark.to), offset: negative(mark.offset), aside }
    : { ...mark, apex: turned(mark.apex), start: 180 - mark.end, end: 180 - mark.start, aside }
}

/** Words keep their place beside what they speak of; those that stand upright keep it along the sheet as well. */
const mirrorText = (mark: Text, width: number): Mark => ({
  ...mark,
  at: [width - mark.at[0], mark.at[1]],
  dx: mark.angle ? mark.dx : otherWay(mark.dx),
  anchor: mark.angle ? mark.anchor : otherAnchor[mark.anchor],
})

const mirrorAside = (aside: Aside, width: number): Aside => ({
  ...aside,
  at: [width - aside.at[0], aside.at[1]],
  dx: negative(aside.dx),
  anchor: aside.anchor === 'start' ? 'end' : 'start',
})

function mirrorChain(chain: Chain, width: number): Chain {
  if (chain.axis === 'y') return { ...chain, base: width - chain.base, offset: negative(chain.offset) }
  return {
    ...chain,
    stops: chain.stops.map((stop) => width - stop).reverse(),
    labels: [...chain.labels].reverse(),
    ...(chain.reach ? { reach: { before: chain.reach.after, after: chain.reach.before } } : {}),
  }
}
