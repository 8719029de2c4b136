import type { Estimate, EstimateLine, OfferLine } from './estimate.ts'
import { pence, type Pence } from './pence.ts'
import { splitPence } from './splitPence.ts'
import { taxOn } from './tax.ts'
import type { MoneySettings } from './terms.ts'

/** What the lines of an offer are called where the design doesn't say better. */
export type OfferWords = { gate: string; hanging: string; discount: string }
export const plainOfferWords: OfferWords = {
  gate: 'The gate, made',
  hanging: 'Visits and hanging',
  discount: 'Discount',
}

type Told = Pick<OfferLine, 'words' | 'net'>
type Cost = Pick<EstimateLine, 'group' | 'words' | 'pence'>

const costOf = (lines: readonly Cost[]): number => lines.reduce((sum, line) => sum + line.pence, 0)

/**
 * A price told in a few lines by their share of the cost: the gate, hanging it, each line of the joiner's own, then the discount taken
 * off. They add up to price − discount to the penny. Where what is taken off by hand leaves the gate below 0, one line tells all.
 */
export function tellPrice(
  lines: readonly Cost[],
  { price, discount }: { price: Pence; discount: Pence },
  words: OfferWords = plainOfferWords,
): Told[] {
  const hanging = costOf(lines.filter(({ group }) => group === 'hanging'))
  const own = lines.filter(({ group, pence }) => group === 'extras' && pence > 0)
  const gate = costOf(lines) - hanging - costOf(own)
  const parts = [
    { words: words.gate, weight: gate },
    { words: words.hanging, weight: hanging },
    ...own.map((line) => ({ words: line.words, weight: line.pence })),
  ].filter(({ weight }) => weight > 0)
  const told = gate < 0 || parts.length === 0 ? [{ words: words.gate, weight: 1 }] : parts
  const nets = splitPence(
    price,
    told.map(({ weight }) => weight),
  )
  const taken = discount === 0 ? [] : [{ words: words.discount, net: pence(0 - discount) }]
  return [...told.map((part, index) => ({ words: part.words, net: nets[index] as Pence })), ...taken]
}

/**
 * What the customer sees of an estimate: a few lines that add up to its net, with the tax that falls on each in tenths of a penny, adding
 * up to its taxTenths. A net of £552.00 on £300.00 of making and £100.00 of hanging is told as £414.00 and £138.00.
 */
export function offerLines({
  estimate,
  settings,
  words,
}: {
  estimate: Pick<Estimate, 'lines' | 'net' | 'discount' | 'taxBp'>
  settings: MoneySettings
  words?: OfferWords
}): OfferLine[] {
  const { lines, net, discount, taxBp } = estimate
  const told = tellPrice(lines, { price: pence(net + discount), discount }, words)
  const { tenths } = taxOn(
    told.map((line) => line.net),
    taxBp,
    settings.tax.rounding,
  )
  return told.map((line, index) => ({ ...line, taxTenths: tenths[index] as number }))
}
