import { capHeight } from '../drawing/pens.ts'
import type { Primitive } from '../drawing/primitives.ts'
import { textWidth } from '../drawing/textWidth.ts'
import type { Point } from '../geometry/point.ts'
import { air, barHeight, filled, type Room, type Sheet } from './barSheet.ts'

/** Sizes of the words in a bar, and the least room beside them, mm of paper. */
const wordSize = 3.5
const figureSize = 4
const besides = 0.8

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
export function partLabel(
  room: Room,
  { mark, length }: { mark: string; length: number },
  { of, numberOf }: Sheet,
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

/** Words on a hatched stretch stand on a patch of paper. */
export function onPatch(room: Room, texts: { text: string; bold?: boolean }[][]): Primitive[] {
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
