import { careNote } from '../../shared/papers/care/careNote.ts'
import { dayList } from '../../shared/papers/dayList/dayList.ts'
import { fittingSheet } from '../../shared/papers/fittingSheet.ts'
import { jobCard } from '../../shared/papers/jobCard.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import { labelSheets } from '../../shared/papers/labels/labelLayouts.ts'
import { partLabels } from '../../shared/papers/labels/partLabels.ts'
import { timberOrder } from '../../shared/papers/order/timberOrder.ts'
import type { TimberOrderInput } from '../../shared/papers/order/timberOrderInput.ts'
import type { PaperDocument } from '../../shared/papers/page.ts'
import { quotation } from '../../shared/papers/quotation.ts'
import { workedFigures } from '../../shared/papers/workedFigures.ts'
import type { Business } from '../../shared/pricing/shapes.ts'
import { orderInput } from '../papers/orderInputs.ts'
import { printedMeasure } from '../papers/paperReading.ts'
import { business, moneyOf, plainLines } from '../papers/quotationInputs.ts'

/** One gate's job as all of its papers are made from, the workshop's own words, and an order of timber. */
export type SheetInput = Omit<JobCardInput, 'labels' | 'handover'> & {
  business: Business
  order: TimberOrderInput
}

const handedOver = ({ business: own }: SheetInput) => ({
  business: own,
  finish: { name: 'clear oil', coats: 2 },
})

const makers = {
  'job card': (input: SheetInput) => jobCard(input, printedMeasure),
  'worked figures': (input: SheetInput) => workedFigures(input, printedMeasure),
  'fitting sheet': (input: SheetInput) => fittingSheet(input, printedMeasure),
  'care note': (input: SheetInput) => careNote({ ...input, handover: handedOver(input) }, printedMeasure),
  quotation: ({ spec, ...input }: SheetInput) =>
    quotation(
      {
        ...{ header: input.header, business: input.business, unit: input.unit },
        ...{ format: input.format, draft: input.draft },
        money: moneyOf([{ spec, lines: plainLines }], { unit: input.unit }),
      },
      printedMeasure,
    ),
  'timber order': ({ order, format, unit, business: own, header }: SheetInput) =>
    timberOrder({ ...order, format, unit, business: own, workshop: header.workshop }, printedMeasure),
  'day list': ({ header, spec, design, unit, format }: SheetInput) => {
    const { number, title, customer } = header
    const jobs = [{ number, title, customer: customer.name, spec, design }]
    return dayList({ workshop: header.workshop, day: '2026-05-04', jobs, unit, format }, printedMeasure)
  },
} satisfies Record<string, (input: SheetInput) => PaperDocument>

/** A sheet of paper a job needs; labels apart, since another edge holds for them. */
export type SheetName = keyof typeof makers

export const sheetNames = Object.keys(makers) as SheetName[]

export const sheetOf = (name: SheetName, input: SheetInput): PaperDocument => makers[name](input)

/** The labels of all a gate's parts, on each kind of label. */
export const labelsOf = (input: SheetInput): { name: string; paper: PaperDocument }[] =>
  labelSheets.map((sheet) => ({
    name: `part labels, ${sheet}`,
    paper: partLabels({ ...input, labels: { sheet, start: 1 } }, printedMeasure),
  }))

/** All papers of one job: every sheet, then the labels. */
export const everyPaper = (input: SheetInput): { name: string; paper: PaperDocument }[] => [
  ...sheetNames.map((name) => ({ name, paper: sheetOf(name, input) })),
  ...labelsOf(input),
]

const orders = new Map<number, Promise<TimberOrderInput>>()

/** A gate's papers' input with an order for so many jobs, invented. Orders are placed once. */
export async function sheetInput(card: JobCardInput, jobs = 3): Promise<SheetInput> {
  const order = orders.get(jobs) ?? orderInput(jobs)
  orders.set(jobs, order)
  return { ...card, business, order: await order }
}
