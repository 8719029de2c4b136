import type { Figure } from '../gate/figures.ts'
import type { BoughtLength } from './buyTimber.ts'
import type { Pence } from './pence.ts'
import type { PriceUnit } from './price.ts'
import type { Profit } from './terms.ts'

export const estimateGroups = [
  'timber',
  'fixings',
  'ironmongery',
  'finish',
  'making',
  'hanging',
  'extras',
] as const
export type EstimateGroup = (typeof estimateGroups)[number]

/** Why a line has no price yet: nothing in the book fits it, what fits has no price on the day, or a piece is longer than any length kept. */
export type Missing = 'no item' | 'no price' | 'no length'

/**
 * A line of cost. id stays the same while the gate does ('timber.ex 25 × 125 T&G V', 'making.rip'); quantity in unit; each the price of
 * one as the book has it, null where there is none; pence the whole line, rounded once. priceId is the row it rests on. overruled:
 * put by hand. how says how it was worked out. Work is in minutes and its each is the price of an hour. each is null too where
 * several lengths or tins are bought at prices of their own. metres: the timber bought, waste in it. lengths: the whole lengths that were
 * worked out for it, shortest first, whatever was put by hand since; a line of net length and waste has none.
 */
export type EstimateLine = {
  id: string
  group: EstimateGroup
  words: string
  quantity: number
  unit: PriceUnit | 'm²' | 'minute'
  each: Pence | null
  pence: Pence
  priceId: number | null
  missing: Missing | null
  overruled: boolean
  how: Figure
  metres?: number
  lengths?: readonly BoughtLength[]
}

/**
 * One option priced. cost is the sum of the lines; net = cost + overhead + profit − discount; gross = net + tax; every amount whole, so
 * that what is printed adds up. taxTenths is the tax in tenths of a penny before the total is made whole. both percents of profit are
 * given whichever was asked for, in basis points of cost with overhead (markup) and of the net price before discount (margin).
 */
export type Estimate = {
  on: string
  lines: EstimateLine[]
  cost: Pence
  overhead: Pence
  profit: Pence
  discount: Pence
  net: Pence
  taxBp: number
  taxTenths: number
  tax: Pence
  gross: Pence
  deposit: Pence
  asked: Profit
  markupBp: number
  marginBp: number
  /** ids of the lines that have no price: with one of them no quotation goes out. */
  missing: string[]
  /** How overhead, profit, discount, tax and deposit were worked out, by name. */
  how: Record<'overhead' | 'profit' | 'discount' | 'tax' | 'deposit', Figure>
}

/** What the customer sees: the net price told in a few lines that add up to it, and what tax falls on each. */
export type OfferLine = { words: string; net: Pence; taxTenths: number }
