import { workshopSetting, type Figure } from '../gate/figures.ts'
import type { PriceBook } from './book.ts'
import { charge, chargeFigures, type Charged } from './charge.ts'
import { asInput, moneyFigure, type Asked, type Desk } from './costedLine.ts'
import { costedLines } from './costedLines.ts'
import type { Estimate, EstimateLine } from './estimate.ts'
import { tellPrice } from './offerLines.ts'
import { pence, sumPence, toPence, type Pence } from './pence.ts'
import { wholeBp } from './percent.ts'
import { standingBook, type StandingBook } from './standingBook.ts'
import { taxOn, taxRateOn, type Taxed } from './tax.ts'
import type { MoneySettings, TaxRounding } from './terms.ts'

const roundingWords: Record<TaxRounding, string> = {
  'total down': 'net × rate, the total rounded down to a whole penny',
  'total nearest': 'net × rate, the total to the nearest penny',
  'line down to 0.1':
    'each line × rate, rounded down to 0.1 of a penny; the total then down to a whole penny',
  'line nearest 0.5': 'each line × rate, to the nearest half penny; the total then down to a whole penny',
  'line nearest 1': 'each line × rate, to the nearest penny',
}

const taxSource = 'VAT Notice 700 para 17.5, as told in HMRC manual VATREC12010'

/** The rate on the day in basis points: 0 for a workshop that isn't registered, undefined where no rate has started. */
const rateOn = ({ tax }: MoneySettings, day: string): number | undefined =>
  tax.registered ? taxRateOn(tax.rates, day) : 0

/** What falls in tax at a rate, undefined where none has started. */
type RatedTax = Taxed & { bp: number | undefined }

/** How the tax was worked out, or why there is none. */
function taxFigure(net: Pence, { tax, totalTenths, bp }: RatedTax, settings: MoneySettings): Figure {
  const { currency, tax: terms } = settings
  if (!terms.registered)
    return moneyFigure(tax, currency, {
      formula: 'none: the workshop isn’t registered',
      inputs: asInput('net', net, currency),
      source: workshopSetting,
    })
  return moneyFigure(tax, currency, {
    formula: bp === undefined ? 'net × rate: no rate has started by this day' : roundingWords[terms.rounding],
    inputs: {
      ...asInput('net', net, currency),
      'rate %': (bp ?? 0) / 100,
      ...asInput('before rounding to a whole penny', totalTenths / 10, currency),
    },
    source: `${taxSource}; rates: ${workshopSetting}`,
  })
}

function depositOf(gross: Pence, bp: number, settings: MoneySettings): { deposit: Pence; how: Figure } {
  const deposit = toPence((gross * bp) / wholeBp)
  const how = moneyFigure(deposit, settings.currency, {
    formula: 'total with tax × deposit, to a whole penny',
    inputs: { ...asInput('total with tax', gross, settings.currency), 'deposit %': bp / 100 },
    source: workshopSetting,
  })
  return { deposit, how }
}

/** Everything after the lines: what is charged on them, tax, deposit. */
function totalled(lines: EstimateLine[], charged: Charged, { book, asked }: Desk): Estimate {
  const { entry, settings } = asked
  const on = book.day
  const { net, discount } = charged
  const bp = rateOn(settings, on)
  const told = tellPrice(lines, { price: pence(net + discount), discount })
  const taxed = taxOn(
    told.map((line) => line.net),
    bp ?? 0,
    settings.tax.rounding,
  )
  const gross = pence(net + taxed.tax)
  const { deposit, how } = depositOf(gross, entry.depositBp ?? settings.depositBp, settings)
  return {
    on,
    lines,
    ...charged,
    taxBp: bp ?? 0,
    taxTenths: taxed.totalTenths,
    tax: taxed.tax,
    gross,
    deposit,
    missing: [
      ...lines.filter(({ missing }) => missing !== null).map(({ id }) => id),
      ...(bp === undefined ? ['tax'] : []),
    ],
    how: {
      ...chargeFigures(charged, entry, settings),
      tax: taxFigure(net, { ...taxed, bp }, settings),
      deposit: how,
    },
  }
}

/** An estimate from a book that is already open on its day: for several options, or many quotations, of one book. */
export function estimateFrom(book: StandingBook, asked: Asked): Estimate {
  const lines = costedLines(book, asked).map(({ explain, ...line }): EstimateLine => ({
    ...line,
    how: explain(),
  }))
  const cost = sumPence(lines.map((line) => line.pence))
  return totalled(lines, charge(cost, asked.entry, asked.settings), { book, asked })
}

/**
 * The estimate of one option on a day: every line with its price and how it came about, then overhead, profit, discount, tax and deposit, each a
 * whole number of pennies, so that what is printed adds up. A line that nothing in the book prices comes to nothing and stands in
 * `missing`, as does 'tax' where the workshop is registered and no rate has started. buyTimber buys whole lengths where timber is
 * sold so (first fit unless given). Throws RangeError past ten million pounds.
 */
export const estimate = ({ book, day, ...asked }: Asked & { book: PriceBook; day: string }): Estimate =>
  estimateFrom(standingBook(book, day), asked)
