import type { Leaf } from '../gate/leaf.ts'
import { shortReach } from '../gate/ledges.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import { boardOutline } from './boardProfile.ts'
import { box } from './box.ts'
import { clipAt, openEdges } from './clip.ts'
import { withoutNoughts } from './dimensions.ts'
import type { Chain, ChainLabel, Drawing, Mark } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import { lapOf } from './meetingStrip.ts'
import { meetingEdge, type EdgeStep } from './meetingEdge.ts'
import type { Placing } from './placeLeaves.ts'
import { beside, breakLine, hatch } from './sectionMarks.ts'

/** The least of each leaf that is shown beside the meeting, mm. */
const leastShown = 120

/**
 * The meeting of a pair as it is cut: shown is how much of each leaf is drawn, mm; side the one that the gate opens to, which carries the
 * lap or the strip.
 */
type Meeting = {
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

function meetingOf(spec: GateSpec, { leaves, gap }: Placing): Meeting | undefined {
  const [first, second] = leaves
  if (!first || !second) return undefined
  const boards = spec.boards.section.thickness
  return {
    spec,
    leaves: [first.leaf, second.leaf],
    gap,
    lap: lapOf(spec),
    edge: spec.meeting?.edge ?? 'square',
    side: spec.opens === 'to-face' ? 'face' : 'back',
    shown: spec.frame ? spec.frame.stile.width + 50 : leastShown,
    boards,
    depth: spec.frame?.stile.thickness ?? boards + spec.ledges.section.thickness,
  }
}

/**
 * Both meeting edges of a pair in a level cut between the ledges, from above with the face at the foot of the sheet, the first-opening leaf
 * at the left: square, rebated or with a cover strip on the side that the gate opens to. x from the first leaf's edge. Undefined on one leaf.
 */
export function meetingSection(spec: GateSpec, placing: Placing, figures: FigureText): Drawing | undefined {
  const meeting = placing.kind === 'pair' ? meetingOf(spec, placing) : undefined
  if (!meeting) return undefined
  const { shown, gap, depth, edge, side } = meeting
  const strip = edge === 'strip' ? stripThickness(meeting) : 0
  return {
    title: 'Where the leaves meet, from above',
    description: `The meeting edges of the pair, ${edge === 'strip' ? 'with a cover strip' : edge}, ${figures.write(gap)} between them`,
    extent: {
      minX: -shown,
      minY: side === 'face' ? -strip : 0,
      maxX: gap + shown,
      maxY: side === 'back' ? Math.max(depth, stripFrom(meeting) + strip) : depth,
    },
    margin: { left: 14, right: 16, top: 26, bottom: 16 },
    notes: notesOf(meeting, figures),
    marks: [
      ...leafAt(meeting, 0),
      ...leafAt(meeting, 1),
      ...stripMarks(meeting),
      ...chains(meeting, figures),
      ...words(meeting),
    ],
  }
}

/** Where a distance in from a leaf's own edge comes on the drawing. */
const placed = ({ gap }: Meeting, index: 0 | 1, [inward, z]: Point): Point =>
  index === 0 ? [-inward, z] : [gap + inward, z]

function leafAt(meeting: Meeting, index: 0 | 1): Mark[] {
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
const stripThickness = ({ boards }: Meeting): number => boards

/** Where the strip begins: on the face, or on the back of what stands at the edge. */
const stripFrom = ({ side, spec, boards, depth }: Meeting): number =>
  side === 'face' ? 0 : spec.frame ? depth : boards

function stripMarks(meeting: Meeting): Mark[] {
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

function chains(meeting: Meeting, figures: FigureText): Chain[] {
  const { gap, lap, edge, side, depth } = meeting
  const said = (mm: number, part: string): ChainLabel => ({
    text: figures.write(mm),
    part: `dimension ${part}`,
  })
  const chain = (stops: number[], labels: ChainLabel[], onSide: 'face' | 'back'): Chain => {
    const strip = edge === 'strip' && side === onSide ? stripThickness(meeting) : 0
    const back = strip > 0 ? Math.max(depth, stripFrom(meeting) + strip) : depth
    return {
      kind: 'chain',
      axis: 'x',
      base: onSide === 'face' ? -strip : back,
      offset: onSide === 'face' ? -9 : 7,
      ...withoutNoughts(stops, labels),
      part: 'dimension meeting',
    }
  }
  const away = side === 'face' ? 'back' : 'face'
  const between = gap > 0 ? [chain([0, gap], [said(gap, 'meeting gap')], away)] : []
  if (edge === 'rebated')
    return [...between, chain([0, lap, gap + lap], [said(lap, 'lap'), said(gap, 'meeting gap')], side)]
  if (edge === 'square') return between
  return [
    ...between,
    chain([-lap, 0, gap, gap + lap], [said(lap, 'lap'), said(gap, 'meeting gap'), said(lap, 'lap')], side),
  ]
}

function notesOf(meeting: Meeting, figures: FigureText): string[] {
  const { edge, lap, gap, side } = meeting
  if (edge === 'rebated') return [`The lap of ${figures.write(lap)} stands past the first leaf’s width`]
  if (edge === 'square') return []
  return [
    `Cover strip ${figures.write(2 * lap + gap)} × ${figures.write(stripThickness(meeting))} on the ${side}, fixed to the first leaf only`,
  ]
}

function words({ shown, gap, boards, depth }: Meeting): Mark[] {
  const over = (x: number, text: string): Mark => ({
    ...beside([x, depth], text, { dx: 0, dy: 16 }),
    part: 'closing edge',
  })
  return [
    over(-shown / 2, 'opens first'),
    over(gap + shown / 2, 'opens second'),
    beside([gap + shown, 0], 'face', { dx: 3, dy: 0.5 }),
    beside([gap + shown, Math.max(depth, boards)], 'back', { dx: 3, dy: -2.6 }),
  ]
}
