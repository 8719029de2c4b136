import type { ItemKind, PriceItem, WorkRate } from './item.ts'
import type { PriceUnit } from './price.ts'

/** The units that a kind of item can be priced in, the usual one first: those that an estimate can buy it by. */
export const unitsOf: Record<ItemKind, PriceUnit[]> = {
  timber: ['metre', 'length'],
  ironmongery: ['each', 'pair', 'box'],
  fixing: ['box', 'each'],
  finish: ['tin'],
  work: ['hour', 'kilometre', 'visit'],
}

/** The unit that each of the workshop's own rates is told in. */
export const unitOfRate: Record<WorkRate, PriceUnit> = {
  hour: 'hour',
  'site hour': 'hour',
  kilometre: 'kilometre',
  visit: 'visit',
}

/** The units that one item can be priced in: its kind's, or the only one that its rate is told in. */
export const unitsFor = (item: Pick<PriceItem, 'kind' | 'facts'>): readonly PriceUnit[] =>
  'rate' in item.facts ? [unitOfRate[item.facts.rate]] : unitsOf[item.kind]
