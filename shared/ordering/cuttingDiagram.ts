import { hatchLines } from '../drawing/hatch.ts'
import type { Fill, Pen } from '../drawing/drawing.ts'
import { capHeight } from '../drawing/pens.ts'
import type { LaidOut, Primitive } from '../drawing/primitives.ts'
import { textWidth } from '../drawing/textWidth.ts'
import type { Point } from '../geometry/point.ts'
import { barPieces, type BarPiece, type CutBar, type PairCut } from './barPieces.ts'
import type { BracePair, CuttingSettings } from './orderModel.ts'

/**
 * What is drawn: lengths of one section, all to one scale. numbers: the jobs', each with a tint of its own; write: a length in words; longest: what
 * fills the width, mm, where it is more than the longest of these.
 */
export type DiagramOf = {
  bars: readonly CutBar[]
  cutting: CuttingSettings
  pairs: readonly BracePair[]
  numbers: readonly string[]
  write: (mm: number) => string
  sectionWidth?: number
}

/** A part that is told by a number in its bar, since its words have no room there. */
export type LegendLine = { number: number; mark: string; length: number }

/** One length to scale in mm of paper, y down; scale is paper mm to a mm of timber. */
export type CuttingDiagram = { bars: LaidOut[]; legend: LegendLine[]; scale: number }

/** Height of a bar, of the words in it, and the least room beside them, mm of paper. */
export const barHeight = 12.5
const air = 0.4
const wordSize = 3.5
const figureSize = 4
const besides = 0.8

const tints: Fill[] = ['board', 'brace', 'ledge']

/** Which job a mark is of, counted from 0 by the longest number that it begins with; -1 for none. */
export function jobOfMark(mark: string, numbers: readonly string[]): number {
  let best = -1
  numbers.forEach((number, place) => {
    const longer = best < 0 || number.length > (numbers[best] ?? '').length
    if (mark.startsWith(`${number} `) && longer) best = place
  })
  return best
}

const box = (from: number, to: number): Point[] => [
  [from, air],
  [to, air],
  [to, air + barHeight],
  [from, air + barHeight],
]

type Words = { x: number; line: number; text: string; size: number; bold?: boolean }

const written = ({ x, line, text, size, bold }: Words): Primitive => ({
  kind: 'text',
  x,
  y: air + line + (size * capHeight) / 2,
  text,
  size,
  weight: bold ? 'semibold' : 'regular',
  anchor: 'middle',
  angle: 0,
  tone: 'ink',
})

const widthOf = ({ text, size, bold }: Omit<Words, 'x' | 'line'>): number =>
  textWidth(text, size, bold ? 'semibold' : 'regular') + 2 * besides

const [upper, middle, lower] = [barHeight * 0.3, barHeight * 0.5, barHeight * 0.72]

type Room = { from: number; to: number }

const numbered = (room: Room, line: number, number: number): Primitive[] => {
  const x = (room.from + room.to) / 2
  const ring: Primitive = {
    kind: 'circle',
    centre: [x, air + line],
    radius: 2.15,
    fill: 'paper',
    pen: 'narrow',
  }
  const size = number > 99 ? 2.3 : number > 9 ? 2.9 : 3.3
  return [ring, written({ x, line, text: String(number), size, bold: true })]
}

/** What a part is called and how long it is, as much of it as its room holds; the rest stands in the legend under a number. */
function partWords(
  room: Room,
  { mark, length, of }: { mark: string; length: number; of: DiagramOf },
  numberOf: (mark: string, length: number) => number,
): Primitive[] {
  const x = (room.from + room.to) / 2
  const wide = room.to - room.from
  const figures = { text: of.write(length), size: figureSize, bold: true }
  const hasFigures = widthOf(figures) <= wide
  const [only] = of.numbers
  const short = of.numbers.length === 1 && only ? mark.replace(`${only} `, '') : mark
  const name = [mark, short].find((text) => text !== '' && widthOf({ text, size: wordSize }) <= wide)
  if (name !== undefined && hasFigures)
    return [written({ x, line: upper, text: name, size: wordSize }), written({ x, line: lower, ...figures })]
  if (mark === '') return hasFigures ? [written({ x, line: middle, ...figures })] : []
  const number = numberOf(mark, length)
  return hasFigures
    ? [...numbered(room, upper - 0.6, number), written({ x, line: lower + 0.5, ...figures })]
    : numbered(room, middle, number)
}

