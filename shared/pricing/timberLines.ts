import {
  boughtLine,
  cheapest,
  missingLine,
  type Asked,
  type Buying,
  type Costed,
  type Desk,
  type LineStart,
} from './costedLine.ts'
import { quotedLengthLine, wholeLengthLine } from './lengthLine.ts'
import type { TimberNeed } from './needs.ts'
import { sameSection } from './needsOf.ts'
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

/** The cheapest of several lines, the first where two come to the same. */
const cheapestLine = (lines: readonly Costed[]): Costed | undefined =>
  lines.reduce<Costed | undefined>(
    (best, line) => (best && best.pence <= line.pence ? best : line),
    undefined,
  )

/** Prices by who asks them, in the order in which each first did: as a rule they are all one's. */
function bySupplier(prices: readonly Price[]): (readonly Price[])[] {
  const suppliers = new Set(prices.map(({ supplierId }) => supplierId))
  if (suppliers.size === 1) return [prices]
  return [...suppliers].map((supplier) => prices.filter(({ supplierId }) => supplierId === supplier))
}

type Wanting = { start: LineStart; wanted: Wanted }

/** By net length and waste at the cheapest price of a metre. */
function wasteLine({ start, wanted }: Wanting, prices: readonly Price[], desk: Desk): Costed | undefined {
  const metre = prices.filter(({ unit }) => unit === 'metre')
  const way = cheapest(metre.flatMap((price) => byMetre(wanted, price, desk) ?? []))
  return way && boughtLine(start, way, desk)
}

/** By whole lengths at each supplier that keeps known ones, and by net length and waste at the others; the cheapest. */
const byLengths = (wanting: Wanting, offers: readonly Price[], desk: Desk): Costed | undefined =>
  cheapestLine(
    bySupplier(offers).flatMap((prices) => {
      const line = wholeLengthLine({ ...wanting.wanted, start: wanting.start }, prices, desk)
      if (line === 'no lengths') return wasteLine(wanting, prices, desk) ?? []
      return line === 'too short' ? [] : line
    }),
  )

/** By net length and waste where anyone sells by the metre, else by lengths that are priced each for itself. */
const byWaste = (wanting: Wanting, offers: readonly Price[], desk: Desk): Costed | undefined =>
  wasteLine(wanting, offers, desk) ??
  byLengths(
    wanting,
    offers.filter(({ unit }) => unit === 'length'),
    desk,
  )

/** The line of a frozen estimate is counted again as it was: the same lengths, or none; any other as the workshop counts. */
function countedLine(wanting: Wanting, offers: readonly Price[], desk: Desk): Costed | undefined {
  const { quotedLengths, settings } = desk.asked
  const { id } = wanting.start
  const lengthsWanted = { ...wanting.wanted, start: wanting.start }
  const quoted = quotedLengths?.has(id)
    ? cheapestLine(bySupplier(offers).flatMap((own) => quotedLengthLine(lengthsWanted, own, desk) ?? []))
    : undefined
  if (quoted) return quoted
  const whole = quotedLengths ? quotedLengths.has(id) : settings.timberBy === 'lengths'
  return whole ? byLengths(wanting, offers, desk) : byWaste(wanting, offers, desk)
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
  const offers = book.offersOf(item.id).filter(({ unit }) => unit === 'metre' || unit === 'length')
  if (offers.length === 0) return missing('no price')
  return countedLine({ start, wanted }, offers, desk) ?? missing('no length')
}

/**
 * Timber, a line a section, at the usual supplier's prices (else the cheapest): whole lengths where those kept are known, else net length and
 * waste; a workshop can have timber sold by the metre by net length and waste throughout. 14.20 m net with 10 % waste is 15.62 m; at £3.45
 * a metre that is £53.89. A line is missing where a piece is longer than any length kept.
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
