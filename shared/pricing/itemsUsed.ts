import type { Asked } from './costedLine.ts'
import type { StandingBook } from './standingBook.ts'
import { workRates } from './item.ts'
import { operationRates } from './needs.ts'

/** Whether an estimate could rest on any of some items: those its needs find in the book, those chosen by hand, its finish. */
export function restsOn(
  { items }: StandingBook,
  { needs, entry }: Asked,
  among: (itemId: number) => boolean,
): boolean {
  const isOne = (item: { id: number } | undefined): boolean => item !== undefined && among(item.id)
  if (entry.finish !== null && among(entry.finish.itemId)) return true
  for (const id in entry.chosen) if (among(entry.chosen[id] as number)) return true
  return (
    needs.timber.some((need) => isOne(items.timber(need))) ||
    needs.ironmongery.some((need) => isOne(items.ironmongery(need))) ||
    needs.fixings.some((need) => isOne(items.fixing(need))) ||
    needs.work.some(({ operation }) => isOne(items.work(operationRates[operation]))) ||
    isOne(items.work('kilometre')) ||
    isOne(items.work('visit'))
  )
}

/** The items of the book that an estimate may rest on: those its needs find in the book, those chosen by hand, its finish, every rate. */
export function itemsUsed(
  { items }: Pick<StandingBook, 'items'>,
  { needs, entry }: Pick<Asked, 'needs' | 'entry'>,
): number[] {
  const found = [
    ...needs.timber.map((need) => items.timber(need)),
    ...needs.ironmongery.map((need) => items.ironmongery(need)),
    ...needs.fixings.map((need) => items.fixing(need)),
    ...workRates.map((rate) => items.work(rate)),
  ]
  const byHand = [...Object.values(entry.chosen), ...(entry.finish ? [entry.finish.itemId] : [])]
  return [...found.flatMap((item) => (item ? [item.id] : [])), ...byHand]
}
