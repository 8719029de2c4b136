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

/** paper: what the paper is called, 'job card'. */
type Head = {
  header: PaperHeader
  paper: string
  draft: boolean
  format: PaperFormat
  page: number
  pages: number
}

/** Words of one size at one end of the header's line. */
type HeadWords = {
  text: string
  size: number
  weight: Weight
  anchor: PageText['anchor']
  x: number
  y: number
}

const textOf = (words: HeadWords): PageText => ({ kind: 'text', ...words, ink: 'black' })

/** What one line has to say: the words at its right, and those at its left in the room that is left over. */
type HeadLine = { y: number; left: number; right: Pick<HeadWords, 'text' | 'size' | 'weight'> }

/** Left words of a line, set smaller and then cut where the right ones leave them too little room. */
function leftWords(
  head: Head,
  { text, most, weight, line }: { text: string; most: number; weight: Weight; line: HeadLine },
  measure: Measure,
): PageText[] {
  const right = paperSizes[head.format].width - margins.right
  const { left, y } = line
  const width = right - measure(line.right.text, line.right.size, line.right.weight) - 6 - left
  const fitted = fitWords(text, { width, most, least: 11, weight }, measure)
  return [
    textOf({ ...fitted, x: left, y, weight, anchor: 'start' }),
    textOf({ ...line.right, x: right, y, anchor: 'end' }),
  ]
}

/** First line: the number, customer and town, and the date promised. */
function whoAndWhen(head: Head, measure: Measure): PageText[] {
  const { number, customer, due } = head.header
  const y = margins.top + 5.6
  const left = margins.left + (number === '' ? 0 : measure(number, 18, 'semibold') + 4)
  const text = [customer.name, customer.town].filter((words) => words !== '').join(', ')
  const promised = due === null ? 'no date promised' : `promised ${paperDate(due)}`
  const line: HeadLine = { y, left, right: { text: promised, size: 13, weight: 'semibold' } }
  return [
    textOf({ text: number, size: 18, weight: 'semibold', anchor: 'start', x: margins.left, y }),
    ...leftWords(head, { text, most: 16, weight: 'semibold', line }, measure),
  ]
}

/** Second line: the job's title, the workshop, the revision and the page. */
function whatAndPage(head: Head, measure: Measure): PageText[] {
  const { title, workshop } = head.header
  const text = [title, workshop === '' ? head.paper : `${head.paper} of ${workshop}`]
    .filter((words) => words !== '')
    .join(' · ')
  const issue = `${issueWords(head)} · page ${head.page} of ${head.pages}`
  const line: HeadLine = {
    y: margins.top + 12.2,
    left: margins.left,
    right: { text: issue, size: 11, weight: 'regular' },
  }
  return leftWords(head, { text, most: 12, weight: 'regular', line }, measure)
}

/**
 * The head of every page, so that a stray page still says whose gate it is: job number, customer and town, the date
 * promised, the job's title, the workshop, the revision, and page n of m. Long names are set smaller, then cut.
 */
export function cardHeader(head: Head, measure: Measure): PageMark[] {
  const right = paperSizes[head.format].width - margins.right
  const y = margins.top + 15
  const words = [...whoAndWhen(head, measure), ...whatAndPage(head, measure)]
  return [
    ...words.filter(({ text }) => text !== ''),
    { kind: 'line', x1: margins.left, y1: y, x2: right, y2: y, width: 0.5, ink: 'black' },
  ]
}

function issueWords({ header, draft, paper }: Head): string {
  if (draft) return 'draft – not issued'
  if (header.issuedAt === null && paper !== 'job card') return 'as the job stands'
  return header.issuedAt === null
    ? `revision ${header.revision}`
    : `revision ${header.revision}, issued ${paperDate(header.issuedOn ?? header.issuedAt)}`
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
