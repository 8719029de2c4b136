import loadHighs from 'highs'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'

/** How long a solver took, ms, its model built in that time, and what it found: pence, and whether it says that there is nothing cheaper. */
export type Solved = { ms: number; cost: number; proven: boolean }

/** Our own plan, within a limit by the clock. */
export function ours(request: BuyRequest, limitMs: number): Solved {
  const start = performance.now()
  const plan = buyingPlan(request, { stop: () => performance.now() - start > limitMs })
  const ms = performance.now() - start
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
  return { ms, cost: plan.value.cost, proven: plan.value.status === 'proven' }
}

/** HiGHS on a model of the request, at its published defaults but for the time limit. A new instance each time: its memory isn't given back. */
export async function rival(
  request: BuyRequest,
  { model, limitMs }: { model: (request: BuyRequest) => string; limitMs: number },
): Promise<Solved> {
  const highs = await loadHighs()
  const start = performance.now()
  const text = model(request)
  try {
    const found = highs.solve(text, { time_limit: limitMs / 1000 })
    const proven = found.Status === 'Optimal'
    return { ms: performance.now() - start, cost: proven ? Math.round(found.ObjectiveValue) : NaN, proven }
  } catch {
    return { ms: performance.now() - start, cost: NaN, proven: false }
  }
}

export const geometricMean = (values: readonly number[]): number =>
  Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length)
