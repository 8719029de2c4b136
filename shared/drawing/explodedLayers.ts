import { endLoss, lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { Ledge } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import { box } from './box.ts'
import type { Mark } from './drawing.ts'
import { boardShape, lastEnd, stileWidth } from './leafLines.ts'
import { meetingStrip } from './meetingStrip.ts'
import { placeOn, type PlacedLeaf, type Placing } from './placeLeaves.ts'
import type { Prism } from './prism.ts'

/** How thick ironmongery is drawn, mm; the list of pieces doesn't say. */
const metalThickness = 6

/** Depths at which the layers of a gate lie apart: its boards' thickness, all of it, and the distance between two layers, mm. */
export type Depths = { boards: number; whole: number; step: number }

const whose = ({ leaf }: PlacedLeaf, part: string): string =>
  leaf.name === 'leaf' ? part : `${leaf.name} ${part}`

/** A piece of a leaf where it hangs among the others. */
const setPrism = (placed: PlacedLeaf, prism: Prism): Prism => ({
  ...prism,
  outline: prism.outline.map(placeOn(placed)),
  part: whose(placed, prism.part),
})

const boards = (placed: PlacedLeaf, thick: number): Prism[] =>
  placed.leaf.boards.map((board, i, all) => ({
    outline: boardShape(
      placed,
      board,
      i === all.length - 1 ? lastEnd(placed, 'back') : board.x + board.width,
    ),
    from: 0,
    to: thick,
    fill: 'board',
    part: `board ${i + 1}`,
  }))

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

function ledgesAndFrame(spec: GateSpec, placed: PlacedLeaf, { boards: thick, step }: Depths): Prism[] {
  const { leaf } = placed
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
  return [...ledges, ...frame]
}

const braces = ({ leaf }: PlacedLeaf, { boards: thick, step }: Depths): Prism[] =>
  leaf.braces.map((brace) => ({
    outline: brace.outline,
    from: 2 * step + thick,
    to: 2 * step + thick + brace.section.thickness,
    fill: 'brace',
    part: `${brace.name} brace`,
  }))

/** What goes on the back last: hinges, latch, lock and bolts, from the depth that they are screwed on at. */
const metal = ({ fittings }: PlacedLeaf, from: number): Prism[] =>
  fittings
    .filter(({ surface }) => surface === 'back')
    .flatMap(({ shapes, kind }) =>
      shapes.map(({ outline, part }): Prism => ({
        outline,
        from,
        to: from + metalThickness,
        fill: part === 'keyhole' || part === 'pin' ? 'ink' : 'metal',
        part: kind,
      })),
    )

/** A cover strip at the meeting, on the back. */
function strip(spec: GateSpec, placing: Placing, { boards: thick, whole, step }: Depths): Prism[] {
  const from = 2 * step + (spec.frame ? whole : thick)
  return meetingStrip(spec, placing, 'back').flatMap((mark) =>
    mark.kind === 'polygon'
      ? [{ outline: mark.points, from, to: from + thick, fill: 'ledge', part: 'meeting strip' }]
      : [],
  )
}

/**
 * The layers of a gate drawn apart, all its leaves in each, from the face to the eye: boards; ledges with stiles and rail; braces (and a cover
 * strip); ironmongery on the back. A layer without a piece is left out and the next comes as much nearer.
 */
export function layersOf(spec: GateSpec, placing: Placing, depths: Depths): Prism[][] {
  const all = (own: (placed: PlacedLeaf) => Prism[]): Prism[] =>
    placing.leaves.flatMap((placed) => own(placed).map((prism) => setPrism(placed, prism)))
  const timber = [
    all((placed) => boards(placed, depths.boards)),
    all((placed) => ledgesAndFrame(spec, placed, depths)),
    [...all((placed) => braces(placed, depths)), ...strip(spec, placing, depths)],
  ].filter((layer) => layer.length > 0)
  const fittings = all((placed) => metal(placed, timber.length * depths.step + depths.whole))
  return fittings.length > 0 ? [...timber, fittings] : timber
}

/** Ironmongery on the face, hidden behind the boards: dashed where it sits. */
export const hiddenMetal = ({ leaves }: Placing, onto: (point: Point) => Point): Mark[] =>
  leaves.flatMap((placed) =>
    placed.fittings
      .filter(({ surface }) => surface === 'face')
      .flatMap(({ shapes, kind }) =>
        shapes.map(({ outline }): Mark => {
          const points = outline.map((point) => onto(placeOn(placed)(point)))
          return {
            kind: 'polyline',
            points: [...points, points[0] as Point],
            pen: 'hidden',
            part: whose(placed, kind),
          }
        }),
      ),
  )
