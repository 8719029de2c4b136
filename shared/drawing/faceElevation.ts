import type { Board } from '../gate/leaf.ts'
import { lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { GateSpec } from '../gate/spec.ts'
import { boardProfile } from './boardProfile.ts'
import { describeFace } from './describe.ts'
import { boardChain, leafChain, overallHeight, overallWidth, rows } from './dimensions.ts'
import type { Drawing, Mark } from './drawing.ts'
import { elevation, type GateView } from './elevation.ts'
import { fittingMarks } from './fittingMarks.ts'
import { boardingEdge, frameFromFace } from './frameMarks.ts'
import { boardShape, jointEnds, lastEnd, leafOutline } from './leafLines.ts'
import { meetingStrip } from './meetingStrip.ts'
import { setDown, type PlacedLeaf } from './placeLeaves.ts'
import { viewNotes } from './viewNotes.ts'

/**
 * All leaves from the face, the first leaf's hanging edge at x = 0 (so this is a left-hung gate; the other hand is its mirror):
 * boards with the V of each joint, ripped boards named, a chain of board faces along the foot.
 */
export function faceElevation(view: GateView): Drawing {
  const { spec, placing, figures } = view
  return elevation(view, 'face', (edges) => {
    const measured = { placing, edges, figures }
    const pair = placing.kind === 'pair'
    return {
      title: 'Face',
      description: describeFace(spec, placing, figures),
      margin: { left: 24, right: pair ? 27 : 20, top: 22, bottom: pair ? 36 : 25 },
      notes: viewNotes(spec, placing, figures),
      marks: [
        ...placing.leaves.flatMap((placed) => setDown(placed, leafFromFace(spec, placed))),
        ...meetingStrip(spec, placing, 'face'),
        boardChain(measured),
        ...leafChain(measured, 'face'),
        overallWidth(measured, pair ? rows.third : rows.second),
        overallHeight(measured, rows.first),
      ],
    }
  })
}

/** Everything on one leaf, in leaf coordinates. */
function leafFromFace(spec: GateSpec, placed: PlacedLeaf): Mark[] {
  const { leaf } = placed
  return [
    ...frameFromFace(spec, placed),
    ...leaf.boards.map((board, i): Mark => ({
      kind: 'polygon',
      points: boardShape(placed, board, leaf.boards[i + 1]?.x ?? lastEnd(placed, 'face')),
      fill: 'board',
      part: `board ${i + 1}`,
    })),
    ...joints(spec, placed),
    ...boardingEdge(placed),
    { kind: 'polygon', points: leafOutline(placed, 'face'), fill: 'none', pen: 'visible' },
    ...(spec.fixings.kind === 'nail' ? nails(placed) : []),
    ...fittingMarks(placed, 'face'),
    ...leaf.boards.flatMap((board, i) => boardNumber(placed, board, i)),
  ]
}

function joints(spec: GateSpec, placed: PlacedLeaf): Mark[] {
  const { boards } = placed.leaf
  const v = boardProfile(spec.boards.section).chamfer
  return boards.slice(1).map((board, i): Mark => {
    const before = boards[i]
    const end = before ? before.x + before.width : board.x
    const x = (end + board.x) / 2
    const apart = board.x - end + 2 * v
    const [from, to] = jointEnds(placed, x, board)
    return { kind: 'pair', from, to, apart, least: 0.55, pen: 'narrow', part: `board ${i + 2}` }
  })
}

const nails = ({ leaf }: PlacedLeaf): Mark[] =>
  leaf.fixings.map((place) => ({
    kind: 'symbol',
    at: [place.x, place.y],
    shape: 'nail',
    part: `fixings ${place.joins}`,
  }))

/** What 'ripped' and a board's number need between the board's head and the middle of the word, mm on paper. */
const ripsRoom = 10.8

/** Boards are numbered from the hanging edge; a ripped one says so up its middle. */
function boardNumber(placed: PlacedLeaf, board: Board, i: number): Mark[] {
  const part = `board ${i + 1}`
  const x = board.x + board.width / 2
  const number: Mark = {
    kind: 'text',
    at: [x, Math.min(...board.heads)],
    dy: -6,
    text: String(i + 1),
    size: 'figure',
    anchor: 'middle',
    over: 'board',
    within: board.width,
    part,
  }
  if (!board.ripped) return [number]
  return [
    number,
    {
      kind: 'text',
      at: [x, bayMiddle(placed)],
      dx: 1.1,
      text: 'ripped',
      size: 'small',
      anchor: 'middle',
      angle: 90,
      over: 'board',
      within: board.width,
      height: { model: Math.min(...board.heads) - bayMiddle(placed), least: ripsRoom },
      part,
    },
  ]
}

/** Midway up the lowest bay, clear of nails. */
const bayMiddle = ({
  leaf: {
    ledges: [low, next],
    height,
  },
}: PlacedLeaf): number => (low && next ? (upperEdge(low) + lowerEdge(next)) / 2 : height / 2)
