import type { PriceBook } from './book.ts'
import type { Supply } from './item.ts'
import { matching, type Matching } from './matching.ts'
import type { Price } from './price.ts'
import { byItem, standingOf, standingPrices, type StandingPrices } from './standing.ts'

/** A price book laid open on a day, so that many estimates can be worked from it without going through it again. */
export type StandingBook = {
  day: string
  items: Matching
  prices: StandingPrices
  /** The prices that an estimate goes by: the usual supplier's where it has any on the day, else everyone's. */
  offersOf: (itemId: number) => readonly Price[]
  supplyOf: (itemId: number, supplierId: number | null) => Supply | undefined
  supplierName: (supplierId: number | null) => string
}

/** Everything of an open book but its prices: it stays the same while prices rise. */
type Shelf = Pick<StandingBook, 'items' | 'supplyOf' | 'supplierName'> & {
  usualOf: (itemId: number) => number | undefined
}

function shelf(book: PriceBook): Shelf {
  const supplies = new Map<number, Supply[]>()
  for (const supply of book.supplies) {
    const own = supplies.get(supply.itemId)
    if (own) own.push(supply)
    else supplies.set(supply.itemId, [supply])
  }
  const names = new Map(book.suppliers.map(({ id, name }) => [id, name]))
  return {
    items: matching(book),
    supplyOf: (itemId, supplierId) => supplies.get(itemId)?.find((one) => one.supplierId === supplierId),
    usualOf: (itemId) => supplies.get(itemId)?.find(({ usual }) => usual)?.supplierId,
    supplierName: (supplierId) =>
      supplierId === null
        ? 'the workshop’s own rate'
        : (names.get(supplierId) ?? 'a supplier no longer kept'),
  }
}

function opened({ usualOf, ...rest }: Shelf, prices: StandingPrices): StandingBook {
  const known = new Map<number, readonly Price[]>()
  const offersOf = (itemId: number): readonly Price[] => {
    const before = known.get(itemId)
    if (before) return before
    const all = prices.ofItem(itemId)
    const usual = usualOf(itemId)
    const own = usual === undefined ? [] : all.filter(({ supplierId }) => supplierId === usual)
    const offers = own.length > 0 ? own : all
    known.set(itemId, offers)
    return offers
  }
  return { ...rest, day: prices.day, prices, offersOf }
}

/** Lays a price book open on a day (ISO). One of 5,000 items with ten prices each takes some thousandths of a second. */
export const standingBook = (book: PriceBook, day: string): StandingBook =>
  opened(shelf(book), standingPrices(book, day))

/** The prices that `after` has beyond `before`, where it starts with the very same rows; undefined where it doesn't. */
export function addedPrices(before: readonly Price[], after: readonly Price[]): Price[] | undefined {
  if (after.length < before.length) return undefined
  for (let index = 0; index < before.length; index += 1)
    if (before[index] !== after[index] && before[index]?.id !== after[index]?.id) return undefined
  return after.slice(before.length)
}

/** Prices as they hold with further ones added, without going through the book again. */
function withAdded(standing: StandingPrices, added: readonly Price[]): StandingPrices {
  const items = byItem(added)
  const worked = new Map<number, readonly Price[]>()
  const ofItem = (itemId: number): readonly Price[] => {
    const own = items.get(itemId)
    if (!own) return standing.ofItem(itemId)
    const known = worked.get(itemId) ?? standingOf([...standing.ofItem(itemId), ...own], standing.day)
    worked.set(itemId, known)
    return known
  }
  const of: StandingPrices['of'] = (line) =>
    ofItem(line.itemId).find(
      ({ supplierId, unit, size }) =>
        supplierId === line.supplierId && unit === line.unit && size === line.size,
    )
  return { day: standing.day, ofItem, of }
}

/** One book before and after its prices changed, both open on a day, and whether an item has a price that differs. */
export type BookChange = { before: StandingBook; after: StandingBook; touched: (itemId: number) => boolean }

/** Whether the same prices of an item hold on both sides. */
const alike = (a: readonly Price[], b: readonly Price[]): boolean =>
  a === b || (a.length === b.length && a.every(({ id }, index) => id === b[index]?.id))

/** Whether an item's prices differ: found out when it is first asked, since a rise touches thousands and a quotation a few. */
function differing(before: StandingPrices, after: StandingPrices): (itemId: number) => boolean {
  const known = new Map<number, boolean>()
  return (itemId) => {
    const differs = known.get(itemId) ?? !alike(before.ofItem(itemId), after.ofItem(itemId))
    known.set(itemId, differs)
    return differs
  }
}

/** Lays two states of a book open side by side. Quickest where the later one only adds prices to the earlier. */
export function bookChange(bookBefore: PriceBook, bookAfter: PriceBook, day: string): BookChange {
  const standing = standingPrices(bookBefore, day)
  const sameShelf = bookBefore.items === bookAfter.items && bookBefore.supplies === bookAfter.supplies
  const own = shelf(bookBefore)
  const added = addedPrices(bookBefore.prices, bookAfter.prices)
  const pricesAfter = added ? withAdded(standing, added) : standingPrices(bookAfter, day)
  return {
    before: opened(own, standing),
    after: opened(sameShelf ? own : shelf(bookAfter), pricesAfter),
    touched: differing(standing, pricesAfter),
  }
}
