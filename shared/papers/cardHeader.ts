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
export const headerHeight = 18

type Head = { header: PaperHeader; draft: boolean; format: PaperFormat; page: number; pages: number }

/**
 * The head of every page, so that a stray page still says whose gate it is: job number, customer and town, the date
 * promised, the job's title, the workshop, the revision, and page n of m. Long names are set smaller, then cut.
 */
export function cardHeader(head: Head, measure: Measure): PageMark[] {
  const { width } = paperSizes[head.format]
  const right = width - margins.right
  const { header } = head
  const top = margins.top
  const promised = header.due === null ? 'no date promised' : `promised ${paperDate(header.due)}`
  const issue = `${issueWords(head)} · page ${head.page} of ${head.pages}`
  const room = (words: string, size: number, weight: Weight) =>
    right - measure(words, size, weight) - 6 - margins.left
  const { name, town } = header.customer
  const who = [name, town].filter((words) => words !== '').join(', ')
  const numberWidth = header.number === '' ? 0 : measure(header.number, 18, 'semibold') + 4
  const customer = fitWords(
    who,
    { width: room(promised, 13, 'semibold') - numberWidth, most: 16, least: 11, weight: 'semibold' },
    measure,
  )
  const about = [header.title, header.workshop === '' ? 'job card' : `job card of ${header.workshop}`]
  const title = fitWords(
    about.filter((words) => words !== '').join(' · '),
    { width: room(issue, 11, 'regular'), most: 12, least: 11, weight: 'regular' },
    measure,
  )
  const [first, second] = [top + 5.6, top + 12.2]
  const text = (
    x: number,
    y: number,
    words: { text: string; size: number },
    weight: Weight,
    anchor: PageText['anchor'],
  ): PageText => ({
    kind: 'text',
    x,
    y,
    ...words,
    weight,
    ink: 'black',
    anchor,
  })
  const lines: PageMark[] = [
    text(margins.left, first, { text: header.number, size: 18 }, 'semibold', 'start'),
    text(margins.left + numberWidth, first, customer, 'semibold', 'start'),
    text(right, first, { text: promised, size: 13 }, 'semibold', 'end'),
    text(margins.left, second, title, 'regular', 'start'),
    text(right, second, { text: issue, size: 11 }, 'regular', 'end'),
    { kind: 'line', x1: margins.left, y1: top + 15, x2: right, y2: top + 15, width: 0.5, ink: 'black' },
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
