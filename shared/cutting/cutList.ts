import type { Brace, Leaf, Ledge } from '../gate/leaf.ts'
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
function ledgeEnds({ ledges, braces }: GateSpec, ledge: Ledge): string {
  const ends = cutEnds(ledges.end, ledge.shortLength)
  const weather = ledges.weather ?? 0
  if (weather === 0) return ends
  const flat = braces && ledge.name !== 'top' ? ', left flat where a brace stands' : ''
  return `${ends}; upper edge weathered ${degrees(weather)}${flat}`
}

const sizes = (section: Section) => ({
  section: section.name,
  thickness: section.thickness,
  width: section.width,
})

function piecesOf(spec: GateSpec, leaf: Leaf): Piece[] {
  const boards = leaf.boards.map((board, index): Piece => ({
    family: 'board',
    mark: `board ${index + 1}`,
    ...sizes(spec.boards.section),
    length: toHalf(board.length),
    blank: toHalf(board.blank),
    ends: 'both ends square',
  }))
  const ledges = leaf.ledges.map((ledge): Piece => ({
    family: 'ledge',
    mark: `${ledge.name} ledge`,
    ...sizes(ledge.section),
    length: toHalf(ledge.length),
    blank: toHalf(ledge.length),
    ends: ledgeEnds(spec, ledge),
  }))
  const braces = leaf.braces.map((brace: Brace): Piece => ({
    family: 'brace',
    mark: `${brace.name} brace`,
    ...sizes(brace.section),
    length: toHalf(brace.length),
    blank: toHalf(brace.length),
    ends: `both ends ${degrees(brace.sawSetting)} off square, parallel`,
  }))
  return [...boards, ...ledges, ...braces]
}

const alike = (piece: Piece): string =>
  [piece.family, piece.section, piece.thickness, piece.width, piece.length, piece.blank, piece.ends].join('|')

/** The cut list of a gate: like pieces in one row, boards first, then ledges, then braces. */
export function cutList(spec: GateSpec, leaves: Leaf[]): CutRow[] {
  const rows = new Map<string, Piece[]>()
  for (const piece of leaves.flatMap((leaf) => piecesOf(spec, leaf)))
    rows.set(alike(piece), [...(rows.get(alike(piece)) ?? []), piece])
  const groups = [...rows.values()]
  return groups.map((pieces) => {
    const { family, mark: _mark, ...rest } = pieces[0] as Piece
    const lone = groups.filter((group) => group[0]?.family === family).length === 1
    const marks = pieces.map((piece) => piece.mark)
    return { part: lone ? family : marks.join(', '), marks, quantity: pieces.length, ...rest }
  })
}
