import type { PaperHeader } from '../../job/issuedPaper.ts'
import {
  paperSizes,
  type Measure,
  type Page,
  type PageMark,
  type PageText,
  type PaperFormat,
} from '../page.ts'
import { paperDate } from '../paperDate.ts'
import { fitWords, lineHeight, linesAt, setLines } from '../words.ts'
import { isTrue, stretch, stretched, type Printer, type Stretch } from './printer.ts'

/** How a sheet lies before the reader: its short way across, or turned. */
export type Lie = 'upright' | 'across'

export type Box = { x: number; y: number; width: number; height: number }

/** What stands on every full-size sheet beside its template: whose it is, the day it was printed, the printer's error, the sheet's number. */
export type FrameInput = { header: PaperHeader; day: string; format: PaperFormat; printer: Printer }

/** One sheet of the frame, before its number is known. box: all that may be printed on, in true mm; stretch: what the printer's error asks for. */
export type SheetRoom = {
  lie: Lie
  width: number
  height: number
  box: Box
  stretch: Stretch
  measure: Measure
}

/** A sheet lying across runs through the printer sideways, so that its left or right edge is the foot there. */
const edges: Record<Lie, { left: number; right: number; top: number; bottom: number }> = {
  upright: { left: 12, right: 12, top: 11, bottom: 16.5 },
  across: { left: 16.5, right: 16.5, top: 12, bottom: 16.5 },
}

/** The room of one sheet. A printer that prints small gets less on a sheet, so that what is stretched still keeps its margins. */
export function sheetRoom(
  { format, printer }: Pick<FrameInput, 'format' | 'printer'>,
  lie: Lie,
  measure: Measure,
): SheetRoom {
  const paper = paperSizes[format]
  const [width, height] = lie === 'upright' ? [paper.width, paper.height] : [paper.height, paper.width]
  const [across, along] = [stretch(printer.across), stretch(printer.along)]
  const [x, y] = lie === 'upright' ? [across, along] : [along, across]
  const { left, right, top, bottom } = edges[lie]
  const centre = [(left + width - right) / 2, (top + height - bottom) / 2] as const
  const [wide, high] = [(width - left - right) / Math.max(1, x), (height - top - bottom) / Math.max(1, y)]
  return {
    lie,
    width,
    height,
    box: { x: centre[0] - wide / 2, y: centre[1] - high / 2, width: wide, height: high },
    stretch: { centre, x, y },
    measure: Object.assign((...words: Parameters<Measure>) => measure(...words) / x, { said: measure.said }),
  }
}

/** Height of the band under the template, and breadth of the column beside it, that hold the 100 mm lines. */
const band = { foot: 15, side: 9 }

/** Height of the head over its words on how to lay the template, mm. */
const headHeight = 21.5

const text = (words: string, at: { x: number; y: number }, look: Partial<PageText> = {}): PageText => ({
  kind: 'text',
  text: words,
  size: 11,
  weight: 'regular',
  ink: 'black',
  anchor: 'start',
  ...at,
  ...look,
})

const layLines = (lay: string[], { box, measure }: SheetRoom) =>
  lay.flatMap((sentence) =>
    setLines([{ text: sentence, weight: 'regular' }], { width: box.width, size: 11, measure }),
  )

/** What the template itself may take up, under the head with its words. */
export function templateBox(room: SheetRoom, lay: string[]): Box {
  const head = headHeight + layLines(lay, room).length * lineHeight(11) + 1.5
  const { x, y, width, height } = room.box
  return { x, y: y + head, width: width - band.side, height: height - head - band.foot }
}

const rule = (points: [number, number][], width: number): PageMark => ({
  kind: 'path',
  points,
  closed: false,
  width,
  ink: 'black',
})

const writeHere = 'this line is 100 mm; it measures ……………'

/** 100 mm across and 100 mm down, with a place to write what they measure. */
function checkLines({ box }: SheetRoom): PageMark[] {
  const [right, foot] = [box.x + box.width - 2.5, box.y + box.height - 2.5]
  const end = 2
  return [
    rule(
      [
        [box.x + 0.5, foot],
        [box.x + 100.5, foot],
      ],
      0.25,
    ),
    ...[0.5, 100.5].map((at) =>
      rule(
        [
          [box.x + at, foot - end],
          [box.x + at, foot + end],
        ],
        0.25,
      ),
    ),
    text(writeHere, { x: box.x + 2.5, y: foot - 2.6 }),
    rule(
      [
        [right, foot],
        [right, foot - 100],
      ],
      0.25,
    ),
    ...[0, 100].map((up) =>
      rule(
        [
          [right - end, foot - up],
          [right + end, foot - up],
        ],
        0.25,
      ),
    ),
    text(writeHere, { x: right - 2.6, y: foot - 3 }, { angle: 90 }),
  ]
}

