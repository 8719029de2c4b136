import type { ItemEntry, SupplierEntry } from '../../db/prices.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import type { Handler } from './context.ts'
import { inSlices } from './inSlices.ts'
import { foundOr, missing } from './missing.ts'

const nameless: Problem = { code: 'missing', field: 'name', message: 'a name is missing; type one in' }

const named = <T extends ItemEntry | SupplierEntry>(entry: T): Result<T> => {
  const name = entry.name.trim()
  return name === '' ? bad(nameless) : good({ ...entry, name })
}

export const priceBook: Handler<'prices.book'> = async ({ book }) =>
  good(await inSlices(book.prices.bookSteps()))

export const priceLines: Handler<'prices.lines'> = async ({ book }) =>
  good(await inSlices(book.prices.lineSteps()))

/** Prices handed over at once: few enough that neither side is held up by them. */
const pricesAtOnce = 3000

export const somePrices: Handler<'prices.some'> = ({ book }, { after }) => {
  const prices = book.prices.some(after, pricesAtOnce)
  return good({ prices, more: prices.length === pricesAtOnce, stamp: book.rises.stamp() })
}

export const addItem: Handler<'prices.addItem'> = ({ book }, entry) => {
  const read = named(entry)
  return read.ok ? good(book.prices.addItem(read.value)) : read
}

/** A line stays of its kind: its prices are for metres of timber or boxes of screws, and would say something else. */
export const changeItem: Handler<'prices.changeItem'> = ({ book }, { id, item }) => {
  const before = foundOr(book.prices.item(id), 'id', 'line of the price book')
  if (!before.ok) return before
  if (before.value.kind !== item.kind)
    return bad({
      code: 'refused',
      field: 'item.kind',
      message: `this line is ${before.value.kind}; for another kind add a new line`,
    })
  const read = named(item)
  if (!read.ok) return read
  return foundOr(book.prices.changeItem(id, read.value), 'id', 'line of the price book')
}

export const retireItem: Handler<'prices.retireItem'> = ({ book }, { id, retired }) =>
  foundOr(book.prices.retireItem(id, retired), 'id', 'line of the price book')

export const addSupplier: Handler<'prices.addSupplier'> = ({ book }, entry) => {
  const read = named(entry)
  return read.ok ? good(book.prices.addSupplier(read.value)) : read
}

export const changeSupplier: Handler<'prices.changeSupplier'> = ({ book }, { id, supplier }) => {
  const read = named(supplier)
  if (!read.ok) return read
  return foundOr(book.prices.changeSupplier(id, read.value), 'id', 'supplier')
}

export const keepSupply: Handler<'prices.supply'> = ({ book }, supply) => {
  if (!book.prices.item(supply.itemId)) return bad(missing('itemId', 'line of the price book'))
  if (!book.prices.supplier(supply.supplierId)) return bad(missing('supplierId', 'supplier'))
  return good(book.prices.supply(supply))
}
