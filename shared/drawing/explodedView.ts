import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import type { Drawing, Mark } from './drawing.ts'
import { hiddenMetal, layersOf, type Depths } from './explodedLayers.ts'
import type { Placing } from './placeLeaves.ts'
import { prismMarks, projected, type Prism } from './prism.ts'

/** How far apart the layers are drawn, as a share of one leaf's width. */
const apart = 0.55

/** Thin lines from where a piece is drawn back to where it belongs, at two of its corners; stiles go with their rail. */
function leaders(prisms: Prism[], down: number): Mark[] {
  return prisms.flatMap(({ outline, from, part, fill }) => {
    if (part.includes('stile') || fill === 'ink') return []
    const sorted = [...outline].sort((a, b) => a[0] - b[0])
    // Ironmongery is small: one line of it says as much as two.
    const ends = (fill === 'metal' ? [sorted[0]] : [sorted[0], sorted.at(-1)]).filter(
      (point) => point !== undefined,
    )
    return ends.map((point): Mark => ({
      kind: 'line',
      from: projected(point, from),
      to: projected(point, from - down),
      pen: 'centre',
      part,
    }))
  })
}

const least = (prism: Prism, axis: 0 | 1): number => Math.min(...prism.outline.map((point) => point[axis]))

/** The pieces of a layer as they hide one another, the eye being above and to the left: the far, the right and the low ones first. */
const inOrder = (prisms: Prism[]): Prism[] =>
  [...prisms].sort((a, b) => a.to - b.to || least(b, 0) - least(a, 0) || least(a, 1) - least(b, 1))

const pointsOf = (mark: Mark): Point[] =>
  mark.kind === 'polygon' ? mark.points : mark.kind === 'line' ? [mark.from, mark.to] : []

/**
 * A gate from the back with its layers drawn apart towards the eye: boards, ledges (and frame), braces, ironmongery, all leaves in each, to scale in
 * parallel projection and joined by thin lines to where they belong. As the back of a right-hung gate, the first leaf's hanging edge at x = 0.
 */
export function explodedView(spec: GateSpec, placing: Placing): Drawing | undefined {
  const [first] = placing.leaves
  if (!first) return undefined
  const boards = spec.boards.section.thickness
  const depths: Depths = {
    boards,
    whole: spec.frame?.stile.thickness ?? boards + spec.ledges.section.thickness,
    step: first.leaf.width * apart,
  }
  const layers = layersOf(spec, placing, depths)
  const marks = layers.flatMap((layer, i) => [
    ...(i === 0 ? [] : leaders(layer, depths.step)),
    ...inOrder(layer).flatMap(prismMarks),
    ...(i === 0 ? hiddenMetal(placing, (point) => projected(point, boards)) : []),
  ])
  const points = marks.flatMap(pointsOf)
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  const pieces = layers.flat().filter(({ fill }) => fill !== 'metal' && fill !== 'ink').length
  const gate = { pair: 'The pair', stable: 'Both halves', single: 'The leaf' }[placing.kind]
  return {
    title: 'How it goes together',
    description: `${gate} from the back with the layers apart, ${pieces} pieces: boards, ${spec.frame ? 'frame and ' : ''}ledges${spec.braces ? ', braces' : ''}, then the ironmongery`,
    extent: { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) },
    margin: { left: 4, right: 4, top: 9, bottom: 4 },
    notes: [],
    marks,
  }
}
