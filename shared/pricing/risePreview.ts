import type { PriceBook } from './book.ts'
import type { NewPrice, Price } from './price.ts'
import type { RiseLine, RisePreview } from './quotation.ts'
import { effectsOf, type StandingJob } from './riseEffects.ts'
import { byItem, priceOn } from './standing.ts'
import { bookChange } from './standingBook.ts'

/** What a stamp is made from: how many prices count, the last one's number, and the sum of their numbers. */
export type StampFacts = { count: number; lastId: number; idSum: number }

/** The stamp of a book's prices. It differs as soon as a price is added or a rise undone: '3.9.15' of prices 2, 4 and 9. */
export const stampOf = ({ count, lastId, idSum }: StampFacts): string => `${count}.${lastId}.${idSum}`

/** The stamp of the prices that count in a book. */
export function pricesStamp(prices: readonly Pick<Price, 'id'>[]): string {
  let [lastId, idSum] = [0, 0]
  for (const { id } of prices) {
    lastId = Math.max(lastId, id)
    idSum += id
  }
  return stampOf({ count: prices.length, lastId, idSum })
}

/** New prices as they would stand in the book: numbered on from its last one, so that they hold against it. */
export function asAdded(book: PriceBook, newPrices: readonly NewPrice[]): Price[] {
  const last = book.prices.reduce((most, { id }) => Math.max(most, id), 0)
  return newPrices.map((price, index) => ({
    ...price,
    id: last + 1 + index,
    origin: 'as previewed',
    riseId: null,
    addedAt: '',
  }))
}

/** The day on which all of the new prices hold: today, or the last day that one of them starts. */
export const dayOfAll = (newPrices: readonly NewPrice[], day: string): string =>
  newPrices.reduce((last, { startsOn }) => (startsOn > last ? startsOn : last), day)

/** What a line is called: the item and who sells it. */
function lineWords(book: PriceBook): (price: NewPrice) => string {
  const items = new Map(book.items.map(({ id, name }) => [id, name]))
  const suppliers = new Map(book.suppliers.map(({ id, name }) => [id, name]))
  return ({ itemId, supplierId }) => {
    const item = items.get(itemId) ?? 'an item no longer kept'
    return supplierId === null ? item : `${item}, ${suppliers.get(supplierId) ?? 'a supplier no longer kept'}`
  }
}

/** Each new price beside the one that holds on the day it starts. items: the book's prices by item, where they are at hand. */
export function riseLines(
  book: PriceBook,
  newPrices: readonly NewPrice[],
  items: ReadonlyMap<number, readonly Price[]> = byItem(book.prices),
): RiseLine[] {
  const words = lineWords(book)
  return newPrices.map((price) => {
    const { itemId, supplierId, unit, size, startsOn } = price
    const old = priceOn(items.get(itemId) ?? [], price, startsOn)?.pence ?? null
    return { itemId, supplierId, unit, size, words: words(price), old, new: price.pence, startsOn }
  })
}

/**
 * What new prices would do, before anything is written: each line's old and new price (old null: its first), how many stay as they are, and
 * the effect on quotations that stand, on the day when all of them hold. stamp is of the book as it was read.
 */
export function risePreview({
  book,
  newPrices,
  quoted,
  day,
}: {
  book: PriceBook
  newPrices: readonly NewPrice[]
  quoted: readonly StandingJob[]
  day: string
}): RisePreview {
  const all = riseLines(book, newPrices)
  const lines = all.filter((line) => line.old !== line.new)
  const after: PriceBook = { ...book, prices: [...book.prices, ...asAdded(book, newPrices)] }
  return {
    lines,
    effects: effectsOf(quoted, bookChange(book, after, dayOfAll(newPrices, day))),
    unchanged: all.length - lines.length,
    stamp: pricesStamp(book.prices),
  }
}
