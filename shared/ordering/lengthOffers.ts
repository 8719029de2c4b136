import { longestStock } from '../cutting/buyingPlan/request.ts'
import { toPence } from '../pricing/pence.ts'
import type { Price } from '../pricing/price.ts'
import type { StandingBook } from '../pricing/standingBook.ts'
import type { TaskOffer } from './orderModel.ts'
import { downToTenth } from './wholeTenths.ts'

/** A length on offer before it is known by which section it is. */
export type LengthOffer = Omit<TaskOffer, 'key'>

/** The dearest single length that a buying request takes, pence. */
const dearest = 1_000_000

type Whole = LengthOffer & { usual: boolean }

/** The whole lengths that one price gives: its own, or each that is kept where it is a price by the metre. */
function wholeLengths(book: StandingBook, price: Price): Whole[] {
  const { itemId, supplierId, unit, size } = price
  const supply = book.supplyOf(itemId, supplierId)
  const supplier = supplierId === null ? 'no merchant named' : book.supplierName(supplierId)
  const sold = { supplierId, supplier, priceId: price.id, usual: supply?.usual ?? false }
  const offer = (mm: number, pence: number): Whole[] => {
    const length = downToTenth(mm)
    return length > 0 && length <= longestStock && pence <= dearest ? [{ length, pence, ...sold }] : []
  }
  if (unit === 'length' && size !== null) return offer(size, price.pence)
  if (unit !== 'metre') return []
  return (supply?.lengths ?? []).flatMap((mm) => offer(mm, toPence((mm / 1000) * price.pence)))
}

/** The usual merchant's before anyone else's, then the cheaper, then the price that was put down first. */
const before = (a: Whole, b: Whole): number =>
  Number(b.usual) - Number(a.usual) || a.pence - b.pence || a.priceId - b.priceId

/**
 * The lengths of an item that can be bought on the book's day, shortest first, one offer for each: the usual merchant's where that one sells
 * the length, else the cheapest. A length sold by the metre costs its metres at that price, to a whole penny: 4.8 m at £3.45 is £16.56.
 */
export function lengthOffers(book: StandingBook, itemId: number): LengthOffer[] {
  const best = new Map<number, Whole>()
  for (const one of book.prices.ofItem(itemId).flatMap((price) => wholeLengths(book, price))) {
    const known = best.get(one.length)
    if (!known || before(one, known) < 0) best.set(one.length, one)
  }
  return [...best.values()].sort((a, b) => a.length - b.length).map(({ usual: _usual, ...offer }) => offer)
}

/** Whether an item has any price as timber on the book's day. */
export const hasTimberPrice = (book: StandingBook, itemId: number): boolean =>
  book.prices.ofItem(itemId).some(({ unit }) => unit === 'metre' || unit === 'length')
