import { setTimeout as rest } from 'node:timers/promises'
import loadHighs from 'highs'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { onTheWall, type Clock } from './longCount.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'

/** How long a solver took, ms, its model built in that time, and what it found: pence, and whether it says that there is nothing cheaper. */
export type Solved = { ms: number; cost: number; proven: boolean }

/** Our own plan, within a limit by a clock, ms. */
export function ours(request: BuyRequest, limitMs: number, clock: Clock = onTheWall): Solved {
  const start = clock.now()
  const plan = buyingPlan(request, { stop: () => clock.often() - start > limitMs })
  const ms = clock.now() - start
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
  return { ms, cost: plan.value.cost, proven: plan.value.status === 'proven' }
}

/** limitMs: HiGHS keeps it by the clock on the wall; clock: what its time is told by. */
type RivalAsk = { model: (request: BuyRequest) => string; limitMs: number; clock?: Clock }

/** How long a new HiGHS is left alone before its clock starts, ms: compiling it goes on on other threads and isn't counted against it. */
const settles = 80

/** HiGHS on a model of the request, at its published defaults but for the time limit. A new instance each time: its memory isn't given back. */
export async function rival(
  request: BuyRequest,
  { model, limitMs, clock = onTheWall }: RivalAsk,
): Promise<Solved> {
  const highs = await loadHighs()
  await rest(settles)
  const start = clock.now()
  const text = model(request)
  try {
    const found = highs.solve(text, { time_limit: limitMs / 1000 })
    const proven = found.Status === 'Optimal'
    return { ms: clock.now() - start, cost: proven ? Math.round(found.ObjectiveValue) : NaN, proven }
  } catch {
    return { ms: clock.now() - start, cost: NaN, proven: false }
  }
}

export const geometricMean = (values: readonly number[]): number =>
  Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length)
