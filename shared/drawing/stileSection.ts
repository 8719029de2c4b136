import { bareTenonShare } from '../gate/frameRoom.ts'
import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import { boardOutline } from './boardProfile.ts'
import { clipAt, openEdges } from './clip.ts'
import type { Chain, Drawing, Mark } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import { thicknessChain } from './sectionChains.ts'
import { beside, breakLine, endGrain, grainLines, hatch } from './sectionMarks.ts'
import { hingeMarks } from './hingeMarks.ts'

type Frame = NonNullable<GateSpec['frame']>

/** A framed leaf with what was entered for it. */
export type FramedLeaf = { spec: GateSpec; leaf: Leaf }

/** A framed leaf cut level at its hanging stile, up to end, mm. */
type Cut = { spec: GateSpec; frame: Frame; leaf: Leaf; end: number; boards: number; depth: number }

/**
 * A framed leaf in a level cut through the hanging stile and the bottom ledge, from above with the face at the foot of the sheet: the
 * stile's end grain with the rebate that the boards lie in, and the ledge's tenon in its mortise.
 */
export function stileSection({ spec, leaf }: FramedLeaf, frame: Frame, figures: FigureText): Drawing {
  const boards = spec.boards.section.thickness
  const depth = frame.stile.thickness
  const second = leaf.boards[1]
  const end = Math.min(leaf.width, Math.max((second?.x ?? 0) + 30, frame.stile.width + 120))
  const cut: Cut = { spec, frame, leaf, end, boards, depth }
  return {
    title: 'Section, from above',
    description: `Section through the hanging stile, the boarding in its rebate and the bottom ledge’s tenon: stile ${figures.write(depth)} thick, rebate ${figures.write(frame.rebate)} wide`,
    extent: { minX: 0, minY: 0, maxX: end, maxY: depth },
    margin: { left: 27, right: 16, top: 32, bottom: 15 },
    notes: [`Rebate ${figures.write(frame.rebate)} wide, ${figures.write(boards)} from the face`],
    marks: [
      ...stile(cut),
      ...leaf.boards.flatMap((board, i) => (board.x < end ? boardMarks(cut, i) : [])),
      ...ledge(cut),
      breakLine(end, [0, depth]),
      faceChain(cut, figures),
      ...backChains(cut, figures),
      thicknessChain(boards, depth, figures),
      ...words(cut),
    ],
  }
}

function stile({ frame, boards, depth }: Cut): Mark[] {
  const width = frame.stile.width
  const inner = width - frame.rebate
  const points: Point[] = [
    [0, 0],
    [inner, 0],
    [inner, boards],
    [width, boards],
    [width, depth],
    [0, depth],
  ]
  return [endGrain(points, 'hanging stile', true)]
}

function boardMarks({ spec, leaf, end }: Cut, i: number): Mark[] {
  const board = leaf.boards[i]
  if (!board) return []
  const part = `board ${i + 1}`
  const points = clipAt(boardOutline(board, spec.boards.section, spec.boards.tongues), end)
  const angle = i % 2 === 0 ? hatch.angle : 180 - hatch.angle
  const broken = board.x + board.width > end
  return [
    { kind: 'polygon', points, fill: 'cut', hatch: { ...hatch, angle }, part },
    ...openEdges(points, end, broken).map((run): Mark => ({
      kind: 'polyline',
      points: run,
      pen: 'visible',
      part,
    })),
  ]
}

function ledge({ frame, leaf, end, boards, depth }: Cut): Mark[] {
  const bottom = leaf.ledges[0]
  if (!bottom) return []
  const part = `${bottom.name} ledge`
  const [shoulder, back] = [frame.stile.width, boards + (depth - boards) * bareTenonShare]
  const tip = Math.max(shoulder - frame.tenon, 0)
  const outline: Point[] = [
    [end, boards],
    [tip, boards],
    [tip, back],
    [shoulder, back],
    [shoulder, depth],
    [end, depth],
  ]
  return [
    { kind: 'polygon', points: outline, fill: 'ledge', part },
    ...grainLines(
      [
        [tip + 4, boards],
        [end, back],
      ],
      'y',
      part,
    ),
    { kind: 'polyline', points: outline, pen: 'visible', part },
  ]
}

function faceChain({ leaf, end }: Cut, figures: FigureText): Chain {
  const first = leaf.boards[0]
  const stops = [0, first?.x ?? 0]
  const labels: Chain['labels'] = [{ text: figures.write(first?.x ?? 0), part: 'dimension stile face' }]
  if (first && first.x + first.width <= end) {
    stops.push(first.x + first.width)
    labels.push({ text: figures.write(first.width), part: 'dimension board 1' })
  }
  return { kind: 'chain', axis: 'x', base: 0, offset: -9, stops, labels, part: 'dimension boards' }
}

function backChains({ frame, depth }: Cut, figures: FigureText): Chain[] {
  const width = frame.stile.width
  const tip = Math.max(width - frame.tenon, 0)
  const chain = (stops: number[], offset: number, part: string): Chain => ({
    kind: 'chain',
    axis: 'x',
    base: depth,
    offset,
    stops,
    labels: [{ text: figures.write(width - (stops[0] ?? 0)), part }],
    part,
  })
  return [chain([tip, width], 6, 'dimension tenon'), chain([0, width], 15, 'dimension hanging stile width')]
}

const words = ({ end, depth }: Cut): Mark[] => [
  ...hingeMarks({ low: 0, high: depth, past: [6, 20], letter: 22.9 }),
  beside([end, 0], 'face', { dx: 2.5, dy: 0.5 }),
  beside([end, depth], 'back', { dx: 2.5, dy: -2.6 }),
]