/** What was done about the printer's error, in words. */
export function printerWords(printer: Printer): string {
  const { across, along } = printer
  return isTrue(printer)
    ? 'No correction for the printer.'
    : `Corrected for a printer that makes 100 mm ${across} across the sheet and ${along} along it.`
}

function footWords(printer: Printer, { box, measure }: SheetRoom): PageMark[] {
  const x = box.x + 106
  const width = box.width - 106 - band.side - 2
  const lines = setLines([{ text: printerWords(printer), weight: 'regular' }], { width, size: 11, measure })
  const first = box.y + box.height - 0.8 - lines.length * lineHeight(11)
  return [
    text('Print at actual size, no scaling', { x, y: first }, { weight: 'semibold' }),
    ...linesAt(lines, { x, y: first + lineHeight(11), size: 11, ink: 'black' }),
  ]
}

type HeadLine = { y: number; left: string; most: number; right: string; from: number }

function headLine({ y, left, most, right, from }: HeadLine, { box, measure }: SheetRoom): PageText[] {
  const end = box.x + box.width
  const width = end - from - (right === '' ? 0 : measure(right, most, 'semibold') + 5)
  const weight = most > 12 ? 'semibold' : 'regular'
  const fitted = fitWords(left, { width, most, least: 11, weight }, measure)
  return [
    text(fitted.text, { x: from, y }, { size: fitted.size, weight }),
    text(right, { x: end, y }, { size: most, weight, anchor: 'end' }),
  ]
}

/** Which sheet of all, and which tiles of its template stand on it ('' for a whole one). */
type SheetNumber = { sheet: number; sheets: number; tile: string }

function headMarks(
  { header, day }: FrameInput,
  { title, room }: Pick<SheetBody, 'title' | 'room'>,
  at: SheetNumber,
): PageMark[] {
  const { box, measure } = room
  const { number, customer, title: gate, workshop } = header
  const who = [customer.name, customer.town].filter((words) => words !== '').join(', ')
  const from = box.x + (number === '' ? 0 : measure(number, 16, 'semibold') + 4)
  const gateWords = [gate, workshop].filter((words) => words !== '').join(' · ')
  const dated = [paperDate(day), `sheet ${at.sheet} of ${at.sheets}`]
    .filter((words) => words !== '')
    .join(' · ')
  const line = box.y + 13
  return [
    text(number, { x: box.x, y: box.y + 5 }, { size: 16, weight: 'semibold' }),
    ...headLine({ y: box.y + 5, left: who, most: 14, right: at.tile, from }, room),
    ...headLine({ y: box.y + 11, left: gateWords, most: 11, right: dated, from: box.x }, room),
    rule(
      [
        [box.x, line],
        [box.x + box.width, line],
      ],
      0.5,
    ),
    text(title, { x: box.x, y: box.y + 18.6 }, { size: 14, weight: 'semibold' }),
  ]
}

/** What fills one sheet: marks in true mm on it. */
export type SheetBody = {
  room: SheetRoom
  title: string
  lay: string[]
  tile: string
  marks: PageMark[]
}

/** Sheets put in their frames, numbered through, and stretched for the printer. */
export function framed(input: FrameInput, bodies: readonly SheetBody[]): Page[] {
  return bodies.map(({ room, title, lay, tile, marks }, i) => {
    const at = { sheet: i + 1, sheets: bodies.length, tile }
    const lines = layLines(lay, room)
    const all = [
      ...headMarks(input, { title, room }, at),
      ...linesAt(lines, { x: room.box.x, y: room.box.y + headHeight + 2.6, size: 11, ink: 'black' }),
      ...marks,
      ...checkLines(room),
      ...footWords(input.printer, room),
    ].filter((mark) => mark.kind !== 'text' || mark.text !== '')
    return stretched({ width: room.width, height: room.height, marks: all }, room.stretch)
  })
}
