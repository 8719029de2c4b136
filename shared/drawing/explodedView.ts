import { endLoss, lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { Ledge } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import { box } from './box.ts'
import type { Drawing, Mark } from './drawing.ts'
import { boardShape, stileWidth } from './leafLines.ts'
import type { PlacedLeaf, Placing } from './placeLeaves.ts'
import { prismMarks, projected, type Prism } from './prism.ts'

/** The layers of one leaf drawn apart, from the face to the eye: each list is painted before the next. */
type Layers = Prism[][]

/** How far apart the layers are drawn, as a share of the leaf's width. */
const apart = 0.55

function boards(spec: GateSpec, placed: PlacedLeaf): Prism[] {
  return placed.leaf.boards.map((board, i) => ({
    outline: boardShape(placed, board, board.x + board.width),
    from: 0,
    to: spec.boards.section.thickness,
    fill: 'board',
    part: `board ${i + 1}`,
  }))
}

function ledgeOutline(spec: GateSpec, placed: PlacedLeaf, ledge: Ledge): Point[] {
  const [low, high] = [lowerEdge(ledge), upperEdge(ledge)]
  const stile = stileWidth(placed)
  const [left, right] = stile > 0 ? [stile, placed.leaf.width - stile] : [ledge.x, ledge.x + ledge.length]
  if (spec.ledges.end.cut !== 'splayed') return box([left, low], [right, high])
  const loss = endLoss(spec.ledges.end, ledge.section)
  return [
    [left, low],
    [right, low],
    [right - loss, high],
    [left + loss, high],
  ]
}

/** Boards, then ledges (with stiles and rail of a frame), then braces, each its own distance nearer than where it belongs. */
function layersOf(spec: GateSpec, placed: PlacedLeaf): Layers {
  const { leaf } = placed
  const step = leaf.width * apart
  const thick = spec.boards.section.thickness
  const ledges = leaf.ledges.map((ledge): Prism => ({
    outline: ledgeOutline(spec, placed, ledge),
    from: step + thick,
    to: step + thick + ledge.section.thickness,
    fill: 'ledge',
    part: `${ledge.name} ledge`,
  }))
  const frame = leaf.frame.map((part): Prism => ({
    outline: part.outline,
    from: step,
    to: step + part.section.thickness,
    fill: 'ledge',
    part: part.name,
  }))
  const braces = leaf.braces.map((brace): Prism => ({
    outline: brace.outline,
    from: 2 * step + thick,
    to: 2 * step + thick + brace.section.thickness,
    fill: 'brace',
    part: `${brace.name} brace`,
  }))
  return [boards(spec, placed), [...ledges, ...frame], braces]
}

/** Thin lines from where a piece is drawn back to where it belongs, at two of its corners; stiles go with their rail. */
function leaders(prisms: Prism[], down: number): Mark[] {
  return prisms.flatMap(({ outline, from, part }) => {
    if (part.includes('stile')) return []
    const sorted = [...outline].sort((a, b) => a[0] - b[0])
    const ends = [sorted[0], sorted.at(-1)].filter((point) => point !== undefined)
    return ends.map((point): Mark => ({
      kind: 'line',
      from: projected(point, from),
      to: projected(point, from - down),
      pen: 'centre',
      part,
    }))
  })
}

/** The pieces of a layer from the far upper left to the near lower right, so that none hides what stands before it. */
const inOrder = (prisms: Prism[]): Prism[] => [...prisms].sort((a, b) => a.to - b.to)

/**
 * The leaf from the back with its layers drawn apart towards the eye: boards, ledges (and frame), braces, each to scale in parallel projection
 * and joined by thin lines to where it belongs. In leaf coordinates, as the back of a right-hung gate; a pair's first leaf, a stable door's
 * lower half.
 */
export function explodedView(spec: GateSpec, placing: Placing): Drawing | undefined {
  const [placed] = placing.leaves
  if (!placed) return undefined
  const layers = layersOf(spec, placed)
  const step = placed.leaf.width * apart
  const marks = layers.flatMap((layer, i) => [
    ...(i === 0 ? [] : leaders(layer, step)),
    ...inOrder(layer).flatMap(prismMarks),
  ])
  const points = marks.flatMap((mark) =>
    mark.kind === 'polygon' ? mark.points : mark.kind === 'line' ? [mark.from, mark.to] : [],
  )
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  const whose = { pair: ', first leaf', stable: ', lower half', single: '' }[placing.kind]
  const names = layers.flatMap((layer) => layer.map(({ part }) => part))
  return {
    title: `How it goes together${whose}`,
    description: `The leaf from the back with its layers apart, ${names.length} pieces: boards, ${spec.frame ? 'frame and ' : ''}ledges${spec.braces ? ', braces' : ''}`,
    extent: { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) },
    margin: { left: 4, right: 4, top: 9, bottom: 4 },
    notes: [],
    marks,
  }
}
