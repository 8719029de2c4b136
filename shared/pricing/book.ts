import type { PriceItem, Supplier, Supply } from './item.ts'
import type { Price } from './price.ts'

/** All of the price book that counts: prices of undone rises left out. */
export type PriceBook = { items: PriceItem[]; suppliers: Supplier[]; supplies: Supply[]; prices: Price[] }
