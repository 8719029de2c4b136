import type { Price, PriceLine } from './price.ts'

/** Whether two prices are of one line: the same item, supplier, unit and size. */
export const sameLine = (a: PriceLine, b: PriceLine): boolean =>
  a.itemId === b.itemId && a.supplierId === b.supplierId && a.unit === b.unit && a.size === b.size

/** Whether a price takes the place of another of its line: it starts later, or on the same day and was added later. */
export const laterThan = (a: Price, b: Price): boolean =>
  a.startsOn > b.startsOn || (a.startsOn === b.startsOn && a.id > b.id)

/**
 * The price of a line that holds on a day (ISO): the one that started last, on it or before; of two that started on one day the one
 * added later. undefined where none has started. £3.20 from 1 March and £3.45 from 1 May: on 30 April it is £3.20.
 */
export function priceOn(prices: readonly Price[], line: PriceLine, day: string): Price | undefined {
  let standing: Price | undefined
  for (const price of prices)
    if (price.startsOn <= day && sameLine(price, line) && (!standing || laterThan(price, standing)))
      standing = price
  return standing
}

/** The price that will take over next after a day, undefined where none is known: the earliest to start, of one day the last added. */
export function nextPrice(prices: readonly Price[], line: PriceLine, day: string): Price | undefined {
  let next: Price | undefined
  for (const price of prices)
    if (price.startsOn > day && sameLine(price, line))
      if (!next || price.startsOn < next.startsOn || (price.startsOn === next.startsOn && price.id > next.id))
        next = price
  return next
}

/** Every price of a line in the order in which they came to hold; one that another of the same day replaced is left out. */
export function historyOf(prices: readonly Price[], line: PriceLine): Price[] {
  const own = prices.filter((price) => sameLine(price, line)).sort((a, b) => (laterThan(a, b) ? 1 : -1))
  return own.filter((price, index) => own[index + 1]?.startsOn !== price.startsOn)
}

/** The prices of one item that hold on a day, one a line, in the order in which they were added. */
export function standingOf(ofItem: readonly Price[], day: string): Price[] {
  const standing: Price[] = []
  for (const price of ofItem) {
    if (price.startsOn > day) continue
    const at = standing.findIndex((one) => sameLine(one, price))
    if (at < 0) standing.push(price)
    else if (laterThan(price, standing[at] as Price)) standing[at] = price
  }
  return standing.sort((a, b) => a.id - b.id)
}

/** Prices by the item they are for, gone through once. */
export function byItem(prices: readonly Price[]): Map<number, Price[]> {
  const items = new Map<number, Price[]>()
  for (const price of prices) {
    const own = items.get(price.itemId)
    if (own) own.push(price)
    else items.set(price.itemId, [price])
  }
  return items
}

/** Prices that hold on a day, by item. Each item's are worked out when they are first asked for. */
export type StandingPrices = {
  day: string
  ofItem: (itemId: number) => readonly Price[]
  of: (line: PriceLine) => Price | undefined
}

/**
 * All of a book's prices as they hold on a day: the book is gone through once, whatever is asked after. A book of 5,000 lines with
 * ten prices each takes a few thousandths of a second.
 */
export function standingPrices({ prices }: { prices: readonly Price[] }, day: string): StandingPrices {
  const items = byItem(prices)
  const worked = new Map<number, Price[]>()
  const ofItem = (itemId: number): readonly Price[] => {
    const known = worked.get(itemId)
    if (known) return known
    const standing = standingOf(items.get(itemId) ?? [], day)
    worked.set(itemId, standing)
    return standing
  }
  return { day, ofItem, of: (line) => ofItem(line.itemId).find((price) => sameLine(price, line)) }
}
