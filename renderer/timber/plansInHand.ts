import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import { joinPlans, sectionsOf } from '../../shared/ordering/joinPlans.ts'
import type { OrderTask } from '../../shared/ordering/orderModel.ts'
import { ways, type PlanStep, type Way } from '../../shared/ordering/planSteps.ts'

/** The best plan of each section so far, both ways. */
export type PlansInHand = Record<Way, ReadonlyMap<string, BuyingPlan>>

export const noPlans: PlansInHand = { plain: new Map(), paired: new Map() }

/** The plans with one more in them. */
export function withPlan(
  plans: PlansInHand,
  { section, ways: own, plan }: Extract<PlanStep, { told: 'planned' }>,
): PlansInHand {
  const added = (way: Way) => (own.includes(way) ? new Map(plans[way]).set(section, plan) : plans[way])
  return { plain: added('plain'), paired: added('paired') }
}

/**
 * The plan to order by. least: what nothing known here costs less than, pence, braces singly or two and two: equal to the plan's cost where there
 * is no cheaper way. other: what the way not taken costs, null where there is none.
 */
export type ChosenPlan = { plan: BuyingPlan; paired: boolean; least: number; other: number | null }

/** A way's plan, once each of its sections has one. */
function wholePlan(plans: PlansInHand, requests: OrderTask['requests'], way: Way): BuyingPlan | null {
  const request = requests[way]
  if (!request) return null
  const found = sectionsOf(request).map((section) => plans[way].get(section))
  const all = found.flatMap((plan) => plan ?? [])
  return all.length > 0 && all.length === found.length ? joinPlans(all) : null
}

/** The cheaper of both ways as they stand, the plain one where they are alike; null while there is none. */
export function chosenPlan(plans: PlansInHand, requests: OrderTask['requests']): ChosenPlan | null {
  const [plain, paired] = ways.map((way) => wholePlan(plans, requests, way))
  const whole = [plain, paired].flatMap((plan) => plan ?? [])
  const plan = plain && paired ? (paired.cost < plain.cost ? paired : plain) : (plain ?? paired)
  if (!plan) return null
  const isPaired = plan === paired
  const other = (isPaired ? plain : paired)?.cost ?? null
  const unplanned = requests.paired !== null && whole.length < 2
  const least = unplanned ? 0 : Math.min(plan.cost, ...whole.map(({ bound }) => bound))
  return { plan, paired: isPaired, least, other }
}
