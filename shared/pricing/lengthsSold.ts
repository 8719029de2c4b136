import type { StockLength } from './buyTimber.ts'
import { toPence, type Pence } from './pence.ts'
import type { Price } from './price.ts'
import type { StandingBook } from './standingBook.ts'

/** A whole length as it is sold, and the price that it rests on: its own, or that of a metre. */
export type SoldLength = StockLength & { price: Price }

/** What a length (mm) costs that is sold by the metre, to a whole penny: 4200 mm at £3.45 a metre is £14.49. */
export const penceByMetre = (size: number, aMetre: Pence): Pence => toPence((size / 1000) * aMetre)

/** What one price asks for one length, undefined where that length isn't sold at it. */
function penceOf(book: StandingBook, { unit, size, pence, itemId, supplierId }: Price, mm: number) {
  if (unit === 'length') return size === mm ? pence : undefined
  if (unit !== 'metre' || !book.supplyOf(itemId, supplierId)?.lengths.includes(mm)) return undefined
  return penceByMetre(mm, pence)
}

/** One length among one supplier's prices, at the cheapest; undefined where it isn't sold. */
export function soldLength(
  book: StandingBook,
  prices: readonly Price[],
  size: number,
): SoldLength | undefined {
  let best: SoldLength | undefined
  for (const price of prices) {
    const pence = penceOf(book, price, size)
    if (pence !== undefined && (!best || pence < best.pence)) best = { size, pence, price }
  }
  return best
}

/** The whole lengths that one price gives: none where it is by the metre and nobody said what lengths are kept. */
function lengthsOf(book: StandingBook, price: Price): SoldLength[] {
  const { unit, size, pence, itemId, supplierId } = price
  if (unit === 'length') return size === null ? [] : [{ size, pence, price }]
  if (unit !== 'metre') return []
  const kept = book.supplyOf(itemId, supplierId)?.lengths ?? []
  return kept.map((mm) => ({ size: mm, pence: penceByMetre(mm, pence), price }))
}

/** All whole lengths among one supplier's prices, shortest first; of one size the cheapest. */
export function lengthsSold(book: StandingBook, prices: readonly Price[]): SoldLength[] {
  const best = new Map<number, SoldLength>()
  for (const sold of prices.flatMap((price) => lengthsOf(book, price))) {
    const known = best.get(sold.size)
    if (!known || sold.pence < known.pence) best.set(sold.size, sold)
  }
  return [...best.values()].sort((a, b) => a.size - b.size)
}
