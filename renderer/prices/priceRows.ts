import type { PriceBook } from '../../shared/pricing/book.ts'
import { itemKinds, type ItemKind, type PriceItem, type Supplier } from '../../shared/pricing/item.ts'
import type { Price, PriceLine } from '../../shared/pricing/price.ts'
import { laterThan } from '../../shared/pricing/standing.ts'

/**
 * A line of the price list as it is shown: an item, who sells it, by what. line is null for an item that has no price yet. prices: all
 * of them in the order in which they come to hold; now and next: the one that holds today and the one after it. search: what is
 * looked through as one types; order: what the list is sorted by.
 */
export type PriceRow = {
  key: string
  item: PriceItem
  supplier: Supplier | null
  code: string
  line: PriceLine | null
  prices: Price[]
  now: Price | null
  next: Price | null
  search: string
  order: string
}

/** What is shown of the list. null is all. untouchedSince: only lines whose last price started before that day. */
export type RowFilter = {
  search: string
  kind: ItemKind | 'retired' | null
  supplierId: number | null
  untouchedSince: string | null
}
export const wholeList: RowFilter = { search: '', kind: null, supplierId: null, untouchedSince: null }

export const lineKey = ({ itemId, supplierId, unit, size }: PriceLine): string =>
  `${itemId}/${supplierId ?? ''}/${unit}/${size ?? ''}`

/** Words as they are compared: small letters without their marks, so that 'meleze' finds Mélèze. */
export const fold = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()

/** Numbers are put in order by their size: 5 × 50 before 5 × 100. */
const ordered = (text: string): string => fold(text).replace(/\d+/g, (digits) => digits.padStart(6, '0'))

/** How many prices or lines are gone through between two halts. */
const someLines = 400

/** The prices of a book by their line, each in the order in which they come to hold; of one day only the last added. */
function* byLine(prices: readonly Price[]): Generator<void, Map<string, Price[]>> {
  const lines = new Map<string, Price[]>()
  for (const [index, price] of prices.entries()) {
    if (index % someLines === 0) yield
    const key = lineKey(price)
    const own = lines.get(key)
    if (own) own.push(price)
    else lines.set(key, [price])
  }
  let done = 0
  for (const [key, own] of lines) {
    if (++done % someLines === 0) yield
    own.sort((a, b) => (laterThan(a, b) ? 1 : -1))
    lines.set(
      key,
      own.filter((price, index) => own[index + 1]?.startsOn !== price.startsOn),
    )
  }
  return lines
}

type Of = { item: PriceItem; supplier: Supplier | null; code: string }

function makeRow({ item, supplier, code }: Of, prices: Price[], today: string): PriceRow {
  const first = prices[0]
  const line = first
    ? { itemId: item.id, supplierId: supplier?.id ?? null, unit: first.unit, size: first.size }
    : null
  const place = `${itemKinds.indexOf(item.kind)} ${ordered(item.name)} ${item.id} ${ordered(supplier?.name ?? '')}`
  return {
    key: line ? lineKey(line) : `${item.id}/${supplier?.id ?? ''}`,
    item,
    supplier,
    code,
    line,
    prices,
    now: prices.findLast(({ startsOn }) => startsOn <= today) ?? null,
    next: prices.find(({ startsOn }) => startsOn > today) ?? null,
    search: fold(
      `${item.name} ${supplier?.name ?? ''} ${code} ${item.kind === 'timber' ? item.facts.species : ''}`,
    ),
    order: `${place} ${line?.unit ?? ''} ${String(line?.size ?? '').padStart(9, '0')}`,
  }
}

/**
 * The whole price list in order: kind, name, supplier, unit. A line for each price line, and one for each item or supplier of an item
 * that has no price yet. today is ISO. It halts after every few hundred lines, so that a window isn't held up.
 */
export function* priceRowSteps(book: PriceBook, today: string): Generator<void, PriceRow[]> {
  const items = new Map(book.items.map((item) => [item.id, item]))
  const suppliers = new Map(book.suppliers.map((supplier) => [supplier.id, supplier]))
  const supplies = new Map(book.supplies.map((supply) => [`${supply.itemId}/${supply.supplierId}`, supply]))
  yield
  const rows: PriceRow[] = []
  const pricedSupplies = new Set<string>()
  const pricedItems = new Set<number>()
  const add = (itemId: number, supplierId: number | null, prices: Price[]) => {
    const item = items.get(itemId)
    if (!item) return
    const supplier = supplierId === null ? null : (suppliers.get(supplierId) ?? null)
    const supply = `${itemId}/${supplierId ?? ''}`
    pricedSupplies.add(supply)
    pricedItems.add(itemId)
    rows.push(makeRow({ item, supplier, code: supplies.get(supply)?.code ?? '' }, prices, today))
  }
  for (const prices of (yield* byLine(book.prices)).values()) {
    const [first] = prices
    if (first) add(first.itemId, first.supplierId, prices)
    if (rows.length % someLines === 0) yield
  }
  for (const { itemId, supplierId } of book.supplies)
    if (!pricedSupplies.has(`${itemId}/${supplierId}`)) add(itemId, supplierId, [])
  for (const { id } of book.items) if (!pricedItems.has(id)) add(id, null, [])
  yield
  return rows.sort((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0))
}

/** The same at once. */
export function priceRows(book: PriceBook, today: string): PriceRow[] {
  const steps = priceRowSteps(book, today)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** The rows that a filter lets through, in their order. Items no longer offered are shown only when they are asked for. */
export function filterRows(rows: readonly PriceRow[], filter: RowFilter): PriceRow[] {
  const words = fold(filter.search)
    .split(/\s+/)
    .filter((word) => word !== '')
  const { kind, supplierId, untouchedSince } = filter
  return rows.filter(
    ({ item, supplier, search, prices }) =>
      item.retired === (kind === 'retired') &&
      (kind === null || kind === 'retired' || item.kind === kind) &&
      (supplierId === null || supplier?.id === supplierId) &&
      (untouchedSince === null || (prices.at(-1)?.startsOn ?? '') < untouchedSince) &&
      words.every((word) => search.includes(word)),
  )
}
