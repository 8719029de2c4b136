import type { Leaf, Ledge } from '../gate/leaf.ts'
import { endLoss } from '../gate/ledges.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import type { LengthUnit } from '../job/job.ts'
import { boardOutline, boardProfile } from './boardProfile.ts'
import { clipAt, openEdges } from './clip.ts'
import type { Drawing, Mark } from './drawing.ts'
import { figureText, type FigureText } from './figureText.ts'
import { faceChain, insetChain, thicknessChain, type Cut } from './sectionChains.ts'
import { sectionFixing, type DrawnLeaf } from './sectionFixing.ts'
import { breakLine, hatch } from './sectionMarks.ts'
import { hingeMarks } from './hingeMarks.ts'

/**
 * A level cut through the boarding and the bottom ledge at the hanging edge, seen from above with the face at the foot of the
 * sheet; x from the hanging edge and y = z from the face to the back, mm. It runs past the first joint and is broken off there.
 */
export function section({ spec, design, leaf }: DrawnLeaf, unit: LengthUnit): Drawing {
  const figures = figureText(unit)
  const ledge = leaf.ledges[0]
  const boardThickness = spec.boards.section.thickness
  const depth = boardThickness + (ledge?.section.thickness ?? 0)
  const end = brokenAt(leaf)
  const broken = end < leaf.width - 1e-6
  const cut = { spec, leaf, end, broken, depth, boardThickness }
  return {
    title: 'Section, from above',
    description: `Section through the boarding and the bottom ledge at the hanging edge: boards ${figures.write(boardThickness)} thick, ledge ${figures.write(depth - boardThickness)} thick`,
    extent: { minX: 0, minY: 0, maxX: end, maxY: depth },
    margin: { left: 27, right: 16, top: 22.5, bottom: 15 },
    notes: [],
    marks: [
      ...leaf.boards.flatMap((board, i) => (board.x < end ? boardMarks(cut, i) : [])),
      ...(ledge ? ledgeMarks(cut, ledge) : []),
      ...(broken ? [breakLine(end, [0, depth])] : []),
      ...(ledge ? sectionFixing({ spec, design, leaf }, { ledge, end, depth }) : []),
      ...faceChain(cut, figures),
      ...(ledge ? insetChain(ledge, { end, depth }, figures) : []),
      thicknessChain(boardThickness, depth, figures),
      ...words(end, depth, ledge),
      ...tongueWords(spec, figures),
    ],
  }
}

/** Past the first joint far enough to show how the next board lies in it, and never past the leaf. */
function brokenAt(leaf: Leaf): number {
  const second = leaf.boards[1]
  if (!second) return leaf.width
  return Math.min(Math.max(second.x + 42, 130), leaf.width)
}

function boardMarks({ spec, leaf, end, broken }: Cut, i: number): Mark[] {
  const board = leaf.boards[i]
  if (!board) return []
  const part = `board ${i + 1}`
  const points = clipAt(boardOutline(board, spec.boards.section, spec.boards.tongues), end)
  const angle = i % 2 === 0 ? hatch.angle : 180 - hatch.angle
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

/** The ledge is cut along its grain, so it shows grain lines where the boards show end grain. */
function ledgeMarks({ spec, end, broken, depth, boardThickness }: Cut, ledge: Ledge): Mark[] {
  const part = `${ledge.name} ledge`
  const loss = spec.ledges.end.cut === 'bevelled' ? endLoss(spec.ledges.end, ledge.section) : 0
  const stop = ledge.x + ledge.length
  const whole: Point[] = [
    [ledge.x, boardThickness],
    [stop, boardThickness],
    [stop - loss, depth],
    [ledge.x + loss, depth],
  ]
  const points = clipAt(whole, end)
  const grain = [0.2, 0.42, 0.63, 0.83].map((share): Mark => {
    const z = boardThickness + share * (depth - boardThickness)
    const inset = ledge.x + loss * share + 4 + 9 * ((share * 7) % 1)
    return {
      kind: 'line',
      from: [inset, z],
      to: [Math.min(end, stop - loss) - 5 * ((share * 5) % 1), z],
      pen: 'grain',
      part,
    }
  })
  return [
    { kind: 'polygon', points, fill: 'ledge', part },
    ...grain,
    ...openEdges(points, end, broken && stop > end).map((run): Mark => ({
      kind: 'polyline',
      points: run,
      pen: 'visible',
      part,
    })),
  ]
}

const words = (end: number, depth: number, ledge: Ledge | undefined): Mark[] => [
  ...hingeMarks({ low: 0, high: depth, past: [6, 10.7], letter: 13.4 }),
  { kind: 'text', at: [end, 0], dx: 2.5, dy: 0.5, text: 'face', size: 'small', anchor: 'start' },
  ...(ledge
    ? [
        {
          kind: 'text',
          at: [end, depth],
          dx: 2.5,
          dy: -2.6,
          text: 'back',
          size: 'small',
          anchor: 'start',
        } satisfies Mark,
      ]
    : []),
]

/** Tongue and groove, beside the boards on the hanging side. */
function tongueWords(spec: GateSpec, figures: FigureText): Mark[] {
  const { tongue, groove } = boardProfile(spec.boards.section)
  if (tongue === 0) return []
  return [`tongue ${figures.write(tongue)}`, `groove ${figures.write(groove)}`].map((text, i) => ({
    kind: 'text',
    at: [0, 0],
    dx: -4,
    dy: -6.2 - 3.9 * i,
    text,
    size: 'figure',
    anchor: 'end',
  }))
}
