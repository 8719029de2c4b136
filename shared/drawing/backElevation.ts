import { endLoss, lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { Fixing, Ledge } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { weatherDrop, weatheredRuns } from '../gate/weathering.ts'
import { box } from './box.ts'
import { heightChain, leafChain, ledgeChain, overallHeight, overallWidth, rows } from './dimensions.ts'
import type { Drawing, Mark, Polygon } from './drawing.ts'
import { braceFigures, braceShape } from './braceMarks.ts'
import { describeBack } from './describe.ts'
import { elevation, type GateView } from './elevation.ts'
import type { FigureText } from './figureText.ts'
import { fittingMarks } from './fittingMarks.ts'
import { frameFromBack, stileNames } from './frameMarks.ts'
import { boardShape, jointEnds, lastEnd, leafOutline, railLower, stileWidth } from './leafLines.ts'
import { meetingStrip } from './meetingStrip.ts'
import { setDown, type PlacedLeaf, type Placing } from './placeLeaves.ts'
import { viewNotes } from './viewNotes.ts'
import type { ViewEdges } from './viewEdges.ts'

/**
 * All leaves from the back, as they lie on the bench, the first leaf's hanging edge at x = 0 (so this is a right-hung gate; the
 * other hand is its mirror). Boards show between the ledges and are left out under them.
 */
export function backElevation(view: GateView): Drawing {
  const { spec, placing, figures } = view
  return elevation(view, 'back', (edges) => {
    const measured = { placing, edges, figures }
    const pair = placing.kind === 'pair'
    return {
      title: 'Back, as it lies on the bench',
      description: describeBack(spec, placing, figures),
      notes: viewNotes(spec, placing, figures),
      margin: { left: 24, right: 27, top: 22, bottom: pair ? 36 : 25 },
      marks: [
        ...placing.leaves.flatMap((placed) => setDown(placed, leafFromBack(spec, placed, figures))),
        ...meetingStrip(spec, placing, 'back'),
        ...names(placing, edges),
        ...ledgeChain(measured),
        ...leafChain(measured, 'back'),
        overallWidth(measured, pair ? rows.third : rows.second),
        heightChain(spec, measured),
        overallHeight(measured),
      ],
    }
  })
}

/** Everything on one leaf, in leaf coordinates, with the figures of its braces unless the leaf before it says them. */
function leafFromBack(spec: GateSpec, placed: PlacedLeaf, figures: FigureText): Mark[] {
  const { leaf } = placed
  return [
    ...boardsBehind(placed),
    ...frameFromBack(spec, placed),
    ...leaf.ledges.flatMap((ledge) => [
      ...ledgeMarks(spec, placed, ledge),
      ...weatherLines(spec, placed, ledge),
    ]),
    ...leaf.braces.map(braceShape),
    { kind: 'polygon', points: leafOutline(placed, 'back'), fill: 'none', pen: 'visible' },
    ...leaf.fixings.map((place) => fixingMark(spec, place)),
    ...fittingMarks(placed, 'back'),
    // The second leaf of a pair carries the bolts where its closing stile would be named.
    ...(placed.turned ? [] : stileNames(placed)),
    ...(placed.alike ? [] : leaf.braces.flatMap((brace) => braceFigures(placed, brace, figures))),
  ]
}

function boardsBehind(placed: PlacedLeaf): Mark[] {
  const { boards } = placed.leaf
  const faces = boards.map((board, i): Polygon => {
    const next = boards[i + 1]
    const end = next ? next.x : lastEnd(placed, 'back')
    return {
      kind: 'polygon',
      points: boardShape(placed, board, end),
      fill: 'board',
      part: `board ${i + 1}`,
    }
  })
  const joints = boards.slice(1).map((board, i): Mark => {
    const before = boards[i]
    const x = before ? (before.x + before.width + board.x) / 2 : board.x
    const [from, to] = jointEnds(placed, x, board)
    return { kind: 'line', from, to, pen: 'narrow', part: `board ${i + 2}` }
  })
  return [...faces, ...joints]
}

/** A ledge with the second line of its cut ends: an arris down each end when bevelled, a slope across when splayed; in a frame from shoulder to shoulder. */
function ledgeMarks(spec: GateSpec, placed: PlacedLeaf, ledge: Ledge): Mark[] {
  const part = `${ledge.name} ledge`
  const { end } = spec.ledges
  const loss = endLoss(end, ledge.section)
  const [low, high] = [lowerEdge(ledge), upperEdge(ledge)]
  const stile = stileWidth(placed)
  const [start, stop] = stile > 0 ? [stile, placed.leaf.width - stile] : [ledge.x, ledge.x + ledge.length]
  if (end.cut === 'splayed')
    return [
      {
        kind: 'polygon',
        points: [
          [start, low],
          [stop, low],
          [stop - loss, high],
          [start + loss, high],
        ],
        fill: 'ledge',
        pen: 'visible',
        part,
      },
    ]
  const arris = (x: number): Mark => ({ kind: 'line', from: [x, low], to: [x, high], pen: 'narrow', part })
  return [
    { kind: 'polygon', points: box([start, low], [stop, high]), fill: 'ledge', pen: 'visible', part },
    ...(loss > 0 ? [arris(start + loss), arris(stop - loss)] : []),
  ]
}

/** The arris that a weathered upper edge leaves on the back, broken where a brace stands on the ledge. */
function weatherLines(spec: GateSpec, { leaf }: PlacedLeaf, ledge: Ledge): Mark[] {
  const drop = weatherDrop(spec, ledge)
  if (drop === 0) return []
  const y = upperEdge(ledge) - drop
  return weatheredRuns(spec, leaf, ledge).map(([from, to]) => ({
    kind: 'line',
    from: [from, y],
    to: [to, y],
    pen: 'narrow',
    part: `${ledge.name} ledge`,
  }))
}

/** The ledges and the rail named beside the drawing; a pair's once. */
function names({ kind, leaves }: Placing, { left }: ViewEdges): Mark[] {
  return leaves.slice(0, kind === 'pair' ? 1 : 2).flatMap((placed) => {
    const { leaf } = placed
    const beside = (name: string, y: number): Mark => ({
      kind: 'text',
      at: [left, y],
      dx: -3,
      dy: -1.1,
      text: name,
      size: 'small',
      anchor: 'end',
      part: name,
    })
    const rail = railLower(placed)
    const width = leaf.frame.find(({ name }) => name === 'top rail')?.section.width ?? 0
    return setDown(placed, [
      ...leaf.ledges.map((ledge) => beside(`${ledge.name} ledge`, ledge.y)),
      ...(rail === undefined ? [] : [beside('top rail', rail + width / 2)]),
    ])
  })
}

/** Screws go in from the back and show their heads; nails are clenched there and show as dots. */
const fixingMark = (spec: GateSpec, place: Fixing): Mark => ({
  kind: 'symbol',
  at: [place.x, place.y],
  shape: spec.fixings.kind,
  part: `fixings ${place.joins}`,
})
