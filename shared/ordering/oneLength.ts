import { buyingPlan } from '../cutting/buyingPlan/plan.ts'
import type { BuyRequest } from '../cutting/buyingPlan/request.ts'
import { requestFor, sectionsOf } from './joinPlans.ts'

/**
 * What a section would cost were one length bought for all of it and the rack left alone. length: the cheapest such, mm, count of them; cost, pence;
 * least: what no single length does it for less than, the same as cost where that is proven. null: no one length holds every part.
 */
export type OneLength = {
  section: string
  cheapest: { length: number; count: number; cost: number; least: number } | null
}

/** Some tenths of a second of a small laptop's time for each length. */
const effort = 2e7

function oneLengthOf(request: BuyRequest, section: string, stop: () => boolean): OneLength {
  const own = requestFor(request, section)
  let cheapest: OneLength['cheapest'] = null
  let least = Infinity
  for (const stock of own.stock) {
    const { available: _, ...unlimited } = stock
    const found = buyingPlan({ ...own, stock: [unlimited], rack: [] }, { mostEffort: effort, stop })
    if (!found.ok) continue
    const { cost, bound, lengths } = found.value
    least = Math.min(least, bound)
    const count = lengths.reduce((sum, one) => sum + one.count, 0)
    if (cheapest === null || cost < cheapest.cost)
      cheapest = { length: stock.length, count, cost, least: bound }
  }
  return { section, cheapest: cheapest && { ...cheapest, least: Math.min(least, cheapest.cost) } }
}

/** Section by section, the cheapest that one merchant's length alone could do it for. */
export function* oneLengthSteps(request: BuyRequest, stop: () => boolean): Generator<OneLength, void> {
  for (const section of sectionsOf(request)) yield oneLengthOf(request, section, stop)
}
