import type { Estimate, OfferLine } from '../pricing/estimate.ts'
import { writeMoney } from '../pricing/moneyText.ts'
import { pence } from '../pricing/pence.ts'
import { writePercent } from '../pricing/percent.ts'
import type { QuotedMoney } from '../pricing/quotation.ts'
import type { Currency, MoneySettings } from '../pricing/terms.ts'

/** Whether tax is worked out and rounded on each line, so that each line's is shown. */
export const taxedByLine = ({ tax }: MoneySettings): boolean =>
  tax.registered && tax.rounding.startsWith('line')

/** A line's tax with its tenth of a penny: 594 tenths in pounds is £0.594. Rounded to whole pennies it goes without. */
export function writeTenths(tenths: number, { currency, tax }: MoneySettings): string {
  const size = Math.abs(tenths)
  const whole = writeMoney(pence(Math.floor(size / 10)), currency)
  const tenth = tax.rounding === 'line nearest 1' && size % 10 === 0 ? '' : String(size % 10)
  return `${tenths < 0 ? '−' : ''}${whole}${tenth}`
}

/** A line under a price: what it is, and its sum by option. strong: the one to be paid. */
export type SumRow = { label: string; sum: (estimate: Estimate) => string; strong?: boolean }

/** What the tax is called with its rate: 'VAT at 20 %'. Its rate is left out where options differ in it. */
function taxLabel({ settings, options }: QuotedMoney): string {
  const rates = new Set(options.map(({ estimate }) => estimate.taxBp))
  const [rate] = rates
  const { name } = settings.tax
  return rates.size === 1 && rate !== undefined ? `${name} at ${writePercent(rate)}` : name
}

/**
 * The sums under the lines of a price: net, tax and total, or the total alone where no tax is charged; then the deposit and what is left
 * to pay, where one is asked for. Each is a sum of what is printed over it.
 */
export function sumRows(money: QuotedMoney): SumRow[] {
  const { settings, options } = money
  const write = (amount: number): string => writeMoney(pence(amount), settings.currency)
  const { registered, name } = settings.tax
  const taxed: SumRow[] = registered
    ? [
        { label: `Price without ${name}`, sum: ({ net }) => write(net) },
        { label: taxLabel(money), sum: ({ tax }) => write(tax) },
      ]
    : []
  const deposits: SumRow[] = options.some(({ estimate }) => estimate.deposit > 0)
    ? [
        { label: 'Deposit with your order', sum: ({ deposit }) => write(deposit) },
        { label: 'Balance when the work is done', sum: ({ gross, deposit }) => write(gross - deposit) },
      ]
    : []
  return [
    ...taxed,
    { label: registered ? `Total with ${name}` : 'Total', sum: ({ gross }) => write(gross), strong: true },
    ...deposits,
  ]
}

/** One line of several offers side by side: its words, and its net sum in each option, null where an option hasn't got it. */
export type SharedLine = { words: string; nets: (number | null)[] }

/** Lines of the same words set in one row, in the order of the option that has them first; a line said twice keeps its two rows. */
export function sharedLines(offers: readonly (readonly OfferLine[])[]): SharedLine[] {
  const rows: SharedLine[] = []
  offers.forEach((offer, option) => {
    let after = -1
    for (const { words, net } of offer) {
      let at = rows.findIndex((row) => row.words === words && row.nets[option] === null)
      if (at < 0) {
        at = after + 1
        rows.splice(at, 0, { words, nets: offers.map(() => null) })
      }
      const row = rows[at]
      if (row) row.nets[option] = net
      after = Math.max(after, at)
    }
  })
  return rows
}

/** A net sum in a column; a dash where there is none. */
export const writeNet = (net: number | null, currency: Currency): string =>
  net === null ? '–' : writeMoney(pence(net), currency)

/** What has to be said of the tax under a price: how it was rounded where that shows, and the workshop's number. */
export function taxNotes({ settings, options }: QuotedMoney): string[] {
  const { registered, name, number } = settings.tax
  if (!registered) return []
  const byLine = taxedByLine(settings)
    ? [
        `${name} is worked out on each line${
          options.length === 1 && options[0]
            ? `, ${writeTenths(options[0].estimate.taxTenths, settings)} in all`
            : ''
        }${settings.tax.rounding === 'line nearest 1' ? '' : '; its total is taken down to a whole penny'}.`,
      ]
    : []
  return [...byLine, ...(number.trim() === '' ? [] : [`${name} registration number ${number.trim()}`])]
}
