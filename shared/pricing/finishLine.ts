import { buyTins } from './buyTins.ts'
import {
  asInput,
  boughtLine,
  cheapest,
  missingLine,
  moneyFigure,
  sourceOfPrice,
  type Asked,
  type Costed,
  type Desk,
  type LineStart,
} from './costedLine.ts'
import type { FinishFacts } from './item.ts'
import { pence, sumPence } from './pence.ts'
import type { Price } from './price.ts'
import type { StandingBook } from './standingBook.ts'

type Coating = { start: LineStart; area: number; coats: number; facts: FinishFacts; litres: number }

const inputsOf = ({ area, coats, facts, litres }: Coating) => ({
  'area m²': area,
  coats,
  'coverage m² a litre': facts.coverage,
  litres,
})

type BoughtTins = { price: Price; count: number }[]

/** Tins of several sizes, each at its own price, as one line. */
function mixedTins(coating: Coating, bought: BoughtTins, { book, asked }: Desk): Costed {
  const { currency } = asked.settings
  const amount = sumPence(bought.map(({ price, count }) => pence(price.pence * count)))
  const inputs: Record<string, number> = inputsOf(coating)
  for (const { price, count } of bought) {
    inputs[`tins of ${price.size} litres`] = count
    Object.assign(inputs, asInput(`a tin of ${price.size} litres`, price.pence, currency))
  }
  return {
    ...coating.start,
    quantity: coating.area,
    unit: 'm²',
    each: null,
    pence: amount,
    priceId: null,
    missing: null,
    overruled: false,
    explain: () =>
      moneyFigure(amount, currency, {
        formula: `${inWholeTins} × price of each`,
        inputs,
        source: [...new Set(bought.map(({ price }) => sourceOfPrice(book, price)))].join('; '),
      }),
  }
}

const inWholeTins = 'area × coats / coverage, in whole tins'

/** The cheapest whole tins: of one size a line at its price, of several a line with a price each. */
function byTin(coating: Coating, prices: readonly Price[], desk: Desk): Costed {
  const { counts } = buyTins(
    coating.litres,
    prices.map((price) => ({ litres: price.size ?? 0, pence: price.pence })),
  )
  const bought = prices
    .map((price, index) => ({ price, count: counts[index] ?? 0 }))
    .filter(({ count }) => count > 0)
  if (bought.length > 1) return mixedTins(coating, bought, desk)
  const { price, count } = bought[0] ?? { price: prices[0] as Price, count: 0 }
  const way = { price, quantity: count, formula: inWholeTins, inputs: inputsOf(coating) }
  return boughtLine(coating.start, way, desk)
}

/** The finish's part of a tin, of the size that is cheapest by the litre. */
function byShare(coating: Coating, prices: readonly Price[], desk: Desk): Costed {
  const way = cheapest(
    prices.map((price) => ({
      price,
      quantity: coating.litres / (price.size ?? 1),
      formula: 'area × coats / coverage / litres in a tin',
      inputs: { ...inputsOf(coating), 'litres in a tin': price.size ?? 1 },
    })),
  )
  if (!way) throw new RangeError('byShare needs at least one tin')
  return boughtLine(coating.start, way, desk)
}

/**
 * The finish that was chosen, none where none was: area × coats / coverage in litres, by the cheapest whole tins or by its share of a
 * tin. 9.46 m² in 2 coats at 12 m² a litre are 1.58 litres: one tin of 2.5, where no smaller one is cheaper.
 */
export function finishLines(book: StandingBook, asked: Asked): Costed[] {
  const { entry, needs, settings } = asked
  if (entry.finish === null) return []
  const item = book.items.byId(entry.finish.itemId)
  const area = needs.finish.areaM2
  const name = item?.kind === 'finish' ? item.name : 'Finish'
  const coats = entry.finish.coats ?? (item?.kind === 'finish' ? item.facts.coats : 1)
  const start: LineStart = {
    id: 'finish.coats',
    group: 'finish',
    words: `${name}, ${coats} ${coats === 1 ? 'coat' : 'coats'}`,
  }
  const missing = (why: 'no item' | 'no price') =>
    missingLine(start, { quantity: area, unit: 'm²', missing: why, currency: settings.currency })
  if (item?.kind !== 'finish') return [missing('no item')]
  const prices = book.offersOf(item.id).filter(({ unit, size }) => unit === 'tin' && size !== null)
  if (prices.length === 0) return [missing('no price')]
  const litres = (area * coats) / item.facts.coverage
  const coating: Coating = { start, area, coats, facts: item.facts, litres }
  return [(settings.finishBy === 'tin' ? byTin : byShare)(coating, prices, { book, asked })]
}

/** How many coats are put on, 0 where there is no finish. */
export function coatsOf(book: StandingBook, { entry }: Asked): number {
  if (entry.finish === null) return 0
  const item = book.items.byId(entry.finish.itemId)
  return entry.finish.coats ?? (item?.kind === 'finish' ? item.facts.coats : 1)
}
