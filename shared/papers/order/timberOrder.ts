import { headerHeight } from '../cardHeader.ts'
import { flow } from '../flow.ts'
import { plainMeasure } from '../measure.ts'
import { margins, paperSizes, type Measure, type Page, type PageMark, type PaperDocument } from '../page.ts'
import { paperDate } from '../paperDate.ts'
import { sheetHead } from '../sheetHead.ts'
import { merchantBlocks, supplies, type Supply } from './merchantPart.ts'
import { sawBlocks } from './sawPart.ts'
import type { TimberOrderInput } from './timberOrderInput.ts'
import { stubBlocks } from './workshopStub.ts'

function frames({ format }: TimberOrderInput) {
  const sheet = paperSizes[format]
  const later = { x: margins.left, top: margins.top + headerHeight, bottom: sheet.height - margins.bottom }
  return { sheet, later, width: sheet.width - margins.left - margins.right }
}

/** Pages of one part under their heads; the first of a letter has none, since its letterhead says it. */
function pagesOf(
  input: TimberOrderInput,
  { marks, name, more, letter }: { marks: PageMark[][]; name: string; more: string; letter: boolean },
  measure: Measure,
): Page[] {
  const { order, format } = input
  const when = paperDate(order.placedOn)
  return marks.map((own, i) => {
    const head = { number: order.number, name, when, more, format, page: i + 1, pages: marks.length }
    return {
      ...paperSizes[format],
      marks: [...(letter && i === 0 ? [] : sheetHead(head, measure)), ...own],
    }
  })
}

function supplyPages(input: TimberOrderInput, supply: Supply, measure: Measure): Page[] {
  const { later, width } = frames(input)
  const room = { width, measure }
  const first = { ...later, top: margins.top + 1 }
  const marks = flow(
    [...merchantBlocks(input, supply, room), ...stubBlocks(input, supply, room)],
    first,
    later,
  )
  const name = ['timber order', supply.name].filter((words) => words !== '').join(', ')
  return pagesOf(input, { marks, name, more: input.workshop, letter: true }, measure)
}

function sawPages(input: TimberOrderInput, measure: Measure): Page[] {
  const { later, width } = frames(input)
  const marks = flow(sawBlocks(input, { width, measure }), { ...later }, later)
  const more = input.order.jobs.map(({ number, customer }) => `${number} ${customer}`.trim()).join(' · ')
  return pagesOf(input, { marks, name: 'timber to cut', more, letter: false }, measure)
}

/**
 * A timber order as pages in mm. For each supplier a part to send, by section with prices before tax, over a part that stays to book it in by;
 * then, for the saw, what to take from the rack, every length to scale as it is cut, and what goes back. Made from the order as it was placed.
 */
export function timberOrder(input: TimberOrderInput, measure: Measure = plainMeasure): PaperDocument {
  const { order } = input
  const asked = supplies(order.lines).flatMap((supply) => supplyPages(input, supply, measure))
  return {
    title: `Timber order ${order.number}`,
    issuedAt: `${order.placedOn}T00:00:00.000Z`,
    pages: [...asked, ...(order.lengths.length === 0 ? [] : sawPages(input, measure))],
  }
}
