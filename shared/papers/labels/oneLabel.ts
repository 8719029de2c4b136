import type { Drawing } from '../../drawing/drawing.ts'
import { fillingScale } from '../../drawing/fitScale.ts'
import type { Measure, PageMark, PageText, Weight } from '../page.ts'
import { fitWords, lineHeight, linesAt, setLines } from '../words.ts'
import type { LabelledPart } from './labelledParts.ts'
import { modulesOf, quietModules, scanSquare } from './scanSquare.ts'

/** All that stands on one label. scanned: the words in its square. */
export type LabelInput = { number: string; name: string; part: LabelledPart; scanned: string; place: Drawing }

/** A label's place on its page, mm. */
export type LabelPlace = { x: number; y: number; width: number; height: number }

/** Ink keeps so far inside a label, mm, since labels shift in the printer. */
export const inkInside = 3

/** Side of the square on a label with room to spare, and on a small one, mm. */
const squareSide = { roomy: 18, small: 14 }

/** Height within the ink, mm, from which a label has room to spare. */
const roomyFrom = 27

/** Height of capitals and figures over the baseline, for a type size in points, mm. */
const rise = (size: number): number => size * 0.25

const textAt = (
  text: string,
  at: { x: number; y: number },
  look: { size: number; weight: Weight },
): PageText => ({ kind: 'text', ...at, text, ...look, ink: 'black', anchor: 'start' })

/** A name in what the number leaves free: whole where it fits, else its last word, else cut short. */
function shortName(name: string, width: number, measure: Measure): string {
  const last = name.trim().split(/\s+/).at(-1) ?? ''
  const found = [name, last].find((words) => measure(words, 11, 'regular') <= width)
  return found ?? fitWords(name, { width, most: 11, least: 11, weight: 'regular' }, measure).text
}

/** Size of the job's number, points: smaller on a small label. */
const numberSize = (roomy: boolean): number => (roomy ? 13 : 12)

/** The job's number and name on the first line. */
function firstLine(
  { number, name }: LabelInput,
  { x, y, width, size }: LabelPlace & { size: number },
  measure: Measure,
): PageText[] {
  const taken = number === '' ? 0 : measure(number, size, 'semibold') + 2.2
  const words = shortName(name, width - taken, measure)
  return [
    textAt(number, { x, y: y + rise(size) }, { size, weight: 'semibold' }),
    textAt(words, { x: x + taken, y: y + rise(size) }, { size: 11, weight: 'regular' }),
  ].filter(({ text }) => text !== '')
}

/** A piece's mark on one line where it fits, else its leaf on a line of its own. */
function markLines(mark: string, { width, most }: { width: number; most: number }, measure: Measure) {
  const fitted = fitWords(mark, { width, most, least: 11, weight: 'semibold' }, measure)
  if (fitted.text === mark)
    return { size: fitted.size, lines: [[{ text: mark, weight: 'semibold' as const, x: 0 }]] }
  const [, leaf = '', rest = mark] = /^(\w+ (?:leaf|half)) (.*)$/.exec(mark) ?? []
  const lines = [leaf, rest]
    .filter((words) => words !== '')
    .flatMap((text) => setLines([{ text, weight: 'semibold' }], { width, size: 11, measure }))
  return { size: 11, lines }
}

/** Mark, length and section one under another, and the place in the gate beside the last two. */
function partColumn(
  { part, place }: LabelInput,
  { x, y, width, height, roomy }: LabelPlace & { roomy: boolean },
  measure: Measure,
): PageMark[] {
  const { size, lines } = markLines(part.mark, { width, most: roomy ? 14 : 12 }, measure)
  const under = y + lines.length * lineHeight(size) + (roomy ? 2 : 1)
  const bottom = y + height
  const lengthSize = fitWords(
    part.length,
    { width, most: roomy ? 20 : 14.5, least: 14, weight: 'semibold' },
    measure,
  ).size
  const wide = Math.max(measure(part.length, lengthSize, 'semibold'), measure(part.section, 11, 'regular'))
  const box = { x: x + wide + 1.5, y: under, width: width - wide - 1.5, height: bottom - under }
  return [
    ...linesAt(lines, { x, y: y + rise(size), size, ink: 'black' }),
    textAt(part.length, { x, y: bottom - lineHeight(11) - 0.6 }, { size: lengthSize, weight: 'semibold' }),
    textAt(part.section, { x, y: bottom - 0.3 }, { size: 11, weight: 'regular' }),
    ...placeMarks(place, box),
  ]
}

/** The small picture as large as its box lets it be; left out of a box too small to show anything. */
function placeMarks(drawing: Drawing, box: LabelPlace): PageMark[] {
  if (box.width < 7 || box.height < 7) return []
  return [{ kind: 'drawing', ...box, scale: fillingScale(drawing, box), drawing, unscaled: true }]
}

/** One label: number and name over all; the piece, its length, section and place at the left; the square to scan at the lower right. */
export function oneLabel(input: LabelInput, place: LabelPlace, measure: Measure): PageMark[] {
  const ink = {
    x: place.x + inkInside,
    y: place.y + inkInside,
    width: place.width - 2 * inkInside,
    height: place.height - 2 * inkInside,
  }
  const roomy = ink.height >= roomyFrom
  const side = squareSide[roomy ? 'roomy' : 'small']
  const quiet = (side / modulesOf(input.scanned)) * quietModules
  const corner = { x: ink.x + ink.width - side, y: ink.y + ink.height - side, side }
  const size = numberSize(roomy)
  const top = ink.y + lineHeight(size) + (roomy ? 0.6 : 0.3)
  const column = {
    roomy,
    x: ink.x,
    y: top,
    width: ink.width - side - quiet,
    height: ink.y + ink.height - top,
  }
  return [
    ...firstLine(input, { ...ink, size }, measure),
    ...partColumn(input, column, measure),
    ...scanSquare(input.scanned, corner),
  ]
}
