import { checkSteps } from '../cutting/buyingPlan/checkPlan.ts'
import type { BuyingPlan } from '../cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../cutting/buyingPlan/request.ts'

/**
 * What the independent checker finds wrong with a plan, before anybody is shown it: [] where it holds. undefined where stop ended the look before
 * it was done, so that a limit of time is kept here too.
 */
export function lookOver(request: BuyRequest, plan: BuyingPlan, stop: () => boolean): string[] | undefined {
  const steps = checkSteps(request, plan)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value.faults
    if (stop()) return undefined
  }
}
