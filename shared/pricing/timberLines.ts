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
  type Desk,
  type LineStart,
} from './costedLine.ts'
import type { TimberNeed } from './needs.ts'
import { sameSection } from './needsOf.ts'
import { pence, sumPence } from './pence.ts'
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

type Length = { price: Price; count: number; size: number }

/** Lengths of several sizes, each at its own price, as one line. */
function mixedLengths(
  start: LineStart,
  { bought, metres, inputs }: BoughtLengths,
  { book, asked }: Desk,
): Costed {
  const { currency } = asked.settings
  const amount = sumPence(bought.map(({ price, count }) => pence(price.pence * count)))
  const all = { ...inputs }
  for (const { price, count, size } of bought) {
    all[`lengths of ${size} mm`] = count
    Object.assign(all, asInput(`a length of ${size} mm`, price.pence, currency))
  }
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
      moneyFigure(amount, currency, {
        formula: 'sum of whole lengths × price of each',
        inputs: all,
        source: [...new Set(bought.map(({ price }) => sourceOfPrice(book, price)))].join('; '),
      }),
  }
}

type BoughtLengths = { bought: Length[]; metres: number; inputs: Record<string, number> }

/** Whole lengths of one supplier; undefined where a piece is longer than any of them. One size alone is a line at one price. */
function byLength(
  { start, wanted }: { start: LineStart; wanted: Wanted },
  prices: readonly Price[],
  desk: Desk,
): Costed | undefined {
  const { buyTimber = firstFit, cutting = usualCutting } = desk.asked
  const stock = prices.map((price) => ({ size: price.size ?? 0, pence: price.pence }))
  const plan = buyTimber({ pieces: wanted.pieces, stock, cutting })
  if (plan === null) return undefined
  const bought = plan.map(({ size, count }): Length => {
    const price = prices.find((one) => one.size === size)
    if (!price) throw new RangeError(`buyTimber buys lengths of the stock, got ${size} mm`)
    return { size, count, price }
  })
  const metres = bought.reduce((sum, { size, count }) => sum + size * count, 0) / 1000
  const inputs = {
    'net metres': wanted.netMetres,
    'metres bought': metres,
    'kerf mm': cutting.kerf,
    'end trim mm': cutting.endTrim,
  }
  const [only, ...others] = bought
  if (!only || others.length > 0) return mixedLengths(start, { bought, metres, inputs }, desk)
  const formula = `lengths of ${only.size} mm`
  return boughtLine(start, { price: only.price, quantity: only.count, metres, formula, inputs }, desk)
}

/** By whole lengths, the supplier at whom they come cheapest; the reason where there is none. */
function cheapestLengths(
  line: { start: LineStart; wanted: Wanted },
  offers: readonly Price[],
  desk: Desk,
): Costed | 'no price' | 'no length' {
  const sold = offers.filter(({ unit, size }) => unit === 'length' && size !== null)
  if (sold.length === 0) return 'no price'
  const suppliers = [...new Set(sold.map(({ supplierId }) => supplierId))]
  const fit = suppliers.flatMap((supplier) => {
    const own = sold.filter(({ supplierId }) => supplierId === supplier)
    return byLength(line, own, desk) ?? []
  })
  const [first, ...others] = fit
  return first ? others.reduce((best, way) => (way.pence < best.pence ? way : best), first) : 'no length'
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
  if (byTheMetre) return boughtLine(start, byTheMetre, desk)
  const found = cheapestLengths({ start, wanted }, offers, desk)
  if (typeof found !== 'string') return found
  return missing(metre.length > 0 ? 'no length' : found)
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
