import type { Point } from '../geometry/point.ts'
import type { Aside, Chain, Mark } from './drawing.ts'

const asideBy = (aside: Aside, [dx, dy]: Point): Aside => ({
  ...aside,
  at: [aside.at[0] + dx, aside.at[1] + dy],
})

function chainBy(chain: Chain, [dx, dy]: Point): Chain {
  const [along, across] = chain.axis === 'x' ? [dx, dy] : [dy, dx]
  return { ...chain, base: chain.base + across, stops: chain.stops.map((stop) => stop + along) }
}

/** One mark moved by so many model mm; what it says stays as it is. */
export function shiftMark(mark: Mark, by: Point): Mark {
  if (by[0] === 0 && by[1] === 0) return mark
  const moved = ([x, y]: Point): Point => [x + by[0], y + by[1]]
  switch (mark.kind) {
    case 'line':
    case 'pair':
    case 'arrow':
      return { ...mark, from: moved(mark.from), to: moved(mark.to) }
    case 'polyline':
    case 'polygon':
      return { ...mark, points: mark.points.map(moved) }
    case 'arc':
      return { ...mark, centre: moved(mark.centre) }
    case 'symbol':
    case 'badge':
    case 'text':
      return { ...mark, at: moved(mark.at) }
    case 'dimension':
      return { ...mark, from: moved(mark.from), to: moved(mark.to), aside: asideBy(mark.aside, by) }
    case 'angle':
      return { ...mark, apex: moved(mark.apex), aside: asideBy(mark.aside, by) }
    case 'chain':
      return chainBy(mark, by)
  }
}
