import type { Leaf } from '../gate/leaf.ts'
import { shortReach } from '../gate/ledges.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import { boardOutline } from './boardProfile.ts'
import { box } from './box.ts'
import { clipAt, openEdges } from './clip.ts'
import type { Mark } from './drawing.ts'
import { meetingEdge, type EdgeStep } from './meetingEdge.ts'
import { breakLine, hatch } from './sectionMarks.ts'

/**
 * The meeting of a pair as it is cut: shown is how much of each leaf is drawn, mm; side the one that the gate opens to, which carries the
 * lap or the strip.
 */
export type Meeting = {
  spec: GateSpec
  leaves: [Leaf, Leaf]
  gap: number
  lap: number
  edge: 'square' | 'rebated' | 'strip'
  side: 'face' | 'back'
  shown: number
  boards: number
  depth: number
}

/** Where a distance in from a leaf's own edge comes on the drawing. */
const placed = ({ gap }: Meeting, index: 0 | 1, [inward, z]: Point): Point =>
  index === 0 ? [-inward, z] : [gap + inward, z]

/** One leaf beside the meeting, 0 the first and 1 the second: the ledge seen below the cut, boards, a frame's stile, and where it is broken off. */
export function leafAt(meeting: Meeting, index: 0 | 1): Mark[] {
  const { spec, leaves, shown, boards, depth } = meeting
  const leaf = leaves[index]
  const name = index === 0 ? 'first leaf' : 'second leaf'
  const at = (points: Point[]) => points.map((point) => placed(meeting, index, point))
  const inward = (points: readonly Point[]): Point[] => points.map(([x, z]) => [leaf.width - x, z])
  const piece = (points: Point[], look: { part: string; other: boolean }): Mark[] => {
    const part = `${name} ${look.part}`
    const cut = clipAt(points, shown)
    const angle = look.other ? 180 - hatch.angle : hatch.angle
    const runs = openEdges(
      cut,
      shown,
      points.some(([along]) => along > shown),
    )
    return [
      { kind: 'polygon', points: at(cut), fill: 'cut', hatch: { ...hatch, angle }, part },
      ...runs.map((run): Mark => ({ kind: 'polyline', points: at(run), pen: 'visible', part })),
    ]
  }
  const shownBoards = leaf.boards.flatMap((board, i): Mark[] => {
    if (leaf.width - board.x - board.width >= shown) return []
    const outline = inward(boardOutline(board, spec.boards.section, spec.boards.tongues))
    const last = i === leaf.boards.length - 1 && !spec.frame
    const stepped = last ? steppedOutline(outline, stepOf(meeting, index), boards) : outline
    return piece(stepped, { part: `board ${i + 1}`, other: (i + index) % 2 === 1 })
  })
  const stile = spec.frame
    ? piece(stileOutline(meeting, index), { part: 'closing stile', other: index === 0 })
    : []
  return [
    ...ledgeBelow(meeting, index),
    ...shownBoards,
    ...stile,
    breakLine(placed(meeting, index, [shown, 0])[0], [0, depth]),
  ]
}

const stepOf = ({ edge, lap, side }: Meeting, index: 0 | 1): EdgeStep => ({
  reach: edge !== 'rebated' ? 0 : index === 0 ? -lap : lap,
  side,
})

/** An edge board with its plain closing edge, the first three points of its outline, worked to the meeting. */
function steppedOutline(outline: Point[], step: EdgeStep, thickness: number): Point[] {
  if (step.reach === 0) return outline
  return [...meetingEdge(step, thickness), ...outline.slice(3)]
}

function stileOutline({ spec, edge, lap, side, boards, depth }: Meeting, index: 0 | 1): Point[] {
  const width = spec.frame?.stile.width ?? 0
  const inner = width - (spec.frame?.rebate ?? 0)
  const reach = edge !== 'rebated' ? 0 : index === 0 ? -lap : lap
  const outer: Point[] =
    reach === 0
      ? [
          [0, 0],
          [0, depth],
        ]
      : meetingEdge({ reach, side }, depth)
  return [...outer, [width, depth], [width, boards], [inner, boards], [inner, 0]]
}

/** The ledge that is seen below the cut; a framed leaf's ends at the stile and is left out. */
function ledgeBelow(meeting: Meeting, index: 0 | 1): Mark[] {
  const { spec, leaves, shown, boards, depth } = meeting
  const leaf = leaves[index]
  const ledge = leaf.ledges[0]
  if (!ledge || spec.frame) return []
  const end = leaf.width - ledge.x - ledge.length
  const back = spec.ledges.end.cut === 'bevelled' ? leaf.width - shortReach(ledge)[1] : end
  const outline: Point[] = [
    [shown, boards],
    [end, boards],
    [back, depth],
    [shown, depth],
  ]
  const points = outline.map((point) => placed(meeting, index, point))
  const part = `${index === 0 ? 'first leaf' : 'second leaf'} ${ledge.name} ledge`
  return [
    { kind: 'polygon', points, fill: 'ledge', part },
    { kind: 'polyline', points, pen: 'outline', part },
  ]
}

/** The strip is run from a board's thickness, as the cut list has it. */
export const stripThickness = ({ boards }: Meeting): number => boards

/** Where the strip begins: on the face, or on the back of what stands at the edge. */
export const stripFrom = ({ side, spec, boards, depth }: Meeting): number =>
  side === 'face' ? 0 : spec.frame ? depth : boards

/** The cover strip across the meeting, where there is one. */
export function stripMarks(meeting: Meeting): Mark[] {
  const { edge, lap, gap, side } = meeting
  if (edge !== 'strip') return []
  const from = stripFrom(meeting)
  const to = side === 'face' ? -stripThickness(meeting) : from + stripThickness(meeting)
  return [
    {
      kind: 'polygon',
      points: box([-lap, Math.min(from, to)], [gap + lap, Math.max(from, to)]),
      fill: 'cut',
      pen: 'visible',
      hatch: { ...hatch, angle: 45 },
      part: 'meeting strip',
    },
  ]
}
