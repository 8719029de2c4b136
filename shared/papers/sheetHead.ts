import { margins, paperSizes, type Measure, type PageMark, type PageText, type PaperFormat } from './page.ts'
import { fitWords } from './words.ts'

/**
 * What stands at the head of a sheet that isn't of one job: number large, what it is beside it, when at the right; beneath, what more there is
 * to say, and the page.
 */
export type SheetHead = {
  number: string
  name: string
  when: string
  more: string
  page: number
  pages: number
  format: PaperFormat
}

/** Words at the left in the room that those at the right leave them. */
type HeadLine = {
  y: number
  left: { x: number; text: string; most: number; weight: PageText['weight'] }
  right: { text: string; size: number; weight: PageText['weight'] }
}

function headLine({ y, left, right }: HeadLine, end: number, measure: Measure): PageText[] {
  const width = end - measure(right.text, right.size, right.weight) - 6 - left.x
  const fitted = fitWords(left.text, { width, most: left.most, least: 11, weight: left.weight }, measure)
  const ink = 'black' as const
  const marks: PageText[] = [
    { kind: 'text', x: left.x, y, ...fitted, weight: left.weight, ink, anchor: 'start' },
    { kind: 'text', x: end, y, ...right, ink, anchor: 'end' },
  ]
  return marks.filter(({ text }) => text !== '')
}

/** The head of every page of a sheet, so that a stray page still says what it belongs to; it takes as much room as a card's. */
export function sheetHead(head: SheetHead, measure: Measure): PageMark[] {
  const end = paperSizes[head.format].width - margins.right
  const [first, second, rule] = [5.6, 12.2, 15].map((down) => margins.top + down) as [number, number, number]
  const after = head.number === '' ? 0 : measure(head.number, 18, 'semibold') + 4
  const number: PageText = {
    kind: 'text',
    x: margins.left,
    y: first,
    text: head.number,
    size: 18,
    weight: 'semibold',
    ink: 'black',
    anchor: 'start',
  }
  return [
    ...(head.number === '' ? [] : [number]),
    ...headLine(
      {
        y: first,
        left: { x: margins.left + after, text: head.name, most: 16, weight: 'semibold' },
        right: { text: head.when, size: 13, weight: 'semibold' },
      },
      end,
      measure,
    ),
    ...headLine(
      {
        y: second,
        left: { x: margins.left, text: head.more, most: 12, weight: 'regular' },
        right: { text: `page ${head.page} of ${head.pages}`, size: 11, weight: 'regular' },
      },
      end,
      measure,
    ),
    { kind: 'line', x1: margins.left, y1: rule, x2: end, y2: rule, width: 0.5, ink: 'black' },
  ]
}
