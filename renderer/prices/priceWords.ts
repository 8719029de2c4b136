import type { ItemKind, PriceItem } from '../../shared/pricing/item.ts'
import type { PriceLine, PriceUnit } from '../../shared/pricing/price.ts'
import { wholeBp, writePercent } from '../../shared/pricing/percent.ts'

/** The kinds of item as they are said. */
export const kindWords: Record<ItemKind, string> = {
  timber: 'Timber',
  ironmongery: 'Ironmongery',
  fixing: 'Fixings',
  finish: 'Finish',
  work: 'Work',
}

/** Units as they are chosen. */
export const unitWords: Record<PriceUnit, string> = {
  metre: 'by the metre',
  length: 'by the length',
  each: 'each',
  pair: 'a pair',
  box: 'by the box',
  tin: 'by the tin',
  hour: 'an hour',
  kilometre: 'a kilometre',
  visit: 'a visit',
}

const metres = (mm: number): string => `${Math.round(mm) / 1000} m`

/** What a price is for, in words: 'a metre', '3.6 m length', 'box of 200', '2.5 l tin'. */
export function perWords({ unit, size }: Pick<PriceLine, 'unit' | 'size'>): string {
  if (unit === 'length') return `${metres(size ?? 0)} length`
  if (unit === 'box') return `box of ${size}`
  if (unit === 'tin') return `${size} l tin`
  return unit === 'metre' ? 'a metre' : unitWords[unit]
}

/** A change in percent with its sign, to a tenth: 345 to 362 is '+4.9 %'. '' where there was nothing before. */
export function changeWords(before: number, after: number): string {
  if (before === 0) return ''
  const bp = Math.round(((after - before) * wholeBp) / before / 10) * 10
  return `${bp > 0 ? '+' : ''}${writePercent(bp)}`
}

/** What an item is beyond its name, in a few words: 'European redwood, ex 25 × 125'. */
export function factWords(item: PriceItem): string {
  switch (item.kind) {
    case 'timber': {
      const { species, exThickness, exWidth, treated } = item.facts
      return `${species}, ex ${exThickness} × ${exWidth}${treated ? ', treated' : ''}`
    }
    case 'fixing':
      return item.facts.form === 'other'
        ? ''
        : `${item.facts.form} ${item.facts.diameter} × ${item.facts.length}`
    case 'finish':
      return `${item.facts.coverage} m² a litre, ${item.facts.coats} ${item.facts.coats === 1 ? 'coat' : 'coats'}`
    case 'work':
      return 'your own rate'
    case 'ironmongery':
      return ''
  }
}
