import { lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { Leaf } from '../gate/leaf.ts'
import type { Chain } from './drawing.ts'
import type { FigureText } from './figureText.ts'

/** How far the first and the second row of dimensions stand off the leaf, mm on paper. */
export const rows = { first: 8, second: 19 }

type Size = { width: number; height: number }

/** The leaf's whole width along the foot, in both units. */
export const overallWidth = (leaf: Size, figures: FigureText, row = rows.second): Chain => ({
  kind: 'chain',
  axis: 'x',
  base: 0,
  offset: -row,
  stops: [0, leaf.width],
  labels: [
    { text: figures.write(leaf.width), secondary: figures.other(leaf.width), part: 'dimension width' },
  ],
  part: 'dimension width',
})

/** The leaf's whole height up the closing side, in both units. */
export const overallHeight = (leaf: Size, figures: FigureText, row = rows.second): Chain => ({
  kind: 'chain',
  axis: 'y',
  base: leaf.width,
  offset: row,
  stops: [0, leaf.height],
  labels: [
    { text: figures.write(leaf.height), secondary: figures.other(leaf.height), part: 'dimension height' },
  ],
  part: 'dimension height',
})

/** Stops and labels without the lengths that come to nothing. */
function withoutNoughts(stops: number[], labels: Chain['labels']): Pick<Chain, 'stops' | 'labels'> {
  const kept = { stops: stops.slice(0, 1), labels: [] as Chain['labels'] }
  labels.forEach((label, i) => {
    const [from, to] = [kept.stops.at(-1) ?? 0, stops[i + 1] ?? 0]
    if (to - from < 1e-6) return
    kept.stops.push(to)
    kept.labels.push(label)
  })
  return kept
}

/** Along the foot of the back: hanging inset, the bottom ledge's long edge, closing inset. */
export function ledgeChain(leaf: Leaf, figures: FigureText): Chain[] {
  const ledge = leaf.ledges[0]
  if (!ledge) return []
  const end = ledge.x + ledge.length
  const label = (mm: number, part: string) => ({ text: figures.write(mm), part })
  return [
    {
      kind: 'chain',
      axis: 'x',
      base: 0,
      offset: -rows.first,
      part: 'dimension ledge length',
      ...withoutNoughts(
        [0, ledge.x, end, leaf.width],
        [
          label(ledge.x, 'dimension hanging inset'),
          label(ledge.length, 'dimension ledge length'),
          label(leaf.width - end, 'dimension closing inset'),
        ],
      ),
    },
  ]
}

/** Up the closing side of the back: every ledge edge, from the foot to the top. */
export function heightChain(leaf: Leaf, figures: FigureText): Chain {
  const stops = [0, ...leaf.ledges.flatMap((ledge) => [lowerEdge(ledge), upperEdge(ledge)]), leaf.height]
  const labels = stops.slice(1).map((stop, i) => {
    const ledge = i % 2 === 1 ? leaf.ledges[(i - 1) / 2] : undefined
    const name = ledge ? `${ledge.name} ledge width` : i === 0 ? 'foot to bottom ledge' : `bay ${i / 2}`
    return { text: figures.write(stop - (stops[i] ?? 0)), part: `dimension ${name}` }
  })
  return {
    kind: 'chain',
    axis: 'y',
    base: leaf.width,
    offset: rows.first,
    part: 'dimension ledge heights',
    ...withoutNoughts(stops, labels),
  }
}

/** Along the foot of the face: every board's face, equal neighbours written once where each has no room. */
export function boardChain(leaf: Leaf, figures: FigureText): Chain {
  const { boards } = leaf
  const joints = boards.slice(1).map((board, i) => {
    const before = boards[i]
    return before ? (before.x + before.width + board.x) / 2 : board.x
  })
  return {
    kind: 'chain',
    axis: 'x',
    base: 0,
    offset: -rows.first,
    part: 'dimension boards',
    stops: [0, ...joints, leaf.width],
    labels: boards.map((board, i) => {
      const text = figures.write(board.width)
      return { text, part: `dimension board ${i + 1}`, group: board.ripped ? `ripped ${i}` : text }
    }),
  }
}
