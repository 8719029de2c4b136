import type { PriceBook } from './book.ts'
import type { ItemKind } from './item.ts'
import { toPence } from './pence.ts'
import { wholeBp } from './percent.ts'
import type { NewPrice, Price } from './price.ts'
import { standingPrices } from './standing.ts'

/**
 * Which lines of the book. null means all; untouchedSince: only prices that started before that day (ISO); search: words that all
 * stand in the item's name, whatever the capitals. Retired items are left out.
 */
export type PriceFilter = {
  kind: ItemKind | null
  supplierId: number | null
  untouchedSince: string | null
  search: string
}

export const everyPrice: PriceFilter = { kind: null, supplierId: null, untouchedSince: null, search: '' }

/** The prices that hold on a day of the lines that a filter lets through, by item in the book's order. */
export function filteredPrices(book: PriceBook, filter: PriceFilter, day: string): Price[] {
  const { kind, supplierId, untouchedSince } = filter
  const wanted = filter.search
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '')
  const standing = standingPrices(book, day)
  return book.items
    .filter((item) => !item.retired && (kind === null || item.kind === kind))
    .filter(({ name }) => wanted.every((word) => name.toLowerCase().includes(word)))
    .flatMap(({ id }) => standing.ofItem(id))
    .filter((price) => supplierId === null || price.supplierId === supplierId)
    .filter(({ startsOn }) => untouchedSince === null || startsOn < untouchedSince)
}

/**
 * Every price of a filter raised by a percent (basis points, below 0 for a fall) from a day on, each to the nearest penny; those that
 * stay the same are left out. £3.45 and 5 % is £3.62. Throws RangeError for a fall of more than 100 %.
 */
export function percentRise({
  book,
  filter,
  bp,
  day,
}: {
  book: PriceBook
  filter: PriceFilter
  bp: number
  day: string
}): NewPrice[] {
  if (!(bp >= -wholeBp)) throw new RangeError(`a fall of 100 % at most is accepted, got ${bp} basis points`)
  return filteredPrices(book, filter, day).flatMap(({ itemId, supplierId, unit, size, pence: old }) => {
    const raised = toPence((old * (wholeBp + bp)) / wholeBp)
    return raised === old ? [] : [{ itemId, supplierId, unit, size, pence: raised, startsOn: day }]
  })
}
