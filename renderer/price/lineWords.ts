import type { EstimateGroup, EstimateLine, Missing } from '../../shared/pricing/estimate.ts'
import type { ItemKind } from '../../shared/pricing/item.ts'

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

/** Why a line has no price, and so what to do. */
export const missingWords: Record<Missing, string> = {
  'no item': 'not in the price book',
  'no price': 'no price in the book',
}

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
  const digits = text
    .replace(/[\s a-z²]/gi, '')
    .replace(',', '.')
  return /^(\d+(\.\d*)?|\.\d+)$/.test(digits) ? Number(digits) : undefined
}
