import { firstFit, usualCutting, type BoughtLength } from './buyTimber.ts'
import { asInput, moneyFigure, sourceOfPrice, type Costed, type Desk, type LineStart } from './costedLine.ts'
import { lengthsSold, soldLength, type SoldLength } from './lengthsSold.ts'
import { pence, sumPence, toPence, type Pence } from './pence.ts'
import type { Price } from './price.ts'
import type { StandingBook } from './standingBook.ts'

/** What a line of timber is wanted for: its blanks, mm, and their length in all, m. */
export type LengthsWanted = {
  start: LineStart
  pieces: readonly { length: number; quantity: number }[]
  netMetres: number
}

/** How the lengths came about, as the line's working tells it. */
type Chosen = 'proven' | 'found' | 'quoted'
const chosenWords: Record<Chosen, string> = {
  proven: 'lengths by the buying plan, proven the cheapest',
  found: 'lengths by the cheapest plan found, not proven',
  quoted: 'lengths as they were quoted',
}

type Bought = { lengths: readonly BoughtLength[]; prices: readonly Price[]; chosen: Chosen }
type Row = SoldLength & { count: number }

/** Lengths bought, each with its price; undefined where one of them isn't sold. */
function rowsOf(book: StandingBook, { lengths, prices }: Bought): Row[] | undefined {
  const rows: Row[] = []
  for (const { size, count } of lengths) {
    const own = soldLength(book, prices, size)
    if (!own) return undefined
    rows.push({ ...own, count })
  }
  return rows
}

type Counted = Pick<Costed, 'quantity' | 'unit' | 'each' | 'priceId'>

/**
 * How the line is counted: in metres where all of it rests on the price of a metre (told where it comes to the sum to the penny), in lengths
 * where all are alike, and in metres without one price where several are bought.
 */
function countedBy(rows: readonly Row[], metres: number, amount: Pence): Counted {
  const [first] = rows
  const one = first && rows.every(({ price }) => price === first.price) ? first.price : undefined
  if (one?.unit === 'metre') {
    const each = toPence(metres * one.pence) === amount ? one.pence : null
    return { quantity: metres, unit: 'metre', each, priceId: one.id }
  }
  if (one && first && rows.length === 1)
    return { quantity: first.count, unit: 'length', each: one.pence, priceId: one.id }
  return { quantity: metres, unit: 'metre', each: null, priceId: null }
}

/** The numbers that a line of whole lengths is worked from. */
function inputsOf(
  rows: readonly Row[],
  { netMetres, metres, chosen }: { netMetres: number; metres: number; chosen: Chosen },
  { asked }: Desk,
): Record<string, number> {
  const { kerf, endTrim } = asked.cutting ?? usualCutting
  const { currency } = asked.settings
  const inputs: Record<string, number> = { 'net metres': netMetres, 'metres bought': metres }
  if (chosen !== 'quoted') Object.assign(inputs, { 'kerf mm': kerf, 'end trim mm': endTrim })
  for (const { size, count, pence: own } of rows) {
    inputs[`lengths of ${size} mm`] = count
    Object.assign(inputs, asInput(`a length of ${size} mm`, own, currency))
  }
  for (const { price } of rows)
    if (price.unit === 'metre') Object.assign(inputs, asInput('a metre', price.pence, currency))
  return inputs
}

/** Whole lengths as one line, at the sum of what each costs; undefined where one of them isn't sold. */
function lengthLine({ start, netMetres }: LengthsWanted, bought: Bought, desk: Desk): Costed | undefined {
  const rows = rowsOf(desk.book, bought)
  if (!rows) return undefined
  const metres = rows.reduce((sum, { size, count }) => sum + size * count, 0) / 1000
  const amount = sumPence(rows.map((row) => pence(row.pence * row.count)))
  const { chosen, lengths } = bought
  return {
    ...start,
    ...countedBy(rows, metres, amount),
    pence: amount,
    missing: null,
    overruled: false,
    metres,
    lengths,
    explain: () => {
      const sources = new Set(rows.map(({ price }) => sourceOfPrice(desk.book, price)))
      return moneyFigure(amount, desk.asked.settings.currency, {
        formula: 'sum of whole lengths × price of each, what is left of them charged too',
        inputs: inputsOf(rows, { netMetres, metres, chosen }, desk),
        source: [...sources, chosenWords[chosen]].join('; '),
      })
    },
  }
}

/** The lengths that a frozen estimate bought, at one supplier's prices; undefined where none were, or one of them isn't sold. */
export function quotedLengthLine(
  wanted: LengthsWanted,
  prices: readonly Price[],
  desk: Desk,
): Costed | undefined {
  const lengths = desk.asked.quotedLengths?.get(wanted.start.id)
  return lengths && lengthLine(wanted, { lengths, prices, chosen: 'quoted' }, desk)
}

/**
 * Whole lengths worked out anew from one supplier's prices. 'no lengths' where none are known, 'too short' where a piece is longer than any
 * of them.
 */
export function wholeLengthLine(
  wanted: LengthsWanted,
  prices: readonly Price[],
  desk: Desk,
): Costed | 'no lengths' | 'too short' {
  const { buyTimber = firstFit, cutting = usualCutting } = desk.asked
  const sold = lengthsSold(desk.book, prices)
  if (sold.length === 0) return 'no lengths'
  const stock = sold.map(({ size, pence: own }) => ({ size, pence: own }))
  const purchase = buyTimber({ pieces: wanted.pieces, stock, cutting })
  if (!purchase) return 'too short'
  const { lengths, proven } = purchase
  const line = lengthLine(wanted, { lengths, prices, chosen: proven ? 'proven' : 'found' }, desk)
  if (!line) throw new RangeError('buyTimber buys lengths of the stock alone')
  return line
}
