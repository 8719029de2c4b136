import type { GateSpec } from '../gate/spec.ts'
import type { Leaf } from '../gate/leaf.ts'
import type { Chain } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import { heightStops } from './heightStops.ts'
import { closingEdge } from './leafLines.ts'
import { placeOn, type PlacedLeaf, type Placing } from './placeLeaves.ts'
import type { ViewEdges } from './viewEdges.ts'

/** How far the rows of dimensions stand off the gate, mm on paper. */
export const rows = { first: 8, second: 19, third: 30 }

/** A gate in its places, how far its view reaches, and how its figures are written. */
export type Measured = { placing: Placing; edges: ViewEdges; figures: FigureText }

/** The whole width along the foot, in both units. */
export const overallWidth = ({ placing, edges, figures }: Measured, row = rows.second): Chain => ({
  kind: 'chain',
  axis: 'x',
  base: edges.low,
  offset: -row,
  stops: [0, placing.width],
  labels: [
    { text: figures.write(placing.width), secondary: figures.other(placing.width), part: 'dimension width' },
  ],
  part: 'dimension width',
})

/** The whole height up the right side, in both units: on a pair the second leaf's. */
export function overallHeight({ placing, edges, figures }: Measured, row = rows.second): Chain {
  const second = placing.kind === 'pair' ? placing.leaves[1] : undefined
  const [foot, head] = second ? [second.at[1], second.at[1] + second.leaf.height] : [0, placing.height]
  return {
    kind: 'chain',
    axis: 'y',
    base: edges.right,
    offset: row,
    stops: [foot, head],
    labels: [
      { text: figures.write(head - foot), secondary: figures.other(head - foot), part: 'dimension height' },
    ],
    part: 'dimension height',
  }
}

/** Stops and labels without the lengths that come to nothing. */
export function withoutNoughts(stops: number[], labels: Chain['labels']): Pick<Chain, 'stops' | 'labels'> {
  const kept = { stops: stops.slice(0, 1), labels: [] as Chain['labels'] }
  labels.forEach((label, i) => {
    const [from, to] = [kept.stops.at(-1) ?? 0, stops[i + 1] ?? 0]
    if (to - from < 1e-6) return
    kept.stops.push(to)
    kept.labels.push(label)
  })
  return kept
}

/** What lies along the foot of a leaf's back: inset, bottom ledge and inset; in a frame stile, shoulder length and stile. */
function alongFoot(leaf: Leaf): { stops: number[]; parts: string[] } | undefined {
  const ledge = leaf.ledges[0]
  if (!ledge) return undefined
  const stile = leaf.frame[0]?.section.width
  if (stile !== undefined)
    return {
      stops: [0, stile, leaf.width - stile, leaf.width],
      parts: ['hanging stile width', 'ledge length', 'closing stile width'],
    }
  return {
    stops: [0, ledge.x, ledge.x + ledge.length, leaf.width],
    parts: ['hanging inset', 'ledge length', 'closing inset'],
  }
}

/** Along the foot of the back: hanging inset, the bottom ledge's long edge, closing inset; in a frame the stiles and the shoulder length. */
export function ledgeChain({ placing, edges, figures }: Measured): Chain[] {
  const along = placing.leaves[0] && alongFoot(placing.leaves[0].leaf)
  if (!along) return []
  const { stops, parts } = along
  return [
    {
      kind: 'chain',
      axis: 'x',
      base: edges.low,
      offset: -rows.first,
      part: 'dimension ledge length',
      ...withoutNoughts(
        stops,
        parts.map((part, i) => ({
          text: figures.write((stops[i + 1] ?? 0) - (stops[i] ?? 0)),
          part: `dimension ${part}`,
        })),
      ),
    },
  ]
}

/** A pair's leaves and the meeting gap between them, as they are seen on one side. */
export function leafChain(
  { placing, edges, figures }: Measured,
  view: 'face' | 'back',
  row = rows.second,
): Chain[] {
  const { kind, gap, width, leaves } = placing
  const leaf = leaves[0]?.leaf
  if (kind !== 'pair' || !leaf) return []
  const lap = leaves[0]?.reach[view] ?? 0
  const lengths: [number, string][] = [
    [leaf.width + lap, 'leaf width'],
    [gap, 'meeting gap'],
    [leaf.width - lap, 'leaf width'],
  ]
  return [
    {
      kind: 'chain',
      axis: 'x',
      base: edges.low,
      offset: -row,
      part: 'dimension leaf width',
      ...withoutNoughts(
        [0, leaf.width + lap, leaf.width + lap + gap, width],
        lengths.map(([mm, part]) => ({ text: figures.write(mm), part: `dimension ${part}` })),
      ),
    },
  ]
}

/** Up the right side of the back: every ledge edge, from the foot (or the ground) to the top. */
export function heightChain(spec: GateSpec, { placing, edges, figures }: Measured): Chain {
  const all = heightStops(spec, placing, edges.ground?.(placing.width))
  const stops = all.map(({ y }) => y)
  const labels = all.slice(1).map(({ y, part }, i) => ({
    text: figures.write(y - (stops[i] ?? 0)),
    part: `dimension ${part}`,
  }))
  return {
    kind: 'chain',
    axis: 'y',
    base: edges.right,
    offset: rows.first,
    part: 'dimension ledge heights',
    // On a pair the second leaf's hanging side is named over this row.
    ...(placing.kind === 'pair' ? { reach: { before: 3.6, after: 7 } } : {}),
    ...withoutNoughts(stops, labels),
  }
}

/** One leaf's board faces as they are dimensioned: joints in their middles; in a frame the stiles as they show. */
function boardLengths(placed: PlacedLeaf, figures: FigureText): { stops: number[]; labels: Chain['labels'] } {
  const { leaf, reach } = placed
  const { boards } = leaf
  const end = closingEdge(placed, 'face')
  const joints = boards.slice(1).map((board, i) => {
    const before = boards[i]
    return before ? (before.x + before.width + board.x) / 2 : board.x
  })
  const faces: Chain['labels'] = boards.map((board, i) => {
    const lap = leaf.frame.length === 0 && i === boards.length - 1 ? reach.face : 0
    const text = figures.write(board.width + lap)
    return { text, part: `dimension board ${i + 1}`, group: board.ripped || lap !== 0 ? `ripped ${i}` : text }
  })
  const [first, last] = [boards[0], boards.at(-1)]
  if (leaf.frame.length === 0 || !first || !last) return { stops: [0, ...joints, end], labels: faces }
  const stile = (width: number) => ({ text: figures.write(width), part: 'dimension stile face' })
  return {
    stops: [0, first.x, ...joints, last.x + last.width, end],
    labels: [stile(first.x), ...faces, stile(first.x + reach.face)],
  }
}

/** Along the foot of the face: every board's face, equal neighbours written once where each has no room; on a pair both leaves'. */
export function boardChain({ placing, edges, figures }: Measured): Chain {
  const shown = placing.kind === 'pair' ? placing.leaves : placing.leaves.slice(0, 1)
  const stops: number[] = []
  const labels: Chain['labels'] = []
  shown.forEach((placed, i) => {
    const own = boardLengths(placed, figures)
    const places = own.stops.map((x) => placeOn(placed)([x, 0])[0])
    if (i > 0) labels.push(null)
    stops.push(...(placed.turned ? places.reverse() : places))
    labels.push(...(placed.turned ? [...own.labels].reverse() : own.labels))
  })
  return {
    kind: 'chain',
    axis: 'x',
    base: edges.low,
    offset: -rows.first,
    part: 'dimension boards',
    stops,
    labels,
  }
}
