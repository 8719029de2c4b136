import type { Mark } from './drawing.ts'
import { hingeMarks } from './hingeMarks.ts'
import type { PlacedLeaf, Placing } from './placeLeaves.ts'
import { setDown } from './placeLeaves.ts'
import type { ViewEdges } from './viewEdges.ts'

/** A leaf's edges as the hinge side needs them, in leaf coordinates, mm. */
type Sides = { width: number; low: number; high: number }

/** The hinge line down a leaf's hanging edge, run out past foot and top. */
const hingeLine = ({ high, low }: Sides): Mark[] => hingeMarks({ low, high, past: [2.6, 6.8], letter: 9.7 })

const closingSide = ({ width, high }: Sides): Mark => ({
  kind: 'text',
  at: [width, high],
  dx: 0,
  dy: 2,
  text: 'closing side',
  size: 'small',
  anchor: 'end',
  within: width,
  part: 'closing edge',
})

/** Which of a pair's leaves opens first, over its middle. */
const opensWhen = ({ width, high }: Sides, name: string): Mark => ({
  kind: 'text',
  at: [width / 2, high],
  dy: 2,
  text: name === 'first leaf' ? 'opens first' : 'opens second',
  size: 'small',
  anchor: 'middle',
  within: width,
  part: 'closing edge',
})

const sidesOf = ({ leaf, at }: PlacedLeaf, { low, high }: ViewEdges, horn: number): Sides => ({
  width: leaf.width,
  high: high - at[1],
  low: Math.max(low - at[1], -horn),
})

/**
 * The hinge side of an elevation before the hand turns it: a chain-dotted line down each hanging edge with its letter H, and both sides
 * named in words, so that nothing hangs on a colour or on knowing the convention. On a pair it says which leaf opens first.
 */
export function hingeSide({ kind, leaves }: Placing, edges: ViewEdges, horn: number): Mark[] {
  const [first] = leaves
  if (!first) return []
  if (kind !== 'pair') {
    const sides = sidesOf(first, edges, horn)
    return [...hingeLine(sides), closingSide(sides)]
  }
  return leaves.flatMap((placed) => {
    const sides = sidesOf(placed, edges, horn)
    return setDown(placed, [...hingeLine(sides), opensWhen(sides, placed.leaf.name)])
  })
}
