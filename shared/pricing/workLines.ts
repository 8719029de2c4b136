import { workshopSetting } from '../gate/figures.ts'
import {
  asInput,
  boughtLine,
  cheapest,
  missingLine,
  moneyFigure,
  sourceOfPrice,
  type Asked,
  type Costed,
  type LineStart,
} from './costedLine.ts'
import { coatsOf } from './finishLine.ts'
import type { PriceItem, WorkRate } from './item.ts'
import { operationRates, type Operation } from './needs.ts'
import { toPence } from './pence.ts'
import type { PriceUnit } from './price.ts'
import { operationWords } from './standardTimes.ts'
import type { StandingBook } from './standingBook.ts'

const unitOfRate = {
  hour: 'hour',
  'site hour': 'hour',
  kilometre: 'kilometre',
  visit: 'visit',
} as const satisfies Record<WorkRate, PriceUnit>

type Rated = { start: LineStart; rate: WorkRate }

/** The rate's item, or the one chosen by hand for the line, and what it stands at. */
function rateOf(book: StandingBook, asked: Asked, { start, rate }: Rated) {
  const chosen = asked.entry.chosen[start.id]
  const item: PriceItem | undefined = chosen === undefined ? book.items.work(rate) : book.items.byId(chosen)
  if (item?.kind !== 'work') return 'no item' as const
  const prices = book.offersOf(item.id).filter(({ unit }) => unit === unitOfRate[rate])
  const way = cheapest(prices.map((price) => ({ price, quantity: 1, formula: '', inputs: {} })))
  return way ? way.price : ('no price' as const)
}

/** Minutes to a hundredth, so that what is printed is what is multiplied. */
const toHundredth = (minutes: number): number => Math.round(minutes * 100) / 100

type Work = { operation: Operation; count: number; times: number; inputs: Record<string, number> }

function minutesLine({ operation, count, times, inputs }: Work, book: StandingBook, asked: Asked): Costed {
  const { currency } = asked.settings
  const rate = operationRates[operation]
  const group = rate === 'hour' ? 'making' : 'hanging'
  const start: LineStart = { id: `${group}.${operation}`, group, words: operationWords[operation] }
  const own = asked.entry.overrules[start.id]
  const number = own?.quantity ?? count
  const minutes = toHundredth(own?.minutes ?? number * times)
  const price = rateOf(book, asked, { start, rate })
  const overruled = own?.quantity !== undefined || own?.minutes !== undefined
  if (typeof price === 'string')
    return {
      ...missingLine(start, { quantity: minutes, unit: 'minute', missing: price, currency }),
      overruled,
    }
  const amount = toPence((minutes * price.pence) / 60)
  return {
    ...start,
    quantity: minutes,
    unit: 'minute',
    each: price.pence,
    pence: amount,
    priceId: price.id,
    missing: null,
    overruled,
    explain: () =>
      moneyFigure(amount, currency, {
        formula:
          own?.minutes === undefined
            ? 'number × minutes of each / 60 × price of an hour, to a whole penny'
            : 'minutes put by hand / 60 × price of an hour, to a whole penny',
        inputs: {
          ...(own?.minutes === undefined ? { number, ...inputs } : {}),
          minutes,
          ...asInput('an hour', price.pence, currency),
        },
        source: `${workshopSetting}: standard times; ${sourceOfPrice(book, price)}`,
      }),
  }
}

/** Kilometres driven, and a call-out sum for each visit where the workshop has one. */
function travelLines(book: StandingBook, asked: Asked): Costed[] {
  const { entry, settings } = asked
  const wanted: (Rated & { count: number })[] = []
  if (entry.kilometres > 0)
    wanted.push({
      start: { id: 'hanging.kilometres', group: 'hanging', words: 'Kilometres driven' },
      rate: 'kilometre',
      count: entry.kilometres,
    })
  if (entry.siteVisits > 0 && book.items.work('visit'))
    wanted.push({
      start: { id: 'hanging.call-out', group: 'hanging', words: 'Call-out' },
      rate: 'visit',
      count: entry.siteVisits,
    })
  return wanted.map(({ start, rate, count }) => {
    const price = rateOf(book, asked, { start, rate })
    if (typeof price === 'string')
      return missingLine(start, {
        quantity: count,
        unit: unitOfRate[rate],
        missing: price,
        currency: settings.currency,
      })
    const way = { price, quantity: count, formula: 'how many', inputs: {} }
    return boughtLine(start, way, { book, asked })
  })
}

/**
 * Work, a line an operation: how many × the standard minutes of one, at the rate of the bench or of the site. 68 fixings of 0.75 minutes at
 * £38.00 an hour are 51 minutes, £32.30. Finishing counts once a coat and only where there is a finish; visits are as entered.
 */
export function workLines(book: StandingBook, asked: Asked): Costed[] {
  const { needs, entry, times } = asked
  const coats = coatsOf(book, asked)
  const lines = needs.work.flatMap(({ operation, count }): Costed[] => {
    const each = times[operation]
    if (operation === 'finish square metre')
      return coats === 0
        ? []
        : [
            minutesLine(
              { operation, count, times: each * coats, inputs: { 'minutes of each coat': each, coats } },
              book,
              asked,
            ),
          ]
    const number = operation === 'site visit' ? entry.siteVisits : count
    if (number === 0) return []
    return [
      minutesLine(
        { operation, count: number, times: each, inputs: { 'minutes of each': each } },
        book,
        asked,
      ),
    ]
  })
  return [...lines, ...travelLines(book, asked)]
}
