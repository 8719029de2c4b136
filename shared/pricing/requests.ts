import * as v from 'valibot'
import type { Paper } from '../job/job.ts'
import type { PriceBook } from './book.ts'
import type { PriceItem, Supplier, Supply } from './item.ts'
import type { Price, Rise } from './price.ts'
import type { Acceptance, JobOption, QuotedMoney, RequotedLine, RisePreview } from './quotation.ts'
import {
  day,
  itemFacts,
  newPriceShape,
  optionShape,
  rowId,
  supplierShape,
  supplyShape,
  workDoneShape,
} from './shapes.ts'
import type { EstimateRecord, WorkDone } from './workDone.ts'

const format = v.picklist(['a4', 'letter'], 'a4 or letter')
const nothing = v.strictObject({})

/** Most prices that one rise may bring: a large merchant's whole list, with room to spare. */
export const mostRiseLines = 120_000

const newPrices = v.pipe(
  v.array(newPriceShape),
  v.minLength(1, 'at least one price'),
  v.maxLength(mostRiseLines, `up to ${mostRiseLines} prices at once`),
)
const origin = v.pipe(v.string('a text'), v.minLength(1, 'where the prices come from'), v.maxLength(200))

/** What the money's requests take; `MoneyReplies` says what each gives. */
export const moneyTakes = {
  'prices.book': nothing,
  'prices.lines': nothing,
  'prices.some': v.strictObject({ after: v.pipe(v.number(), v.safeInteger(), v.minValue(0, '0 or more')) }),
  'prices.addItem': itemFacts,
  'prices.changeItem': v.strictObject({ id: rowId, item: itemFacts }),
  'prices.retireItem': v.strictObject({ id: rowId, retired: v.boolean('yes or no') }),
  'prices.addSupplier': supplierShape,
  'prices.changeSupplier': v.strictObject({ id: rowId, supplier: supplierShape }),
  'prices.supply': supplyShape,
  'prices.preview': v.strictObject({ prices: newPrices }),
  'prices.apply': v.strictObject({ prices: newPrices, origin, stamp: v.string('the stamp of the preview') }),
  'prices.rises': nothing,
  'prices.undo': v.strictObject({ riseId: rowId }),
  'options.list': v.strictObject({ jobId: rowId }),
  'options.add': v.strictObject({ jobId: rowId, option: optionShape }),
  'options.change': v.strictObject({ id: rowId, version: rowId, option: optionShape }),
  'options.remove': v.strictObject({ id: rowId }),
  'quotations.draft': v.strictObject({ jobId: rowId, format }),
  'quotations.issue': v.strictObject({ jobId: rowId, format, version: rowId }),
  'quotations.money': v.strictObject({ paperId: rowId }),
  'quotations.accept': v.strictObject({
    paperId: rowId,
    option: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(9)),
    acceptedOn: day,
    note: v.pipe(v.string(), v.maxLength(2000)),
  }),
  'quotations.requote': v.strictObject({ paperId: rowId }),
  'workDone.list': v.strictObject({ jobId: rowId }),
  'workDone.add': workDoneShape,
  'workDone.remove': v.strictObject({ id: rowId }),
  'workDone.record': nothing,
} as const

/** A quotation's frozen money with how it stands: accepted or not. */
export type StandingQuotation = { paper: Paper; money: QuotedMoney; acceptance: Acceptance | null }

/** Prices that count, in the order they were added, from after an id on; more: there are others after them. stamp is the book's as they were read. */
export type SomePrices = { prices: Price[]; more: boolean; stamp: string }

export type MoneyReplies = {
  'prices.book': PriceBook
  'prices.lines': Omit<PriceBook, 'prices'>
  'prices.some': SomePrices
  'prices.addItem': PriceItem
  'prices.changeItem': PriceItem
  'prices.retireItem': PriceItem
  'prices.addSupplier': Supplier
  'prices.changeSupplier': Supplier
  'prices.supply': Supply
  'prices.preview': RisePreview
  'prices.apply': Rise
  'prices.rises': Rise[]
  'prices.undo': Rise
  'options.list': JobOption[]
  'options.add': JobOption
  'options.change': JobOption
  'options.remove': JobOption[]
  'quotations.draft': { base64: string }
  'quotations.issue': Paper
  'quotations.money': StandingQuotation
  'quotations.accept': StandingQuotation
  'quotations.requote': RequotedLine[]
  'workDone.list': WorkDone[]
  'workDone.add': WorkDone
  'workDone.remove': WorkDone[]
  'workDone.record': EstimateRecord[]
}
