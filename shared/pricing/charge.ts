import { workshopSetting, type Figure } from '../gate/figures.ts'
import { asInput, moneyFigure } from './costedLine.ts'
import { pence, toPence, type Pence } from './pence.ts'
import { wholeBp } from './percent.ts'
import { bothWays, profitOn } from './profit.ts'
import type { Currency, Discount, EstimateEntry, MoneySettings, Profit } from './terms.ts'

/** What is put on a cost before tax. price = cost + overhead + profit; net = price − discount. */
export type Charged = {
  cost: Pence
  overhead: Pence
  profit: Pence
  discount: Pence
  net: Pence
  asked: Profit
  markupBp: number
  marginBp: number
}

/** What is taken off a price: never more than the price itself, and nothing off a price below 0. */
function discountOn(price: Pence, discount: Discount | null): Pence {
  if (discount === null || price <= 0) return pence(0)
  return discount.by === 'sum'
    ? pence(Math.min(discount.pence, price))
    : toPence((price * Math.min(discount.bp, wholeBp)) / wholeBp)
}

/**
 * Overhead, profit and discount on a cost, each to a whole penny. A cost of £400.00 with 15 % overhead and 20 % markup: £60.00, £92.00, net
 * £552.00; with 5 % off, £27.60 less.
 */
export function charge(
  cost: Pence,
  entry: Pick<EstimateEntry, 'profit' | 'discount'>,
  settings: MoneySettings,
): Charged {
  const asked = entry.profit ?? settings.profit
  const overhead = toPence((cost * settings.overheadBp) / wholeBp)
  const profit = profitOn(pence(cost + overhead), asked)
  const price = pence(cost + overhead + profit)
  const discount = discountOn(price, entry.discount)
  return { cost, overhead, profit, discount, net: pence(price - discount), asked, ...bothWays(asked) }
}

function profitFigure(
  { cost, overhead, profit, asked, markupBp, marginBp }: Charged,
  currency: Currency,
): Figure {
  return moneyFigure(profit, currency, {
    formula:
      asked.by === 'markup'
        ? '(cost + overhead) × markup, to a whole penny'
        : '(cost + overhead) × margin / (100 % − margin), to a whole penny',
    inputs: {
      ...asInput('cost', cost, currency),
      ...asInput('overhead', overhead, currency),
      'markup %': markupBp / 100,
      'margin %': marginBp / 100,
    },
    source: workshopSetting,
  })
}

function discountFigure(charged: Charged, given: Discount | null, currency: Currency): Figure {
  const price = asInput('price before discount', charged.net + charged.discount, currency)
  const formula =
    given === null
      ? 'none given'
      : given.by === 'sum'
        ? 'sum put by hand, no more than the price'
        : 'price × discount, to a whole penny'
  return moneyFigure(charged.discount, currency, {
    formula,
    inputs: given?.by === 'percent' ? { ...price, 'discount %': given.bp / 100 } : price,
    source: workshopSetting,
  })
}

/** How overhead, profit and discount were worked out. */
export function chargeFigures(
  charged: Charged,
  entry: Pick<EstimateEntry, 'discount'>,
  { currency, overheadBp }: MoneySettings,
): Record<'overhead' | 'profit' | 'discount', Figure> {
  return {
    overhead: moneyFigure(charged.overhead, currency, {
      formula: 'cost × overhead, to a whole penny',
      inputs: { ...asInput('cost', charged.cost, currency), 'overhead %': overheadBp / 100 },
      source: workshopSetting,
    }),
    profit: profitFigure(charged, currency),
    discount: discountFigure(charged, entry.discount, currency),
  }
}
