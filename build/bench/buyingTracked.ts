import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { onTheWall, type Clock } from './longCount.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'

/** How a plan came about: when the first was there, how far it and the last were from the bound, as shares of the cost; longest between asking to stop, ms. */
export type Tracked = {
  ms: number
  firstMs: number
  firstGap: number
  gap: number
  wait: number
  faults: string[]
}

/** A plan made within a limit by a clock, ms, watched, and checked afterwards. */
export function trackedPlan(request: BuyRequest, limitMs: number, clock: Clock = onTheWall): Tracked {
  const start = clock.now()
  const seen = { firstMs: Infinity, firstCost: 0, wait: 0, last: start }
  const stop = () => {
    const now = clock.often()
    seen.wait = Math.max(seen.wait, now - seen.last)
    seen.last = now
    return now - start > limitMs
  }
  const plan = buyingPlan(request, {
    stop,
    onProgress: ({ cost }) => {
      if (seen.firstMs < Infinity) return
      seen.firstMs = clock.now() - start
      seen.firstCost = cost
    },
  })
  const ms = clock.now() - start
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
  const { cost, bound } = plan.value
  return {
    ms,
    firstMs: Math.min(seen.firstMs, ms),
    firstGap: Math.max(1e-6, ((seen.firstCost || cost) - bound) / cost),
    gap: (cost - bound) / cost,
    wait: seen.wait,
    faults: checkPlan(request, plan.value).faults,
  }
}
