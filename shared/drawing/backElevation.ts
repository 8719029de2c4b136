import { endLoss, lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { Fixing, Leaf, Ledge } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { heightChain, ledgeChain, overallHeight, overallWidth } from './dimensions.ts'
import type { Drawing, Mark, Polygon } from './drawing.ts'
import { braceFigures, braceShape } from './braceMarks.ts'
import { figureText, type FigureText } from './figureText.ts'
import { hingeSide } from './hingeSide.ts'
import type { LengthUnit } from '../job/job.ts'
import type { Point } from '../geometry/point.ts'

/** A box by two corners, anticlockwise. */
export const box = ([left, foot]: Point, [right, head]: Point): Point[] => [
  [left, foot],
  [right, foot],
  [right, head],
  [left, head],
]

/**
 * The leaf from the back, as it lies on the bench, in leaf coordinates (hanging edge at x = 0, so this is a right-hung gate; the
 * other hand is its mirror). Boards show between the ledges and are left out under them.
 */
export function backElevation(spec: GateSpec, leaf: Leaf, unit: LengthUnit): Drawing {
  const figures = figureText(unit)
  return {
    title: 'Back, as it lies on the bench',
    description: describe(spec, leaf, figures),
    extent: { minX: 0, minY: 0, maxX: leaf.width, maxY: leaf.height },
    margin: { left: 24, right: 27, top: 22, bottom: 25 },
    notes: [],
    marks: [
      ...boardsBehind(leaf),
      ...leaf.ledges.flatMap((ledge) => ledgeMarks(spec, ledge)),
      ...leaf.braces.map(braceShape),
      { kind: 'polygon', points: box([0, 0], [leaf.width, leaf.height]), fill: 'none', pen: 'visible' },
      ...leaf.fixings.map((place) => fixingMark(spec, place)),
      ...leaf.braces.flatMap((brace) => braceFigures(leaf, brace, figures)),
      ...leaf.ledges.map(ledgeName),
      ...ledgeChain(leaf, figures),
      overallWidth(leaf, figures),
      heightChain(leaf, figures),
      overallHeight(leaf, figures),
      ...hingeSide(leaf),
    ],
  }
}

function boardsBehind(leaf: Leaf): Mark[] {
  const faces = leaf.boards.map((board, i): Polygon => {
    const next = leaf.boards[i + 1]
    const end = next ? next.x : board.x + board.width
    return {
      kind: 'polygon',
      points: box([board.x, 0], [end, board.length]),
      fill: 'board',
      part: `board ${i + 1}`,
    }
  })
  const joints = leaf.boards.slice(1).map((board, i): Mark => {
    const before = leaf.boards[i]
    const x = before ? (before.x + before.width + board.x) / 2 : board.x
    return {
      kind: 'line',
      from: [x, 0],
      to: [x, Math.max(board.length, before?.length ?? 0)],
      pen: 'narrow',
      part: `board ${i + 2}`,
    }
  })
  return [...faces, ...joints]
}

/** A ledge with the second line of its cut ends: an arris down each end when bevelled, a slope across when splayed. */
function ledgeMarks(spec: GateSpec, ledge: Ledge): Mark[] {
  const part = `${ledge.name} ledge`
  const { end } = spec.ledges
  const loss = endLoss(end, ledge.section)
  const [low, high] = [lowerEdge(ledge), upperEdge(ledge)]
  const [start, stop] = [ledge.x, ledge.x + ledge.length]
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

const ledgeName = (ledge: Ledge): Mark => ({
  kind: 'text',
  at: [0, ledge.y],
  dx: -3,
  dy: -1.1,
  text: `${ledge.name} ledge`,
  size: 'small',
  anchor: 'end',
  part: `${ledge.name} ledge`,
})

/** Screws go in from the back and show their heads; nails are clenched there and show as dots. */
const fixingMark = (spec: GateSpec, place: Fixing): Mark => ({
  kind: 'symbol',
  at: [place.x, place.y],
  shape: spec.fixings.kind,
  part: `fixings ${place.joins}`,
})

function describe(spec: GateSpec, leaf: Leaf, figures: FigureText): string {
  const unit = figures.unit === 'mm' ? ' mm' : ''
  const braces = leaf.braces.map((brace) => `${brace.name} brace at ${brace.angle.toFixed(1)} degrees`)
  return [
    `Back of a leaf ${figures.write(leaf.width)} wide and ${figures.write(leaf.height)}${unit} high`,
    `hinges at the ${spec.hung === 'left' ? 'right' : 'left'} as it lies on the bench`,
    `${leaf.boards.length} boards`,
    `${leaf.ledges.length} ledges`,
    ...(braces.length > 0 ? [...braces, 'each brace with its foot at the hanging side'] : ['no brace']),
  ].join(', ')
}
