import type { Block } from './flow.ts'
import {
  margins,
  paperSizes,
  type Ink,
  type PageMark,
  type PageText,
  type PaperFormat,
  type Weight,
} from './page.ts'
import { lineHeight, linesAt, setLines, type SetLine, type Setting } from './words.ts'

/** Type sizes of a quotation, points. */
export const type = { small: 11, body: 11, heading: 13, name: 18, title: 16 } as const

/** The part of a sheet that a quotation uses, mm: wide margins, as a letter has; foot is the baseline of the line at the foot. */
export function letterFrame(format: PaperFormat) {
  const sheet = paperSizes[format]
  const [left, right] = [20, sheet.width - 20]
  const foot = sheet.height - margins.bottom
  return { left, right, width: right - left, top: 15, bottom: foot - 7, foot }
}

/** One line of words on the page. */
export const words = (
  text: string,
  at: { x: number; y: number },
  look: { size?: number; weight?: Weight; ink?: Ink; anchor?: PageText['anchor'] } = {},
): PageText => ({
  kind: 'text',
  ...at,
  text,
  size: look.size ?? type.body,
  weight: look.weight ?? 'regular',
  ink: look.ink ?? 'black',
  anchor: look.anchor ?? 'start',
})

/** A hairline across, mm. */
export const hairline = (x: number, y: number, width: number): PageMark => ({
  ...across(x, y, width),
  width: 0.15,
  ink: 'grey',
})

/** A line across that parts what is over it from what is under it, mm. */
export const strongLine = (x: number, y: number, width: number): PageMark => ({
  ...across(x, y, width),
  width: 0.35,
  ink: 'black',
})

const across = (x: number, y: number, width: number) => ({
  kind: 'line' as const,
  x1: x,
  y1: y,
  x2: x + width,
  y2: y,
})

/** A section's heading, kept with what follows it. */
export const section = (text: string): Block => ({
  height: 6.4,
  above: 6,
  withNext: true,
  marks: (x, y) => [words(text, { x, y: y + 4 }, { size: type.heading, weight: 'semibold' })],
})

/** How a stretch of running words is set. above: space over its first line; indent: all lines' start, mm. */
export type ProseLook = Omit<Setting, 'size'> & {
  size?: number
  weight?: Weight
  ink?: Ink
  above?: number
  indent?: number
  mark?: string
}

/** Stands for a space that no line may break at; no face has it, so it is never printed. */
const held = '\uE000'

/** A number stays with its unit, feet with inches, inches with their fraction, a day with its month: 900 mm, 2′ 11 ⅜″, 3 June. */
const bound =
  /(?<=[\d′]) (?=mm\b|\d|[⅛¼⅜½⅝¾⅞⁰¹²³⁴⁵⁶⁷⁸⁹]|January|February|March|April|May|June|July|August|September|October|November|December)|(?<=\d) (?=× \d+ mm)|(?<=\d ×) (?=\d+ mm)/g

/** Lines of words, sizes kept whole. */
function unbroken(text: string, weight: Weight, { width, size, measure }: Setting): SetLine[] {
  const spaced = (part: string) => part.replaceAll(held, ' ')
  const lines = setLines([{ text: (measure.said?.(text) ?? text).replace(bound, held), weight }], {
    width,
    size,
    measure: (part, points, of) => measure(spaced(part), points, of),
  })
  return lines.map((line) => line.map((piece) => ({ ...piece, text: spaced(piece.text) })))
}

/** Running words, a block a line so that long ones go on over the page, never leaving one line alone. mark stands before the first line. */
export function prose(text: string, look: ProseLook): Block[] {
  const { size = type.body, weight = 'regular', ink = 'black', above = 1.6, indent = 0, mark } = look
  const lines = unbroken(text, weight, { width: look.width - indent, size, measure: look.measure })
  const last = lines.length - 1
  return lines.map((line, i): Block => ({
    height: lineHeight(size),
    above: i === 0 ? above : 0,
    withNext: (i === 0 && last > 0) || (i === last - 1 && last > 0),
    marks: (x, y) => [
      ...(i === 0 && mark !== undefined ? [words(mark, { x, y: y + size * 0.3 }, { size, ink })] : []),
      ...linesAt([line], { x: x + indent, y: y + size * 0.3, size, ink }),
    ],
  }))
}

/** The lines of a text as someone typed it, empty ones left out. */
export const typedLines = (text: string): string[] =>
  text
    .split(/\r\n|\r|\n|\u2028|\u2029/)
    .map((line) => line.trim())
    .filter((line) => line !== '')

/** Typed lines as a list, each with its dash. */
export const dashed = (text: string, look: ProseLook): Block[] =>
  typedLines(text).flatMap((line) =>
    prose(line.replace(/^[-–•*]\s+/, ''), { ...look, above: 1, indent: 4, mark: '–' }),
  )

/** A block kept on the page of the one after it. */
export const kept = (block: Block): Block => ({ ...block, withNext: true })
