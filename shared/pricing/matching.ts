import type { PriceBook } from './book.ts'
import type { ItemOf, PriceItem, WorkRate } from './item.ts'
import type { FixingNeed, IronmongeryNeed, TimberNeed } from './needs.ts'

/** Which items of a book fit what a gate needs. Retired items fit nothing; of two that fit, the first in the book. */
export type Matching = {
  byId: (id: number) => PriceItem | undefined
  timber: (need: Pick<TimberNeed, 'section' | 'use' | 'sawnToShape'>) => ItemOf<'timber'> | undefined
  fixing: (need: Pick<FixingNeed, 'form' | 'diameter' | 'length'>) => ItemOf<'fixing'> | undefined
  ironmongery: (need: Pick<IronmongeryNeed, 'piece' | 'name'>) => ItemOf<'ironmongery'> | undefined
  work: (rate: WorkRate) => ItemOf<'work'> | undefined
}

/** Sizes that agree to a hundredth of a millimetre are one size. */
const hundredths = (mm: number): number => Math.round(mm * 100)
const word = (text: string): string => text.trim().toLowerCase()

type TimberItem = ItemOf<'timber'>
const timberKey = (species: string, thickness: number): string => `${word(species)}|${hundredths(thickness)}`
const fixingKey = ({ form, diameter, length }: { form: string; diameter: number; length: number }): string =>
  `${form}|${hundredths(diameter)}|${hundredths(length)}`

function push<K, T>(lists: Map<K, T[]>, key: K, one: T): void {
  const list = lists.get(key)
  if (list) list.push(one)
  else lists.set(key, [one])
}

/** Exactly the section, tongued or not as it is; one kept for the same use before others. */
function exactTimber(items: readonly TimberItem[], { section, use }: Pick<TimberNeed, 'section' | 'use'>) {
  const tongued = (section.tongue ?? 0) > 0
  const fit = items.filter(
    ({ facts }) =>
      hundredths(facts.width) === hundredths(section.width) && (facts.tongue ?? 0) > 0 === tongued,
  )
  return fit.find(({ facts }) => facts.use === use) ?? fit[0]
}

/** The narrowest square-edged section that is at least as wide. */
const wideTimber = (items: readonly TimberItem[], width: number): TimberItem | undefined =>
  items
    .filter(({ facts }) => hundredths(facts.width) >= hundredths(width) && (facts.tongue ?? 0) === 0)
    .sort((a, b) => a.facts.width - b.facts.width || a.id - b.id)[0]

/**
 * Goes through a book's items once, so that each need finds its item at once: timber by species, thickness, width (a board's cover) and
 * tongue; fixings by form and size; ironmongery by its piece's id, else by its name; work by its rate.
 */
export function matching({ items }: Pick<PriceBook, 'items'>): Matching {
  const byId = new Map<number, PriceItem>()
  const timber = new Map<string, TimberItem[]>()
  const fixings = new Map<string, ItemOf<'fixing'>>()
  const pieces = new Map<string, ItemOf<'ironmongery'>>()
  const names = new Map<string, ItemOf<'ironmongery'>>()
  const rates = new Map<WorkRate, ItemOf<'work'>>()
  const keep = <K, T>(map: Map<K, T>, key: K, item: T) => void (map.has(key) || map.set(key, item))
  for (const item of items) {
    byId.set(item.id, item)
    if (item.retired) continue
    if (item.kind === 'timber') push(timber, timberKey(item.facts.species, item.facts.thickness), item)
    else if (item.kind === 'fixing') keep(fixings, fixingKey(item.facts), item)
    else if (item.kind === 'work') keep(rates, item.facts.rate, item)
    else if (item.kind === 'ironmongery') {
      if (item.facts.piece !== null) keep(pieces, item.facts.piece, item)
      keep(names, word(item.name), item)
    }
  }
  return {
    byId: (id) => byId.get(id),
    timber: (need) => {
      const alike = timber.get(timberKey(need.section.species, need.section.thickness)) ?? []
      return (
        exactTimber(alike, need) ?? (need.sawnToShape ? wideTimber(alike, need.section.width) : undefined)
      )
    },
    fixing: (need) => fixings.get(fixingKey(need)),
    ironmongery: ({ piece, name }) => pieces.get(piece) ?? names.get(word(name)),
    work: (rate) => rates.get(rate),
  }
}
