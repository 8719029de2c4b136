import { draftMark } from './cardHeader.ts'
import { flow, stacked, type Frame } from './flow.ts'
import { plainMeasure } from './measure.ts'
import { paperSizes, type Measure, type PaperDocument } from './page.ts'
import { closeBlocks } from './quotationClose.ts'
import { gateBlocks } from './quotationOptions.ts'
import { firstHead, laterFrame, pageFurniture, quotationNumber } from './quotationHead.ts'
import type { QuotationInput } from './quotationInput.ts'
import { letterFrame } from './quotationLook.ts'
import { priceBlocks } from './quotationPrice.ts'

/** Least height, mm, that a drawing is worth having on the first page; with less left under the letterhead it goes to the second. */
const leastForGate = 90

/** How large the gate is drawn, as a share of the most it may have: smaller only where that saves the customer a page. */
const pictureShares = [1, 0.84, 0.7, 0.58] as const

/**
 * A quotation as pages in mm: letterhead, customer and dates; the gate drawn from the front and told in plain words; the price or the
 * options side by side; what is included and what isn't, terms, looking after it; the place to sign. What is printed is only what the
 * customer is offered: nothing of cost, margin or the workshop's own lines. measure reads the faces it will be painted with; without it
 * plain Latin is right. Throws RangeError without an option, and for a gate that can't be made.
 */
export function quotation(input: QuotationInput, measure: Measure = plainMeasure): PaperDocument {
  const { format, draft, header, money } = input
  const sheet = paperSizes[format]
  const { left, top, bottom, width } = letterFrame(format)
  const first: Frame = { x: left, top, bottom }
  const later = laterFrame(format)
  const head = firstHead(input, measure)
  const free = bottom - top - stacked(head).height - 8
  const height = free >= leastForGate ? free : later.bottom - later.top
  const room = { width, measure }
  const close = [...priceBlocks(money, room), ...closeBlocks(input, room)]
  const made = pictureShares.map((share) =>
    flow([...head, ...gateBlocks(input, { ...room, height, share }), ...close], first, later),
  )
  const least = Math.min(...made.map((one) => one.length))
  const pages = made.find((one) => one.length === least) ?? []
  return {
    title: `Quotation ${quotationNumber(header)}`,
    issuedAt: header.issuedAt,
    pages: pages.map((marks, i) => ({
      width: sheet.width,
      height: sheet.height,
      marks: [
        ...(draft ? [draftMark(format)] : []),
        ...pageFurniture(input, { page: i + 1, pages: pages.length }, measure),
        ...marks,
      ],
    })),
  }
}
