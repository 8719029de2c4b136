import type { Leaf } from '../gate/leaf.ts'
import { lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { LengthUnit } from '../job/job.ts'
import { box } from './backElevation.ts'
import { boardProfile } from './boardProfile.ts'
import { boardChain, overallHeight, overallWidth, rows } from './dimensions.ts'
import type { Drawing, Mark } from './drawing.ts'
import { figureText, type FigureText } from './figureText.ts'
import { hingeSide } from './hingeSide.ts'

/**
 * The leaf from its face in leaf coordinates (hanging edge at x = 0, so this is a left-hung gate; the other hand is its mirror):
 * boards with the V of each joint, ripped boards named, a chain of board faces along the foot.
 */
export function faceElevation(spec: GateSpec, leaf: Leaf, unit: LengthUnit): Drawing {
  const figures = figureText(unit)
  return {
    title: 'Face',
    description: `Face of the leaf: ${leaf.boards.length} boards, hinges at the ${spec.hung}, ${rippedWords(leaf, figures)}`,
    extent: { minX: 0, minY: 0, maxX: leaf.width, maxY: leaf.height },
    margin: { left: 24, right: 20, top: 22, bottom: 25 },
    notes: [],
    marks: [
      ...leaf.boards.map((board, i): Mark => ({
        kind: 'polygon',
        points: box([board.x, 0], [leaf.boards[i + 1]?.x ?? leaf.width, board.length]),
        fill: 'board',
        part: `board ${i + 1}`,
      })),
      ...joints(spec, leaf),
      { kind: 'polygon', points: box([0, 0], [leaf.width, leaf.height]), fill: 'none', pen: 'visible' },
      ...(spec.fixings.kind === 'nail' ? nails(leaf) : []),
      ...leaf.boards.flatMap((board, i) => boardNumber(leaf, board, i)),
      boardChain(leaf, figures),
      overallWidth(leaf, figures),
      overallHeight(leaf, figures, rows.first),
      ...hingeSide(leaf),
    ],
  }
}

function joints(spec: GateSpec, leaf: Leaf): Mark[] {
  const v = boardProfile(spec.boards.section).chamfer
  return leaf.boards.slice(1).map((board, i): Mark => {
    const before = leaf.boards[i]
    const end = before ? before.x + before.width : board.x
    const x = (end + board.x) / 2
    const apart = board.x - end + 2 * v
    return {
      kind: 'pair',
      from: [x, 0],
      to: [x, board.length],
      apart,
      least: 0.55,
      pen: 'narrow',
      part: `board ${i + 2}`,
    }
  })
}

const nails = (leaf: Leaf): Mark[] =>
  leaf.fixings.map((place) => ({
    kind: 'symbol',
    at: [place.x, place.y],
    shape: 'nail',
    part: `fixings ${place.joins}`,
  }))

/** Boards are numbered from the hanging edge; a ripped one says so up its middle. */
function boardNumber(leaf: Leaf, board: Leaf['boards'][number], i: number): Mark[] {
  const part = `board ${i + 1}`
  const x = board.x + board.width / 2
  const number: Mark = {
    kind: 'text',
    at: [x, leaf.height],
    dy: -6,
    text: String(i + 1),
    size: 'small',
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
      at: [x, bayMiddle(leaf)],
      dx: 1.1,
      text: 'ripped',
      size: 'small',
      anchor: 'middle',
      angle: 90,
      over: 'board',
      within: board.width,
      part,
    },
  ]
}

/** Midway up the lowest bay, clear of nails. */
const bayMiddle = ({ ledges: [low, next], height }: Leaf): number =>
  low && next ? (upperEdge(low) + lowerEdge(next)) / 2 : height / 2

function rippedWords(leaf: Leaf, figures: FigureText): string {
  const ripped = leaf.boards.flatMap((board, i) =>
    board.ripped ? [`board ${i + 1} ripped to ${figures.write(board.width)}`] : [],
  )
  return ripped.length > 0 ? ripped.join(', ') : 'no board ripped'
}