const filled = (points: Point[], fill: Fill, pen?: Pen): Primitive => ({
  kind: 'path',
  points,
  closed: true,
  fill,
  ...(pen && { pen }),
})

const hatched = (points: Point[], angles: number[], spacing: number): Primitive => ({
  kind: 'strokes',
  lines: angles.flatMap((angle) => hatchLines(points, angle, spacing)),
  pen: 'hatch',
})

/** Words on a hatched stretch stand on a patch of paper. */
function onPatch(room: Room, texts: { text: string; bold?: boolean }[][]): Primitive[] {
  const wide = room.to - room.from
  const size = wordSize
  const fitting = texts.find((lines) => lines.every((one) => widthOf({ ...one, size }) <= wide - 0.6))
  if (!fitting) return []
  const x = (room.from + room.to) / 2
  return fitting.flatMap((one, place) => {
    const line = fitting.length === 1 ? middle : place === 0 ? upper : lower
    const half = widthOf({ ...one, size }) / 2
    const patch: Point[] = [
      [x - half, air + line - 2.3],
      [x + half, air + line - 2.3],
      [x + half, air + line + 2.3],
      [x - half, air + line + 2.3],
    ]
    return [filled(patch, 'paper'), written({ x, line, size, ...one })]
  })
}

type Sheet = { of: DiagramOf; scale: number; numberOf: (mark: string, length: number) => number }

const roomOf = ({ from, to }: Room, { scale }: Sheet): Room => ({ from: from * scale, to: to * scale })

/**
 * How far the shared cut of two braces reaches along the board, and the saw cut itself measured along it, mm. Both lengths overlap in the piece
 * by the reach less the cut: 3063 of parts in 3006.4 with a kerf of 4 at 120 wide overlap by 56.6, the reach of 61.1 less 4.5.
 */
export function slantOf(
  { lengths: [first, second] }: PairCut,
  { long, kerf, width }: { long: number; kerf: number; width?: number },
): { reach: number; cut: number } {
  const overlap = Math.max(0, first + second - long)
  let cut = kerf
  for (let turn = 0; width !== undefined && turn < 20; turn += 1)
    cut = kerf * Math.sqrt(1 + ((overlap + cut) / width) ** 2)
  return { reach: overlap + cut, cut }
}

function drawPair(place: Room, pair: PairCut, sheet: Sheet): Primitive[] {
  const { of, scale, numberOf } = sheet
  const { kerf } = of.cutting
  const width = of.sectionWidth
  const long = place.to - place.from
  const { reach, cut } = slantOf(pair, { long, kerf, ...(width !== undefined && { width }) })
  const [top, foot] = [air, air + barHeight]
  const at = (mm: number) => (place.from + mm) * scale
  const parting = pair.lengths[0]
  const slant: Point[] = [
    [at(parting - reach), top],
    [at(parting - reach + cut), top],
    [at(parting + cut), foot],
    [at(parting), foot],
  ]
  const ends: [Point, Point][] = [
    [
      [at(0), top],
      [at(reach), foot],
    ],
    [
      [at(long - reach), top],
      [at(long), foot],
    ],
  ]
  const rooms: Room[] = [
    { from: at(reach), to: at(parting - reach) },
    { from: at(parting + cut), to: at(long - reach) },
  ]
  const tint = (mark: string): Fill => tintOf(mark, of)
  const [first, second] = pair.marks
  return [
    filled([[at(0), top], slant[0] as Point, slant[3] as Point, [at(0), foot]], tint(first), 'outline'),
    filled(
      [slant[1] as Point, [at(long), top], [at(long), foot], slant[2] as Point],
      tint(second),
      'outline',
    ),
    filled(slant, 'ink'),
    { kind: 'strokes', lines: ends, pen: 'hidden' },
    ...rooms.flatMap((room, brace) =>
      partWords(room, { mark: pair.marks[brace] ?? '', length: pair.lengths[brace] ?? 0, of }, numberOf),
    ),
  ]
}

