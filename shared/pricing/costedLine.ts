import type { Figure } from '../gate/figures.ts'
import { figure } from '../gate/worked.ts'
import { paperDate } from '../papers/paperDate.ts'
import type { BoughtLength, BuyTimber, Cutting } from './buyTimber.ts'
import type { EstimateLine, Missing } from './estimate.ts'
import { currencySigns } from './moneyText.ts'
import type { Needs, StandardTimes } from './needs.ts'
import { pence, toPence, type Pence } from './pence.ts'
import type { Price } from './price.ts'
import type { StandingBook } from './standingBook.ts'
import type { Currency, EstimateEntry, MoneySettings } from './terms.ts'

/** An open price book and what is asked of it. */
export type Desk = { book: StandingBook; asked: Asked }

/**
 * Everything an estimate is worked from but the price book. buyTimber and cutting: first fit and the usual saw unless given. quotedLengths:
 * the lengths that a frozen estimate bought, by line: they are priced as they are, and a line without any as it was before.
 */
export type Asked = {
  needs: Needs
  entry: EstimateEntry
  settings: MoneySettings
  times: StandardTimes
  buyTimber?: BuyTimber
  cutting?: Cutting | undefined
  quotedLengths?: ReadonlyMap<string, readonly BoughtLength[]>
}

/**
 * A line before it is explained: explain gives its figure when it is asked for, so that a rise over hundreds of quotations explains nothing.
 */
export type Costed = Omit<EstimateLine, 'how'> & { explain: () => Figure }

/** How an amount was worked out, in pounds (or euros, dollars). */
export const moneyFigure = (
  amount: Pence,
  currency: Currency,
  how: { formula: string; inputs: Record<string, number>; source: string },
): Figure => figure(amount / 100, currencySigns[currency], how)

/** A sum as it goes into a formula: in pounds, with the sign in its name. */
export const asInput = (name: string, amount: number, currency: Currency): Record<string, number> => ({
  [`${name} ${currencySigns[currency]}`]: amount / 100,
})

/** Where a price comes from: who sells at it, from which day, how it came into the book. */
export const sourceOfPrice = (book: StandingBook, price: Price): string =>
  `${book.supplierName(price.supplierId)}, price from ${paperDate(price.startsOn)} (${price.origin})`

export type LineStart = Pick<Costed, 'id' | 'group' | 'words'>

/** What each reason for a missing price says, and what to do: told behind the line's own words. */
export const missingWords: Record<Missing, string> = {
  'no item': 'nothing in the price book fits: add it, or choose one by hand',
  'no price': 'no price on this day: enter one',
  'no length': 'a piece is longer than any length kept: add a longer one, or choose another by hand',
}

/** A line without a price: it comes to nothing, says why, and holds the quotation back. */
export function missingLine(
  start: LineStart,
  worked: Pick<Costed, 'quantity' | 'unit' | 'missing'> & {
    missing: Missing
    currency: Currency
    metres?: number
  },
): Costed {
  const { currency, missing, ...rest } = worked
  return {
    ...start,
    ...rest,
    missing,
    each: null,
    pence: pence(0),
    priceId: null,
    overruled: false,
    explain: () =>
      moneyFigure(pence(0), currency, {
        formula: `quantity × price: ${missingWords[missing]}`,
        inputs: { quantity: worked.quantity },
        source: 'the price book holds no price for it',
      }),
  }
}

/** One way to buy what a line needs: how many of a priced unit, and how that number came about. */
export type Buying = {
  price: Price
  quantity: number
  formula: string
  inputs: Record<string, number>
  metres?: number
}

/** The cheapest of several ways to buy, the price added first where two come to the same. */
export function cheapest(ways: readonly Buying[]): Buying | undefined {
  let best: Buying | undefined
  for (const way of ways) {
    if (!best) best = way
    else {
      const [total, least] = [way.quantity * way.price.pence, best.quantity * best.price.pence]
      if (total < least || (total === least && way.price.id < best.price.id)) best = way
    }
  }
  return best
}

/** A line at one price: quantity × price, rounded once to a whole penny. */
export function boughtLine(start: LineStart, way: Buying, { book, asked }: Desk): Costed {
  const { currency } = asked.settings
  const { price, quantity } = way
  const amount = toPence(quantity * price.pence)
  return {
    ...start,
    quantity,
    unit: price.unit,
    each: price.pence,
    pence: amount,
    priceId: price.id,
    missing: null,
    overruled: false,
    ...(way.metres === undefined ? {} : { metres: way.metres }),
    explain: () =>
      moneyFigure(amount, currency, {
        formula: `${way.formula} × price, to a whole penny`,
        inputs: { ...way.inputs, quantity, ...asInput('price', price.pence, currency) },
        source: sourceOfPrice(book, price),
      }),
  }
}
