import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { oneLengthSteps, type OneLength } from '../../shared/ordering/oneLength.ts'
import type { OrderTask } from '../../shared/ordering/orderModel.ts'
import { planSteps, type PlanStep } from '../../shared/ordering/planSteps.ts'

/** What the planner beside the window is asked: an order's plan, or what one length for all would cost. limitMs by the clock. */
export type PlanAsk =
  | { ask: 'plan'; requests: OrderTask['requests']; limitMs: number }
  | { ask: 'one length'; request: BuyRequest; limitMs: number }

export type PlanTold =
  PlanStep | { told: 'one length'; section: OneLength } | { told: 'done'; timedOut: boolean }

/** Does what is asked, telling each step as soon as it is done. */
export function work(ask: PlanAsk, tell: (told: PlanTold) => void): void {
  const until = performance.now() + ask.limitMs
  const stop = () => performance.now() > until
  if (ask.ask === 'plan') for (const step of planSteps(ask.requests, stop)) tell(step)
  else for (const section of oneLengthSteps(ask.request, stop)) tell({ told: 'one length', section })
  tell({ told: 'done', timedOut: stop() })
}
