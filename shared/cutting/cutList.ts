import { lengthTolerance } from '../geometry/point.ts'
import type { Board, Brace, Leaf, Ledge } from '../gate/leaf.ts'
import { lapOf } from '../gate/meeting.ts'
import type { GateSpec, LedgeEnd, Section } from '../gate/spec.ts'
import { writeShortMm } from '../units/writeLength.ts'

/**
 * A row of the cut list. part is 'board', 'ledge', 'brace' (or 'lower brace' and the like when they differ); marks name the
 * single pieces; length in mm rounded once to 0.5 (a quarter goes up): boards finished, ledges long edge, braces long point
 * to long point. blank is the length to cut first, rounded alike. ends says how both ends are cut, with angles.
 */
export type CutRow = {
  part: string
  marks: string[]
  section: string
  thickness: number
  width: number
  quantity: number
  length: number
  blank: number
  ends: string
}

/** A piece before it is counted. family is what it is called when all of its family are alike. */
type Piece = Omit<CutRow, 'marks' | 'quantity' | 'part'> & { family: string; mark: string }

/** A length as it is cut: to the half millimetre, a quarter going up. 1531.25 is 1531.5, 1531.24 is 1531. */
export const toHalf = (mm: number): number => Math.floor(mm * 2 + 0.5 + 1e-9) / 2

const degrees = (angle: number): string => `${writeShortMm(angle)}°`

function cutEnds(end: LedgeEnd, shortLength: number): string {
  if (end.cut === 'square') return 'both ends square'
  return end.cut === 'bevelled'
    ? `both ends bevelled ${degrees(end.angle)} through the thickness, back face ${writeShortMm(shortLength)}`
    : `both ends splayed ${degrees(end.angle)} across the width, upper edge ${writeShortMm(shortLength)}`
}

/** How a ledge is cut: its ends, and its upper edge where that is weathered. */
function ledgeEnds({ ledges, braces, frame }: GateSpec, ledge: Ledge): string {
  const ends = frame ? tenonEnds(frame, ledge) : cutEnds(ledges.end, ledge.shortLength)
  const weather = ledges.weather ?? 0
  if (weather === 0) return ends
  const flat = braces && ledge.name !== 'top' ? ', left flat where a brace stands' : ''
  return `${ends}; upper edge weathered ${degrees(weather)}${flat}`
}

/** A framed gate's ledge: bare-faced tenons into the stiles. */
const tenonEnds = ({ tenon }: NonNullable<GateSpec['frame']>, ledge: Ledge): string =>
  `bare-faced tenons ${writeShortMm(tenon)} long, shouldered on the back, ${writeShortMm(ledge.shortLength)} between shoulders`

const sizes = (section: Section) => ({
  section: section.name,
  thickness: section.thickness,
  width: section.width,
})

/** How a brace's ends are cut: by the saw setting, or with the notch's two faces. */
function braceEnds({ sawSetting, notch }: Brace): string {
  if (notch === null) return `both ends ${degrees(sawSetting)} off square, parallel`
  return `both ends notched ${writeShortMm(notch.depth)} deep: shoulder square to the brace ${writeShortMm(notch.shoulder)}, slope ${writeShortMm(notch.slope)}`
}

/** A piece's name on the bench: the part's own, after the leaf's where there is more than one. */
export const markOf = (leaf: Leaf, part: string): string =>
  leaf.name === 'leaf' ? part : `${leaf.name} ${part}`

/** What a piece is wider by for its lap at a rebated meeting, in words. */
const lapWords = (lap: number): string =>
  lap > 0 ? `; ${writeShortMm(lap)} of its width is the lap at the meeting` : ''

function framePieces(spec: GateSpec, leaf: Leaf): Piece[] {
  return leaf.frame.map((part): Piece => ({
    family: part.name === 'top rail' ? 'top rail' : 'stile',
    mark: markOf(leaf, part.name),
    ...sizes(part.section),
    width: part.blankWidth,
    length: toHalf(part.length),
    blank: toHalf(part.length),
    ends:
      part.name === 'top rail'
        ? `tenons ${writeShortMm(spec.frame?.tenon ?? 0)} long, ${writeShortMm(part.shoulder)} between shoulders`
        : `horns ${writeShortMm(spec.frame?.horn ?? 0)} left on each end until the leaf is together${lapWords(part.blankWidth - part.section.width)}`,
  }))
}

