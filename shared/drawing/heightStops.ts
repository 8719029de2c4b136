import { lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { GateSpec } from '../gate/spec.ts'
import { footReach, railLower } from './leafLines.ts'
import type { PlacedLeaf, Placing } from './placeLeaves.ts'

/** A place up a gate's closing side; part names the length that ends there, counted from the stop before. */
export type HeightStop = { y: number; part: string }

/** Every edge up one leaf: the foot's fall, each ledge, the rail's lower edge, the lowest and the highest of the top. */
function stopsOf(spec: GateSpec, placed: PlacedLeaf): HeightStop[] {
  const { leaf, plan, at } = placed
  const [low, high] = footReach(placed)
  const rail = railLower(placed)
  const { ledges } = leaf
  const stops: HeightStop[] = [
    { y: low, part: '' },
    { y: high, part: 'foot fall' },
    ...ledges.flatMap((ledge, i): HeightStop[] => [
      { y: lowerEdge(ledge), part: i === 0 ? 'foot to bottom ledge' : `bay ${i}` },
      { y: upperEdge(ledge), part: `${ledge.name} ledge width` },
    ]),
    ...(rail === undefined ? [] : [{ y: rail, part: `bay ${ledges.length}` }]),
    {
      y: plan.top.lowest(0, leaf.width),
      part: rail === undefined ? `bay ${ledges.length}` : 'top rail',
    },
    { y: spec.top.shape === 'level' ? leaf.height : plan.top.highest(0, leaf.width), part: 'top rise' },
  ]
  return stops.map(({ y, part }) => ({ y: y + at[1], part }))
}

/**
 * All places up the right side of the drawing, rising: the leaf's, a pair's second leaf's, or both halves' of a stable door with the gap
 * between them. ground is its height there, where it is drawn.
 */
export function heightStops(spec: GateSpec, placing: Placing, ground: number | undefined): HeightStop[] {
  const { kind, leaves } = placing
  const shown = kind === 'pair' ? leaves.slice(1) : leaves
  const stops = shown.flatMap((placed, i) =>
    stopsOf(spec, placed).map((stop, place) =>
      i > 0 && place === 0 ? { ...stop, part: 'gap between the halves' } : stop,
    ),
  )
  if (ground === undefined) return stops
  const [first, ...rest] = stops
  return [{ y: ground, part: '' }, ...(first ? [{ ...first, part: 'ground gap' }] : []), ...rest]
}
