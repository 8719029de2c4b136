import type { QuotedMoney, QuotedOption } from '../pricing/quotation.ts'
import { stacked, type Block } from './flow.ts'
import type { Measure } from './page.ts'
import { kept, prose, section, type } from './quotationLook.ts'
import { sharedLines, sumRows, taxedByLine, taxNotes, writeNet, writeTenths } from './quotationMoney.ts'
import { priceHead, priceRows, underHead, type PriceColumns, type PriceRow } from './quotationTable.ts'

/** Where a price is printed: the width it has, mm. */
export type PriceRoom = { width: number; measure: Measure }

/** Options side by side at most, so that each keeps room for its figures. */
export const mostAcross = 3

/** Options in rows of up to three. */
export function rowsOf<T>(all: readonly T[]): T[][] {
  const out: T[][] = []
  for (let i = 0; i < all.length; i += mostAcross) out.push(all.slice(i, i + mostAcross))
  return out
}

/** What an option is called: by its own name, else by its place. */
export const optionName = ({ name }: Pick<QuotedOption, 'name'>, index: number): string =>
  name.trim() === '' ? `Option ${index + 1}` : name.trim()

const sums = (money: QuotedMoney, shown: readonly QuotedOption[]): PriceRow[] =>
  sumRows(money).map(({ label, sum, strong }) => ({
    words: label,
    strong,
    figures: shown.map(({ estimate }) => sum(estimate)),
  }))

/** The lines of one offer with the tax on each. */
const taxedLines = ({ settings }: QuotedMoney, { offer }: QuotedOption): PriceRow[] =>
  offer.map(({ words, net, taxTenths }) => ({
    words,
    figures: [writeNet(net, settings.currency), writeTenths(taxTenths, settings)],
  }))

const notes = (money: QuotedMoney, room: PriceRoom): Block[] =>
  taxNotes(money).flatMap((text) => prose(text, { ...room, size: type.small, ink: 'grey', above: 1.4 }))

/** The price of the one way in which a gate is offered. */
function onePrice(money: QuotedMoney, option: QuotedOption, room: PriceRoom): Block[] {
  const byLine = taxedByLine(money.settings)
  const columns: PriceColumns = { ...room, figure: byLine ? 30 : 36, count: byLine ? 2 : 1 }
  const lines = byLine
    ? taxedLines(money, option)
    : option.offer.map(({ words, net }) => ({ words, figures: [writeNet(net, money.settings.currency)] }))
  const { registered, name } = money.settings.tax
  const titles = byLine ? [`without ${name}`, name] : registered ? [`without ${name}`] : []
  const head = titles.length > 0 ? priceHead(titles, columns) : undefined
  const below = sums(money, [option])
  const spaced = byLine ? below.map((row) => ({ ...row, figures: ['', ...row.figures] })) : below
  return together(underHead(head, priceRows([...lines, ...spaced], columns, below.length)))
}

/** Options side by side: their lines, where tax is on the total, and their sums. */
function sideBySidePrices(money: QuotedMoney, row: number, room: PriceRoom): Block[] {
  const shown = rowsOf(money.options)[row] ?? []
  const columns: PriceColumns = { ...room, figure: 34, count: shown.length }
  const lines: PriceRow[] = taxedByLine(money.settings)
    ? []
    : sharedLines(shown.map(({ offer }) => offer)).map(({ words, nets }) => ({
        words,
        figures: nets.map((net) => writeNet(net, money.settings.currency)),
      }))
  const below = sums(money, shown)
  const head = priceHead(
    shown.map((option, i) => optionName(option, row * mostAcross + i)),
    columns,
  )
  const rows = priceRows([...lines, ...below], columns, below.length)
  return together(underHead(row === 0 ? head : { ...head, above: 6 }, rows))
}

/** Most height at which a price is kept on one page, mm. */
const mostTogether = 130

/** A price in one piece, where it isn't too long for that. */
const together = (blocks: Block[]): Block[] =>
  stacked(blocks).height > mostTogether
    ? blocks
    : blocks.map((block, i) => (i < blocks.length - 1 ? kept(block) : block))

/** The lines of each option by themselves, with the tax on each and what the two columns come to. */
function linesByOption(money: QuotedMoney, room: PriceRoom): Block[] {
  const { settings, options } = money
  const { name } = settings.tax
  const columns: PriceColumns = { ...room, figure: 30, count: 2 }
  return options.flatMap((option, i) => [
    ...prose(optionName(option, i), { ...room, weight: 'semibold', above: 4 }).map(kept),
    ...underHead(
      priceHead([`without ${name}`, name], columns),
      priceRows(
        [
          ...taxedLines(money, option),
          {
            words: 'In all',
            quiet: true,
            figures: [
              writeNet(option.estimate.net, settings.currency),
              writeTenths(option.estimate.taxTenths, settings),
            ],
          },
        ],
        columns,
        1,
      ),
    ),
  ])
}

/** The price: its lines, net, tax and total, the deposit; options side by side for the customer to choose from. */
export function priceBlocks(money: QuotedMoney, room: PriceRoom): Block[] {
  const [only, ...others] = money.options
  if (only && others.length === 0)
    return [section('Price'), ...onePrice(money, only, room), ...notes(money, room)]
  return [
    section('Prices'),
    ...rowsOf(money.options).flatMap((_, row) => sideBySidePrices(money, row, room)),
    ...(taxedByLine(money.settings) ? linesByOption(money, room) : []),
    ...notes(money, room),
  ]
}
