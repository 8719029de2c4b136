import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import { box } from './box.ts'
import type { Chain, Drawing, Mark } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import { railLower } from './leafLines.ts'
import type { PlacedLeaf } from './placeLeaves.ts'
import { beside, breakAcross, endGrain, grainLines } from './sectionMarks.ts'

type Frame = NonNullable<GateSpec['frame']>

/** How far below the rail the boards are shown, mm. */
const shownBelow = 110

/** The rail cut upright at its middle: z from the face, heights from the leaf's foot, mm. */
type Cut = { frame: Frame; boards: number; depth: number; lower: number; head: number }

/**
 * A framed leaf's top rail in an upright cut at its middle, face at the left: its end grain, and the boards' heads in its rebate.
 * Undefined on a leaf without a rail.
 */
export function railSection(spec: GateSpec, placed: PlacedLeaf, figures: FigureText): Drawing | undefined {
  const { frame } = spec
  const lower = railLower(placed)
  if (!frame || lower === undefined) return undefined
  const head = placed.plan.top.heightAt(placed.leaf.width / 2)
  const depth = frame.topRail.thickness
  const cut: Cut = { frame, boards: spec.boards.section.thickness, depth, lower, head }
  return {
    title: 'Section through the top rail',
    description: `The top rail cut upright at its middle: ${figures.write(depth)} thick, the boards’ heads in a rebate ${figures.write(frame.rebate)} deep`,
    extent: { minX: 0, minY: lower - shownBelow, maxX: depth, maxY: head },
    margin: { left: 24, right: 24, top: 20, bottom: 18 },
    notes: [],
    marks: [...pieces(cut), ...chains(cut, figures), ...words(cut)],
  }
}

function pieces({ frame, boards, depth, lower, head }: Cut): Mark[] {
  const rebate = lower + frame.rebate
  const rail: Point[] = [
    [boards, lower],
    [depth, lower],
    [depth, head],
    [0, head],
    [0, rebate],
    [boards, rebate],
  ]
  const foot = lower - shownBelow
  return [
    endGrain(rail, 'top rail'),
    { kind: 'polygon', points: box([0, foot], [boards, rebate]), fill: 'board', part: 'board' },
    ...grainLines(
      [
        [0, foot],
        [boards, rebate],
      ],
      'x',
      'board',
    ),
    {
      kind: 'polyline',
      points: [
        [0, foot],
        [0, rebate],
        [boards, rebate],
        [boards, foot],
      ],
      pen: 'visible',
      part: 'board',
    },
    breakAcross(foot, [0, boards]),
  ]
}

function chains({ frame, boards, depth, lower, head }: Cut, figures: FigureText): Chain[] {
  const row = (
    axis: 'x' | 'y',
    { base, offset, stops }: { base: number; offset: number; stops: number[] },
    parts: string[],
  ): Chain => ({
    kind: 'chain',
    axis,
    base,
    offset,
    stops,
    labels: parts.map((part, i) => ({
      text: figures.write((stops[i + 1] ?? 0) - (stops[i] ?? 0)),
      part: `dimension ${part}`,
    })),
    part: `dimension ${parts[0] ?? ''}`,
  })
  return [
    row('x', { base: lower - shownBelow, offset: -9, stops: [0, boards, depth] }, [
      'board thickness',
      'ledge thickness',
    ]),
    row('x', { base: head, offset: 7, stops: [0, depth] }, ['top rail thickness']),
    row('y', { base: depth, offset: 9, stops: [lower, head] }, ['top rail width']),
    ...(frame.rebate > 0
      ? [row('y', { base: 0, offset: -9, stops: [lower, lower + frame.rebate] }, ['rebate'])]
      : []),
  ]
}

const words = ({ boards, lower }: Cut): Mark[] => [
  beside([0, lower - shownBelow * 0.6], 'face', { dx: -2.5, dy: 0 }),
  beside([boards, lower - shownBelow * 0.6], 'back', { dx: 2.5, dy: 0 }),
]
