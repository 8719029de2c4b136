import { lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { Ledge } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { weatherDrop } from '../gate/weathering.ts'
import type { Point } from '../geometry/point.ts'
import { box } from './box.ts'
import type { Chain, Drawing, Mark } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import type { PlacedLeaf } from './placeLeaves.ts'
import { beside, breakAcross, endGrain, grainLines } from './sectionMarks.ts'

/** How far above and below the ledge the board is shown, mm. */
const shownPast = 60

/** The ledge as it is cut: its heights from the leaf's foot, how far its upper edge falls, and how deep boards and both together are. mm. */
type Cut = { name: string; low: number; high: number; drop: number; boards: number; depth: number }

function cutOf(spec: GateSpec, ledge: Ledge): Cut {
  const boards = spec.boards.section.thickness
  return {
    name: ledge.name,
    low: lowerEdge(ledge),
    high: upperEdge(ledge),
    drop: weatherDrop(spec, ledge),
    boards,
    depth: boards + ledge.section.thickness,
  }
}

function chains({ low, high, drop, boards, depth }: Cut, figures: FigureText): Chain[] {
  const chain = (row: Omit<Chain, 'kind' | 'labels' | 'part'>, parts: string[]): Chain => ({
    kind: 'chain',
    ...row,
    labels: parts.map((part, i) => ({
      text: figures.write((row.stops[i + 1] ?? 0) - (row.stops[i] ?? 0)),
      part: `dimension ${part}`,
    })),
    part: `dimension ${parts[0] ?? ''}`,
  })
  return [
    chain({ axis: 'x', base: low - shownPast, offset: -9, stops: [0, boards, depth] }, [
      'board thickness',
      'ledge thickness',
    ]),
    chain({ axis: 'y', base: depth, offset: 9, stops: [low, high - drop, high] }, [
      'ledge back',
      'weathering',
    ]),
    chain({ axis: 'y', base: 0, offset: -9, stops: [low, high] }, ['ledge width']),
  ]
}

function cutMarks({ name, low, high, drop, boards, depth }: Cut): Mark[] {
  const [foot, head] = [low - shownPast, high + shownPast]
  const board: [Point, Point] = [
    [0, foot],
    [boards, head],
  ]
  const ledge: Point[] = [
    [boards, low],
    [depth, low],
    [depth, high - drop],
    [boards, high],
  ]
  return [
    { kind: 'polygon', points: box(...board), fill: 'board', part: 'board' },
    ...grainLines(board, 'x', 'board'),
    { kind: 'line', from: [0, foot], to: [0, head], pen: 'visible', part: 'board' },
    { kind: 'line', from: [boards, foot], to: [boards, head], pen: 'visible', part: 'board' },
    endGrain(ledge, `${name} ledge`),
    breakAcross(foot, [0, boards]),
    breakAcross(head, [0, boards]),
  ]
}

/**
 * A weathered ledge cut upright beside its brace, face at the left: its end grain, the slope that throws the water off, and the board it is
 * fixed to. z from the face, heights from the leaf's foot, mm. Undefined where ledges aren't weathered.
 */
export function ledgeSection(spec: GateSpec, { leaf }: PlacedLeaf, figures: FigureText): Drawing | undefined {
  const ledge = leaf.ledges[0]
  const angle = spec.ledges.weather ?? 0
  if (!ledge || angle === 0) return undefined
  const cut = cutOf(spec, ledge)
  const [foot, head] = [cut.low - shownPast, cut.high + shownPast]
  return {
    title: 'Section through a ledge',
    description: `A ledge cut upright: its upper edge weathered ${angle} degrees, ${figures.write(cut.drop)} lower at the back`,
    extent: { minX: 0, minY: foot, maxX: cut.depth, maxY: head },
    margin: { left: 24, right: 26, top: 16, bottom: 18 },
    notes: [`Weathered ${angle}°${leaf.braces.length > 0 ? ', left flat where a brace stands' : ''}`],
    marks: [
      ...cutMarks(cut),
      ...chains(cut, figures),
      beside([0, foot + shownPast / 2], 'face', { dx: -2.5, dy: 0 }),
      beside([cut.boards, foot + shownPast / 2], 'back', { dx: 2.5, dy: 0 }),
    ],
  }
}
