import type { BuyingPlan } from '../cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../cutting/buyingPlan/request.ts'

/** The sections that a request has parts of, in the order in which they are first named. */
export const sectionsOf = ({ parts }: BuyRequest): string[] => [
  ...new Set(parts.map(({ section }) => section)),
]

/** A request for one of its sections alone. */
export const requestFor = (request: BuyRequest, section: string): BuyRequest => {
  const own = <T extends { section: string }>(rows: readonly T[]): T[] =>
    rows.filter((row) => row.section === section)
  return { ...request, parts: own(request.parts), stock: own(request.stock), rack: own(request.rack ?? []) }
}

/** Plans of one section each as one plan: costs, bounds and waste add up, and it is proven where every one of them is. */
export function joinPlans(plans: readonly BuyingPlan[]): BuyingPlan {
  const sum = (of: (plan: BuyingPlan) => number) => plans.reduce((total, plan) => total + of(plan), 0)
  const [cost, bound] = [sum((plan) => plan.cost), sum((plan) => plan.bound)]
  return {
    version: 1,
    status: cost === bound ? 'proven' : 'best-found',
    cost,
    bound,
    waste: Math.round(sum((plan) => plan.waste) * 10) / 10,
    patterns: sum((plan) => plan.patterns),
    shown: { cost: cost === bound, waste: false, patterns: false },
    lengths: plans.flatMap(({ lengths }) => lengths),
    certificate: plans.flatMap(({ certificate }) => certificate),
  }
}
