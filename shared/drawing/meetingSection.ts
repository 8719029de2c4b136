import { lapOf, openingSide } from '../gate/meeting.ts'
import type { GateSpec } from '../gate/spec.ts'
import { withoutNoughts } from './dimensions.ts'
import type { Chain, ChainLabel, Drawing, Mark } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import { leafAt, stripFrom, stripMarks, stripThickness, type Meeting } from './meetingPieces.ts'
import type { Placing } from './placeLeaves.ts'
import { beside } from './sectionMarks.ts'

/** The least of each leaf that is shown beside the meeting, mm. */
const leastShown = 120

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
    side: openingSide(spec),
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
    margin: { left: 14, right: 16, top: 31, bottom: 16 },
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
  const { spec, leaves, edge, lap, gap, side } = meeting
  if (edge === 'rebated') {
    const piece = spec.frame ? 'closing stile' : `board ${leaves[0].boards.length}`
    const width = (spec.frame?.stile.width ?? leaves[0].boards.at(-1)?.width ?? 0) + lap
    return [
      `First leaf’s ${piece}: ${figures.write(width)} wide with its lap`,
      'Faces flush, half thick each',
    ]
  }
  if (edge === 'square') return []
  return [
    `Cover strip ${figures.write(2 * lap + gap)} × ${figures.write(stripThickness(meeting))} on the ${side}`,
    'Fixed to the first leaf only',
  ]
}

function words({ shown, gap, boards, depth }: Meeting): Mark[] {
  const over = (x: number, text: string): Mark => ({
    ...beside([x, depth], text, { dx: 0, dy: 20.5 }),
    part: 'closing edge',
  })
  return [
    over(-shown / 2, 'opens first'),
    over(gap + shown / 2, 'opens second'),
    beside([gap + shown, 0], 'face', { dx: 3, dy: 0.5 }),
    beside([gap + shown, Math.max(depth, boards)], 'back', { dx: 3, dy: -2.6 }),
  ]
}
