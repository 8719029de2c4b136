import type { PaperHeader } from '../job/issuedPaper.ts'
import {
  margins,
  paperSizes,
  type Measure,
  type PageMark,
  type PageText,
  type PaperFormat,
  type Weight,
} from './page.ts'
import { paperDate } from './paperDate.ts'
import { fitWords } from './words.ts'

/** Height the header takes from the top margin down, mm. */
export const headerHeight = 25

type Head = { header: PaperHeader; draft: boolean; format: PaperFormat; page: number; pages: number }

/**
 * The head of every page, so that a stray page still says whose gate it is: workshop, job number, customer and town, the job's
 * title, the date promised, the revision, and page n of m. Long names are set smaller, then cut.
 */
export function cardHeader(head: Head, measure: Measure): PageMark[] {
  const { width } = paperSizes[head.format]
  const right = width - margins.right
  const { header } = head
  const top = margins.top
  const rightWords = [
    { text: `page ${head.page} of ${head.pages}`, weight: 'semibold' as Weight, size: 11 },
    {
      text: header.due === null ? 'no date promised' : `promised ${paperDate(header.due)}`,
      weight: 'semibold' as Weight,
      size: 13,
    },
    { text: issueWords(head), weight: 'regular' as Weight, size: 11 },
  ]
  const rightWidth = Math.max(...rightWords.map((words) => measure(words.text, words.size, words.weight)))
  const leftWidth = right - rightWidth - 6 - margins.left
  const { name, town } = header.customer
  const who = [name, town].filter((words) => words !== '').join(', ')
  const numberWidth = header.number === '' ? 0 : measure(header.number, 18, 'semibold') + 4
  const customer = fitWords(
    who,
    { width: leftWidth - numberWidth, most: 16, least: 11, weight: 'semibold' },
    measure,
  )
  const workshop = fitWords(
    header.workshop === '' ? 'Job card' : `Job card · ${header.workshop}`,
    { width: leftWidth, most: 11, least: 11, weight: 'regular' },
    measure,
  )
  const title = fitWords(header.title, { width: leftWidth, most: 13, least: 11, weight: 'regular' }, measure)
  const left = (
    x: number,
    y: number,
    words: { text: string; size: number },
    weight: Weight,
    ink: PageText['ink'],
  ): PageText => ({
    kind: 'text',
    x,
    y,
    ...words,
    weight,
    ink,
    anchor: 'start',
  })
  const baselines = [top + 4, top + 12, top + 18.5]
  const lines: PageMark[] = [
    left(margins.left, top + 4, workshop, 'regular', 'grey'),
    left(margins.left, top + 12, { text: header.number, size: 18 }, 'semibold', 'black'),
    left(margins.left + numberWidth, top + 12, customer, 'semibold', 'black'),
    left(margins.left, top + 18.5, title, 'regular', 'black'),
    ...rightWords.map((words, i): PageText => ({
      kind: 'text',
      x: right,
      y: baselines[i] ?? top,
      ...words,
      ink: 'black',
      anchor: 'end',
    })),
    { kind: 'line', x1: margins.left, y1: top + 21.5, x2: right, y2: top + 21.5, width: 0.5, ink: 'black' },
  ]
  return lines.filter((mark) => mark.kind !== 'text' || mark.text !== '')
}

function issueWords({ header, draft }: Head): string {
  if (draft) return 'draft – not issued'
  return header.issuedAt === null
    ? `revision ${header.revision}`
    : `revision ${header.revision}, issued ${paperDate(header.issuedAt)}`
}

/** Large pale words across a draft's page, under everything else. */
export function draftMark(format: PaperFormat): PageMark {
  const { width, height } = paperSizes[format]
  return {
    kind: 'text',
    x: width / 2 + 14,
    y: height / 2 + 30,
    text: 'draft – not issued',
    size: 62,
    weight: 'semibold',
    ink: 'light',
    anchor: 'middle',
    angle: 50,
  }
}
