import type { Pence } from './pence.ts'

/** What a price is for. size: mm for a length, how many in a box, litres in a tin; null for the rest. */
export const priceUnits = [
  'metre',
  'length',
  'each',
  'pair',
  'box',
  'tin',
  'hour',
  'kilometre',
  'visit',
] as const
export type PriceUnit = (typeof priceUnits)[number]

/** The units that need a size, and what the size is. */
export const sizedUnits = { length: 'mm', box: 'how many', tin: 'litres' } as const

/** Which price of an item: a supplier's (null for the workshop's own rates), a unit and its size. */
export type PriceLine = { itemId: number; supplierId: number | null; unit: PriceUnit; size: number | null }

/**
 * A price, never edited: a rise is another row. startsOn is the day it holds from (ISO, may lie ahead); origin where it came from
 * ('by hand', '5 % on all timber', a file's name); riseId the rise it came with, null for a first price by hand. Where two start on
 * one day the one added later (the higher id) holds. Prices leave tax out.
 */
export type Price = PriceLine & {
  id: number
  pence: Pence
  startsOn: string
  origin: string
  riseId: number | null
  addedAt: string
}

/** A price about to be added. */
export type NewPrice = PriceLine & { pence: Pence; startsOn: string }

/** Prices that came together: one apply, one undo. An undone rise's prices stand in the book and count for nothing. */
export type Rise = { id: number; origin: string; addedAt: string; undoneAt: string | null; lines: number }
