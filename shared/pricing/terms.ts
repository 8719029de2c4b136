import type { Pence } from './pence.ts'

/** How tax is rounded. VAT Notice 700 para 17.5 (HMRC manual VATREC12010) allows an invoice's total to be rounded down to a whole penny, a line to 0.1p down, or to the nearest 0.5p or 1p. */
export const taxRoundings = [
  'total down',
  'total nearest',
  'line down to 0.1',
  'line nearest 0.5',
  'line nearest 1',
] as const
export type TaxRounding = (typeof taxRoundings)[number]

export const currencies = ['GBP', 'EUR', 'USD'] as const
export type Currency = (typeof currencies)[number]

/** A rate of tax and the day it holds from. bp: basis points, 2000 is 20 %. */
export type TaxRate = { from: string; bp: number }

/**
 * The workshop's way of charging. basis points throughout; rates of tax by date; registered false charges none. timberBy: how timber sold by
 * the metre is counted where the lengths kept are known; a quotation from before it could be chosen has none, and is by waste.
 */
export type MoneySettings = {
  currency: Currency
  tax: { registered: boolean; name: string; number: string; rates: TaxRate[]; rounding: TaxRounding }
  timberBy?: 'lengths' | 'waste'
  wasteBp: number
  overheadBp: number
  profit: Profit
  depositBp: number
  validDays: number
  fixingsBy: 'share' | 'box'
  finishBy: 'share' | 'tin'
}

/** What is put on top of cost: markup is a share of the cost, margin a share of the price. */
export type Profit = { by: 'markup' | 'margin'; bp: number }

export type Discount = { by: 'percent'; bp: number } | { by: 'sum'; pence: Pence }

/** What the joiner said about one option beyond its spec. Lines are named by their id in the estimate. */
export type EstimateEntry = {
  /** A line's quantity, its minutes, or its whole sum, put by hand in place of what was worked out. */
  overrules: Record<string, { quantity?: number; minutes?: number; pence?: Pence }>
  /** Lines of the joiner's own: delivery, disposal, a lock he buys in. pence is the price to the customer's account before profit. */
  extras: { id: string; words: string; pence: Pence; group: 'making' | 'hanging' }[]
  /** Price-book items chosen by hand for a line (a section of another name, a box of another make), by line id. */
  chosen: Record<string, number>
  /** The finish put on, by its price-book item; null for none. coats null: as the item says. */
  finish: { itemId: number; coats: number | null } | null
  siteVisits: number
  kilometres: number
  discount: Discount | null
  /** Put by hand for this option in place of the workshop's settings. */
  profit: Profit | null
  depositBp: number | null
}

export const plainEntry: EstimateEntry = {
  overrules: {},
  extras: [],
  chosen: {},
  finish: null,
  siteVisits: 1,
  kilometres: 0,
  discount: null,
  profit: null,
  depositBp: null,
}