/** The strip over the joint of a pair that meets under one, lapping onto both leaves. */
function meetingStrip(spec: GateSpec, leaves: Leaf[]): Piece[] {
  const first = leaves[0]
  if (spec.meeting?.edge !== 'strip' || !first) return []
  const lap = lapOf(spec)
  const height = Math.max(
    ...first.boards.map((board) => Math.max(...board.heads)),
    ...first.frame.map((part) => part.shoulder),
  )
  const section = spec.boards.section
  return [
    {
      family: 'meeting strip',
      mark: 'meeting strip',
      section: `strip from ${section.name}`,
      thickness: section.thickness,
      width: 2 * lap + (spec.size.meetingGap ?? 0),
      length: toHalf(height),
      blank: toHalf(height),
      ends: 'head to follow the top, fixed to the leaf that opens first',
    },
  ]
}

/** How a board's ends are cut: square, or to the line of a shaped top or foot once the leaf is together. */
function boardEnds(board: Board): string {
  const [hanging, closing] = board.heads
  const curved = board.length > Math.max(hanging, closing) - Math.min(...board.feet) + lengthTolerance
  const head =
    hanging !== closing
      ? `head ${writeShortMm(hanging)} at the hanging edge, ${writeShortMm(closing)} at the closing edge, cut once together`
      : curved
        ? 'head cut to the top once together'
        : 'both ends square'
  const lapped = `${head}${lapWords(board.lap ?? 0)}`
  return board.feet[0] === board.feet[1] ? lapped : `${lapped}; foot to follow the ground`
}

function piecesOf(spec: GateSpec, leaf: Leaf): Piece[] {
  const boards = leaf.boards.map((board, index): Piece => ({
    family: 'board',
    mark: markOf(leaf, `board ${index + 1}`),
    ...sizes(spec.boards.section),
    length: toHalf(board.length),
    blank: toHalf(board.blank),
    ends: boardEnds(board),
  }))
  const ledges = leaf.ledges.map((ledge): Piece => ({
    family: 'ledge',
    mark: markOf(leaf, `${ledge.name} ledge`),
    ...sizes(ledge.section),
    length: toHalf(ledge.length),
    blank: toHalf(ledge.length),
    ends: ledgeEnds(spec, ledge),
  }))
  const braces = leaf.braces.map((brace: Brace): Piece => ({
    family: 'brace',
    mark: markOf(leaf, `${brace.name} brace`),
    ...sizes(brace.section),
    length: toHalf(brace.length),
    blank: toHalf(brace.length),
    ends: braceEnds(brace),
  }))
  return [...framePieces(spec, leaf), ...boards, ...ledges, ...braces]
}

const alike = (piece: Piece): string =>
  [piece.family, piece.section, piece.thickness, piece.width, piece.length, piece.blank, piece.ends].join('|')

/** The cut list of a gate: like pieces in one row, frame first, then boards, ledges, braces and a pair's meeting strip. */
export function cutList(spec: GateSpec, leaves: Leaf[]): CutRow[] {
  const rows = new Map<string, Piece[]>()
  const pieces = [...leaves.flatMap((leaf) => piecesOf(spec, leaf)), ...meetingStrip(spec, leaves)]
  for (const piece of pieces) rows.set(alike(piece), [...(rows.get(alike(piece)) ?? []), piece])
  const groups = [...rows.values()]
  return groups.map((pieces) => {
    const { family, mark: _mark, ...rest } = pieces[0] as Piece
    const lone = groups.filter((group) => group[0]?.family === family).length === 1
    const marks = pieces.map((piece) => piece.mark)
    return { part: lone ? family : marks.join(', '), marks, quantity: pieces.length, ...rest }
  })
}
