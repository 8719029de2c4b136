import type { PaperHeader } from '../job/issuedPaper.ts'
import type { Business } from '../pricing/shapes.ts'
import { stacked, type Block } from './flow.ts'
import type { Measure, PageMark, PaperFormat } from './page.ts'
import { paperDate } from './paperDate.ts'
import { pictureSize } from './pictureSize.ts'
import type { QuotationInput } from './quotationInput.ts'
import { strongLine, letterFrame, prose, type, typedLines, words } from './quotationLook.ts'
import { fitWords } from './words.ts'

/** A quotation's number: the job's, and which of its quotations it is. */
export const quotationNumber = ({ number, revision }: PaperHeader): string =>
  number === '' ? String(revision) : `${number}/${revision}`

/** Width of the column at the right for address and dates, and the room of a logo, mm. */
const [sideWidth, logoRoom] = [58, { width: 50, height: 22 }]

/** Most lines of an address; what is typed beyond goes on in the last. */
const mostLines = 7

function addressLines(text: string): string[] {
  const lines = typedLines(text)
  return lines.length <= mostLines
    ? lines
    : [...lines.slice(0, mostLines - 1), lines.slice(mostLines - 1).join(', ')]
}

/** The logo at its own proportions in its room; nothing where there is none that can be read. */
function logo(base64: string | null): Block | undefined {
  const size = base64 === null ? undefined : pictureSize(base64)
  if (base64 === null || !size) return undefined
  const scale = Math.min(logoRoom.width / size.width, logoRoom.height / size.height)
  const [width, height] = [size.width * scale, size.height * scale]
  return {
    height,
    marks: (x, y) => [{ kind: 'picture', x, y, width, height, format: size.format, base64 }],
  }
}

/** The workshop's own head: logo and name at the left, address and how to reach it at the right, a line under all. */
export function letterhead(
  name: string,
  business: Business,
  { width, measure }: { width: number; measure: Measure },
): Block {
  const picture = logo(business.logo)
  const left = stacked([
    ...(picture ? [picture] : []),
    ...prose(name, { width: width - sideWidth - 8, measure, size: type.name, weight: 'semibold', above: 3 }),
  ])
  const reached = [...addressLines(business.address), business.phone, business.email, business.website]
  const right = stacked(
    reached
      .map((line) => line.trim())
      .filter((line) => line !== '')
      .flatMap((line) =>
        prose(line, { width: sideWidth, measure, size: type.small, ink: 'grey', above: 0.3 }),
      ),
  )
  const height = Math.max(left.height, right.height) + 4
  return {
    height,
    marks: (x, y) => [
      ...left.marks(x, y),
      ...right.marks(x + width - sideWidth, y),
      strongLine(x, y + height, width),
    ],
  }
}

/** To whom it is written. */
function customerBlock({ customer }: PaperHeader, width: number, measure: Measure): Block {
  const lines = [...addressLines(customer.address), customer.town.trim()].filter((line) => line !== '')
  const name = customer.name.trim()
  return stacked([
    ...(name === '' ? [] : prose(name, { width, measure, weight: 'semibold', above: 0 })),
    ...lines.flatMap((line) => prose(line, { width, measure, above: 0.3 })),
  ])
}

/** Number, date and how long it holds. */
function factsBlock({ header, money, draft }: QuotationInput, measure: Measure): Block {
  const issued =
    draft || header.issuedAt === null ? 'not issued yet' : paperDate(header.issuedOn ?? header.issuedAt)
  const facts: [string, string][] = [
    ['Number', quotationNumber(header)],
    ['Date', issued],
    ['Valid until', paperDate(money.validUntil)],
  ]
  const indent = 22
  return stacked([
    ...prose('Quotation', { width: sideWidth, measure, size: type.title, weight: 'semibold', above: 0 }),
    ...facts.flatMap(([label, value], i) =>
      prose(value, { width: sideWidth, measure, indent, mark: label, above: i === 0 ? 1.6 : 0.6 }),
    ),
  ])
}

/** Everything over the gate on the first page: letterhead, customer and dates side by side, and what it is for. */
export function firstHead(input: QuotationInput, measure: Measure): Block[] {
  const { width } = letterFrame(input.format)
  const customer = customerBlock(input.header, width - sideWidth - 8, measure)
  const facts = factsBlock(input, measure)
  const title = input.header.title.trim()
  return [
    letterhead(input.header.workshop, input.business, { width, measure }),
    {
      height: Math.max(customer.height, facts.height),
      above: 7,
      marks: (x, y) => [...customer.marks(x, y), ...facts.marks(x + width - sideWidth, y)],
    },
    ...(title === '' ? [] : prose(title, { width, measure, size: type.title, weight: 'semibold', above: 7 })),
  ]
}

/** Height that the head of a later page takes, mm. */
export const laterHeadHeight = 11

/** Which page of how many. */
type PageCount = { page: number; pages: number }

/** The head of a later page: whose quotation it goes on with. */
function laterHead({ header, format }: QuotationInput, measure: Measure): PageMark[] {
  const { left, right, width, top } = letterFrame(format)
  const y = top + 3
  const mine = `Quotation ${quotationNumber(header)}`
  const room = width - measure(mine, type.small, 'regular') - 6
  const name = fitWords(
    header.workshop,
    { width: room, most: type.body, least: type.small, weight: 'semibold' },
    measure,
  )
  return [
    ...(name.text === '' ? [] : [words(name.text, { x: left, y }, { size: name.size, weight: 'semibold' })]),
    words(mine, { x: right, y }, { size: type.small, ink: 'grey', anchor: 'end' }),
    strongLine(left, y + 2.4, width),
  ]
}

/** The line at the foot of every page: number, customer, page. */
function footLine(
  { header, draft, format }: QuotationInput,
  { page, pages }: PageCount,
  measure: Measure,
): PageMark[] {
  const { left, right, width, foot } = letterFrame(format)
  const count = `page ${page} of ${pages}`
  const name = header.customer.name.trim()
  const text = [
    draft ? 'draft – not issued' : '',
    `Quotation ${quotationNumber(header)}${name === '' ? '' : ` for ${name}`}`,
  ]
  const size = type.small
  const said = fitWords(
    text.filter((part) => part !== '').join(' · '),
    { width: width - measure(count, size, 'regular') - 6, most: size, least: size, weight: 'regular' },
    measure,
  )
  return [
    words(said.text, { x: left, y: foot }, { size, ink: 'grey' }),
    words(count, { x: right, y: foot }, { size, ink: 'grey', anchor: 'end' }),
  ]
}

/** What stands on a page whatever is on it: the foot on all, the head on all but the first. */
export const pageFurniture = (input: QuotationInput, count: PageCount, measure: Measure): PageMark[] => [
  ...(count.page === 1 ? [] : laterHead(input, measure)),
  ...footLine(input, count, measure),
]

/** The sheet's format is all a later page's frame hangs on. */
export const laterFrame = (format: PaperFormat) => {
  const { left, top, bottom } = letterFrame(format)
  return { x: left, top: top + laterHeadHeight, bottom }
}
