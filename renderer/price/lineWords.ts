import { missingWords } from '../../shared/pricing/costedLine.ts'
import type { EstimateGroup, EstimateLine } from '../../shared/pricing/estimate.ts'
import type { ItemKind } from '../../shared/pricing/item.ts'
import { lengthsWords } from '../../shared/pricing/lengthsWords.ts'

/** The estimate's groups as they are said. */
export const groupWords: Record<EstimateGroup, string> = {
  timber: 'Timber',
  fixings: 'Fixings',
  ironmongery: 'Ironmongery',
  finish: 'Finish',
  making: 'Making',
  hanging: 'Measuring and hanging',
  extras: 'Lines of your own',
}

/** What a line is counted in, as it stands after its figure: '14.2 m', '75 min'. */
export const unitWords: Record<EstimateLine['unit'], string> = {
  metre: 'm',
  length: 'lengths',
  each: 'no.',
  pair: 'pairs',
  box: 'boxes',
  tin: 'tins',
  hour: 'h',
  kilometre: 'km',
  visit: 'visits',
  'm²': 'm²',
  minute: 'min',
}

/** What a price is for, as it stands after its sum: '£3.20 a metre'. */
export const eachWords: Record<EstimateLine['unit'], string> = {
  metre: 'a metre',
  length: 'a length',
  each: 'each',
  pair: 'a pair',
  box: 'a box',
  tin: 'a tin',
  hour: 'an hour',
  kilometre: 'a km',
  visit: 'a visit',
  'm²': 'a m²',
  minute: 'a minute',
}

/** What a line's price is for: work is counted in minutes and priced by the hour. */
export const eachUnit = ({ unit }: Pick<EstimateLine, 'unit'>): EstimateLine['unit'] =>
  unit === 'minute' ? 'hour' : unit

/** A line's own name, and why it has no price: an estimate tells both in one. */
export function namedApart({ words, missing }: Pick<EstimateLine, 'words' | 'missing'>): {
  name: string
  why: string
} {
  const why = missing === null ? '' : missingWords[missing]
  const told = `: ${why}`
  return why !== '' && words.endsWith(told)
    ? { name: words.slice(0, -told.length), why }
    : { name: words, why }
}

type Timber = Pick<EstimateLine, 'group' | 'overruled' | 'missing' | 'lengths' | 'how'>

/** How a line of timber is counted: the whole lengths bought, or net length and waste. Nothing is said of one put by hand or not priced. */
export function boughtWords({ group, overruled, missing, lengths, how }: Timber): string {
  if (group !== 'timber' || overruled || missing !== null) return ''
  if (lengths) return lengthsWords(lengths)
  const { 'net metres': net, 'waste %': waste } = how.inputs
  return net === undefined || waste === undefined ? '' : `${writeQuantity(net)} m net and ${waste} % waste`
}

/** Said once over lines of timber that whole lengths are bought for: the gate pays for all of each. */
export const chargedWhole = (lines: readonly Timber[]): string =>
  lines.some((line) => line.lengths && boughtWords(line) !== '')
    ? 'whole lengths as bought, what is left of them charged too'
    : ''

/** The lines of the price book that a group of the estimate is priced by. */
export const kindOfGroup: Record<EstimateGroup, ItemKind | undefined> = {
  timber: 'timber',
  fixings: 'fixing',
  ironmongery: 'ironmongery',
  finish: 'finish',
  making: 'work',
  hanging: 'work',
  extras: undefined,
}

/** A quantity to a hundredth, without closing noughts: 14.2, 3, 0.37. */
export const writeQuantity = (quantity: number): string => String(Math.round(quantity * 100) / 100)

/** A quantity as typed: 14.2 or 14,2, not below 0. Undefined where it can't be read. */
export function readQuantity(text: string): number | undefined {
  const digits = text.replace(/[\s a-z²]/gi, '').replace(',', '.')
  return /^(\d+(\.\d*)?|\.\d+)$/.test(digits) ? Number(digits) : undefined
}
