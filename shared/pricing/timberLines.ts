import { firstFit, usualCutting } from './buyTimber.ts'
import {
  asInput,
  boughtLine,
  cheapest,
  missingLine,
  moneyFigure,
  sourceOfPrice,
  type Asked,
  type Buying,
  type Costed,
  type LineStart,
} from './costedLine.ts'
import type { TimberNeed } from './needs.ts'
import { sameSection } from './needsOf.ts'
import { pence } from './pence.ts'
import { wholeBp } from './percent.ts'
import type { Price } from './price.ts'
import type { StandingBook } from './standingBook.ts'

type Wanted = TimberNeed & { netMetres: number; metres: number; longest: number }

/** Metres to a hundredth, up: what is printed is what is multiplied. */
const upToHundredth = (metres: number): number => Math.ceil(metres * 100 - 1e-6) / 100

/** Needs of one section as one line, whatever the pieces are for: they come off the same lengths. */
function bySection(needs: readonly TimberNeed[]): TimberNeed[] {
  const merged: TimberNeed[] = []
  for (const need of needs) {
    const at = merged.findIndex((one) => sameSection(one.section, need.section))
    const own = merged[at]
    if (own) merged[at] = { ...own, pieces: [...own.pieces, ...need.pieces] }
    else merged.push(need)
  }
  return merged
}

function wantedOf(need: TimberNeed, wasteBp: number): Wanted {
  const netMetres = need.pieces.reduce((sum, { length, quantity }) => sum + length * quantity, 0) / 1000
  const longest = need.pieces.reduce((most, { length }) => Math.max(most, length), 0)
  return { ...need, netMetres, longest, metres: upToHundredth((netMetres * (wholeBp + wasteBp)) / wholeBp) }
}

/** Sold by the metre: net length and the workshop's waste. undefined where a piece is longer than any length kept. */
function byMetre(wanted: Wanted, price: Price, { book, asked }: Desk): Buying | undefined {
  const lengths = book.supplyOf(price.itemId, price.supplierId)?.lengths ?? []
  if (lengths.length > 0 && wanted.longest > Math.max(...lengths) + 1e-6) return undefined
  return {
    price,
    quantity: wanted.metres,
    metres: wanted.metres,
    formula: '(net metres + waste, up to 0.01 m)',
    inputs: { 'net metres': wanted.netMetres, 'waste %': asked.settings.wasteBp / 100 },
  }
}

type Desk = { book: StandingBook; asked: Asked }

/** Whole lengths of one supplier. One size alone is a line at one price; several together have a price each. */
function byLength(
  start: LineStart,
  wanted: Wanted,
  prices: readonly Price[],
  { book, asked }: Desk,
): Costed | null {
  const { buyTimber = firstFit, cutting = usualCutting, settings } = asked
  const stock = prices.map((price) => ({ size: price.size ?? 0, pence: price.pence }))
  const bought = buyTimber({ pieces: wanted.pieces, stock, cutting })
  if (bought === null) return null
  const priceOf = (size: number) => prices.find((price) => price.size === size) as Price
  const metres = bought.reduce((sum, { size, count }) => sum + size * count, 0) / 1000
  const inputs = { 'net metres': wanted.netMetres, 'metres bought': metres }
  const [only, ...others] = bought
  if (only && others.length === 0)
    return boughtLine(
      start,
      {
        price: priceOf(only.size),
        quantity: only.count,
        metres,
        formula: `lengths of ${only.size} mm`,
        inputs: { ...inputs, 'kerf mm': cutting.kerf, 'end trim mm': cutting.endTrim },
      },
      book,
      settings.currency,
    )
  const amount = pence(bought.reduce((sum, { size, count }) => sum + count * priceOf(size).pence, 0))
  const first = priceOf(bought[0]?.size ?? 0)
  return {
    ...start,
    quantity: metres,
    unit: 'metre',
    each: null,
    pence: amount,
    priceId: null,
    missing: null,
    overruled: false,
    metres,
    explain: () =>
      moneyFigure(amount, settings.currency, {
        formula: 'sum of whole lengths × price of each',
        inputs: bought.reduce(
          (all, { size, count }) => ({
            ...all,
            [`lengths of ${size} mm`]: count,
            ...asInput(`a length of ${size} mm`, priceOf(size).pence, settings.currency),
          }),
          inputs,
        ),
        source: sourceOfPrice(book, first),
      }),
  }
}

/** Every supplier's lengths as one way to buy each. */
function lengthWays(
  start: LineStart,
  wanted: Wanted,
  offers: readonly Price[],
  desk: Desk,
): (Costed | null)[] {
  const sold = offers.filter(({ unit, size }) => unit === 'length' && size !== null)
  const suppliers = [...new Set(sold.map(({ supplierId }) => supplierId))]
  return suppliers.map((supplier) =>
    byLength(
      start,
      wanted,
      sold.filter(({ supplierId }) => supplierId === supplier),
      desk,
    ),
  )
}

function timberLine(need: TimberNeed, id: string, desk: Desk): Costed {
  const { book, asked } = desk
  const { currency, wasteBp } = asked.settings
  const wanted = wantedOf(need, wasteBp)
  const start: LineStart = { id, group: 'timber', words: `${need.section.name}, ${need.section.species}` }
  const missing = (why: 'no item' | 'no price' | 'no length') =>
    missingLine(start, {
      quantity: wanted.metres,
      unit: 'metre',
      missing: why,
      currency,
      metres: wanted.metres,
    })
  const chosen = asked.entry.chosen[id]
  const item = chosen === undefined ? book.items.timber(need) : book.items.byId(chosen)
  if (item?.kind !== 'timber') return missing('no item')
  const offers = book.offersOf(item.id)
  const metre = offers.filter(({ unit }) => unit === 'metre')
  const byTheMetre = cheapest(metre.flatMap((price) => byMetre(wanted, price, desk) ?? []))
  if (byTheMetre) return boughtLine(start, byTheMetre, book, currency)
  const ways = lengthWays(start, wanted, offers, desk)
  const fit = ways.flatMap((way) => way ?? [])
  if (fit.length === 0) return missing(metre.length + ways.length > 0 ? 'no length' : 'no price')
  return fit.reduce((best, way) => (way.pence < best.pence ? way : best))
}

/**
 * Timber, a line a section, at the usual supplier's prices (else the cheapest): by the metre as net length and waste, or by whole
 * lengths. 14.20 m net with 10 % waste is 15.62 m; at £3.45 a metre that is £53.89. A line is missing where a piece is longer than any
 * length kept.
 */
export function timberLines(book: StandingBook, asked: Asked): Costed[] {
  const taken = new Map<string, number>()
  return bySection(asked.needs.timber).map((need) => {
    const name = need.section.name
    const count = (taken.get(name) ?? 0) + 1
    taken.set(name, count)
    return timberLine(need, `timber.${name}${count === 1 ? '' : ` (${count})`}`, { book, asked })
  })
}