const tintOf = (mark: string, { numbers }: DiagramOf): Fill =>
  tints[Math.max(0, jobOfMark(mark, numbers)) % tints.length] ?? 'board'

function drawPiece(piece: BarPiece, sheet: Sheet): Primitive[] {
  const { of, numberOf } = sheet
  const room = roomOf(piece, sheet)
  const shape = box(room.from, room.to)
  const figures = of.write(Math.round((piece.to - piece.from) * 10) / 10)
  switch (piece.kind) {
    case 'kerf':
      return [filled(shape, 'ink')]
    case 'trim':
      return [filled(shape, 'paper', 'narrow'), hatched(shape, [45, 135], 0.9)]
    case 'kept':
      return [
        filled(shape, 'paper', 'outline'),
        hatched(shape, [45], 2.6),
        ...onPatch(room, [[{ text: 'to the rack' }, { text: figures, bold: true }], [{ text: figures }]]),
      ]
    case 'waste':
      return [
        filled(shape, 'paper', 'narrow'),
        hatched(shape, [45, 135], 1.3),
        ...onPatch(room, [[{ text: 'waste' }, { text: figures }], [{ text: figures }]]),
      ]
    case 'part':
      if (piece.pair) return drawPair(piece, piece.pair, sheet)
      return [
        filled(shape, tintOf(piece.mark, of), 'outline'),
        ...partWords(room, { mark: piece.mark, length: piece.to - piece.from, of }, numberOf),
      ]
  }
}

/**
 * The cutting of a section's lengths, each a bar with its parts named, all to one scale in width mm of paper. A part with no room for its name
 * carries a number, told in the legend.
 */
export function cuttingDiagram(of: DiagramOf, width: number): CuttingDiagram {
  const longest = Math.max(1, ...of.bars.map(({ length }) => length))
  const scale = Math.max(width - 2 * air, 1) / longest
  const legend: LegendLine[] = []
  const numberOf = (mark: string, length: number): number => {
    const known = legend.find((one) => one.mark === mark && one.length === length)
    if (known) return known.number
    legend.push({ number: legend.length + 1, mark, length })
    return legend.length
  }
  const sheet: Sheet = { of, scale, numberOf }
  const bars = of.bars.map((bar): LaidOut => {
    const primitives = barPieces(bar, of.cutting, of.pairs).flatMap((piece) => drawPiece(piece, sheet))
    return { width: bar.length * scale, height: barHeight + 2 * air, scale, primitives }
  })
  return { bars, legend, scale }
}

/** A bar in words, for whoever doesn't see it: '3000 long: 2026-014 ledge 910.5, 2026-014 ledge 910.5; 1146 back to the rack'. */
export function barWords(bar: CutBar, of: Pick<DiagramOf, 'cutting' | 'pairs' | 'write'>): string {
  const parts: string[] = []
  let left = ''
  for (const piece of barPieces(bar, of.cutting, of.pairs)) {
    const long = Math.round((piece.to - piece.from) * 10) / 10
    if (piece.kind === 'part' && piece.pair) {
      const [first, second] = piece.pair.lengths
      parts.push(
        `${piece.pair.marks[0]} ${of.write(first)} and ${piece.pair.marks[1]} ${of.write(second)} parted on the slant`,
      )
    } else if (piece.kind === 'part') parts.push(`${piece.mark} ${of.write(long)}`)
    else if (piece.kind === 'kept') left = `; ${of.write(long)} back to the rack`
    else if (piece.kind === 'waste') left = `; ${of.write(long)} waste`
  }
  return `${of.write(bar.length)} long: ${parts.join(', ')}${left}`
}
