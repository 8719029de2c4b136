import type { PriceBook } from './book.ts'
import type { Estimate, EstimateLine } from './estimate.ts'
import type { QuotedMoney, QuotedOption, RequotedLine } from './quotation.ts'
import { quotedAgain } from './quotedAgain.ts'
import { standingBook, type StandingBook } from './standingBook.ts'
import { estimateFrom } from './workEstimate.ts'

/** A quoted option priced again from an open book, at another day's prices. */
export const repriced = (book: StandingBook, money: QuotedMoney, option: QuotedOption): Estimate =>
  estimateFrom(book, quotedAgain(money, option))

/** What a line came to; null where it has no price. */
const sumOf = (line: EstimateLine | undefined): number | null =>
  line === undefined || line.missing !== null ? null : line.pence

/** Lines of two estimates by their id, in the order of the first, what only the second has behind. */
function pairs(before: Estimate, after: Estimate): [EstimateLine | undefined, EstimateLine | undefined][] {
  const now = new Map(after.lines.map((line) => [line.id, line]))
  const known = new Set(before.lines.map(({ id }) => id))
  return [
    ...before.lines.map((line): [EstimateLine, EstimateLine | undefined] => [line, now.get(line.id)]),
    ...after.lines
      .filter(({ id }) => !known.has(id))
      .map((line): [undefined, EstimateLine] => [undefined, line]),
  ]
}

function requotedOption(option: QuotedOption, after: Estimate, taxName: string | null): RequotedLine[] {
  const before = option.estimate
  const whole = after.missing.length === 0
  const total = (words: string, then: number, now: number): RequotedLine => ({
    option: option.name,
    words,
    before: then,
    after: whole ? now : null,
  })
  return [
    ...pairs(before, after).map(([then, now]) => ({
      option: option.name,
      words: (then ?? now)?.words ?? '',
      before: sumOf(then),
      after: sumOf(now),
    })),
    total('Overhead', before.overhead, after.overhead),
    total('Profit', before.profit, after.profit),
    ...(before.discount + after.discount === 0
      ? []
      : [total('Discount', 0 - before.discount, 0 - after.discount)]),
    total(taxName === null ? 'Total' : `Total before ${taxName}`, before.net, after.net),
    ...(taxName === null
      ? []
      : [total(taxName, before.tax, after.tax), total(`Total with ${taxName}`, before.gross, after.gross)]),
  ]
}

/**
 * A quotation at a day's prices, line by line beside what it was: lines of cost, overhead, profit, discount and totals of each option.
 * before or after is null where a line has no price; with one of them none of the totals after can be told. The frozen
 * needs, entry, settings, times and lengths of timber are used, so that nothing but prices and the rate of tax can differ.
 */
export function requote(money: QuotedMoney, book: PriceBook, day: string): RequotedLine[] {
  const open = standingBook(book, day)
  const { tax } = money.settings
  const taxName = tax.registered ? tax.name : null
  return money.options.flatMap((option) => requotedOption(option, repriced(open, money, option), taxName))
}
