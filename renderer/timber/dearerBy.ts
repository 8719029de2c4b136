import type { OneLength } from '../../shared/ordering/oneLength.ts'
import { wholeBp, writePercent } from '../../shared/pricing/percent.ts'
import type { SectionCuts } from './orderFacts.ts'

/** How much dearer one length for all is. shown: proven, else no cheaper was found and it is up to that much. share: of the plan's cost, '' of nothing. */
export type Dearer = { more: number; share: string; shown: boolean }

/** A sum as a percent of another, to a tenth: 2954 of 18211 is '16.2 %'; '' of nothing. */
export const shareOf = (more: number, of: number): string =>
  of === 0 ? '' : writePercent(Math.round((more * wholeBp) / of / 10) * 10)

/** Over all sections that one length can do, what it would cost more than the plan; null where no section has such a length. */
export function dearerBy(
  sections: readonly SectionCuts[],
  compared: readonly OneLength[],
  keys: ReadonlyMap<string, number>,
): Dearer | null {
  let [cost, more, any, shown] = [0, 0, false, true]
  for (const { section, cheapest } of compared) {
    const own = sections.find(({ itemId }) => itemId === keys.get(section))
    if (!own || !cheapest) continue
    any = true
    cost += own.cost
    more += cheapest.cost - own.cost
    shown &&= cheapest.cost === cheapest.least
  }
  return any ? { more, share: shareOf(more, cost), shown } : null
}
