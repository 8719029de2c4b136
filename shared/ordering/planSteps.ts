import { buyingPlan } from '../cutting/buyingPlan/plan.ts'
import type { BuyingPlan } from '../cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../cutting/buyingPlan/request.ts'
import type { Problem } from '../problem.ts'
import type { OrderTask } from './orderModel.ts'
import { requestFor, sectionsOf } from './joinPlans.ts'
import { lookOver } from './lookOver.ts'

/** plain: every blank for itself; paired: braces two and two. */
export type Way = 'plain' | 'paired'
export const ways = ['plain', 'paired'] as const

/** What planning an order tells as it goes: the section it turns to, a section's plan each time there is a better one, or why there is none. */
export type PlanStep =
  | { told: 'section'; section: string }
  | { told: 'planned'; section: string; ways: Way[]; plan: BuyingPlan }
  | { told: 'problems'; problems: Problem[] }

type Work = { section: string; ways: Way[]; request: BuyRequest; plan: BuyingPlan | null }

/**
 * How much work a section is given, round after round. A plan is whole after each round, so that whoever breaks planning off has one in hand; what is
 * done anew comes to about a seventh.
 */
const rounds = [2e6, 1.6e7, 1.3e8, 1e9, 5e9]

/** A section that pairs of braces don't touch is planned once for both ways. */
function worksOf({ plain, paired }: OrderTask['requests']): Work[] {
  const works = sectionsOf(plain).map((section): Work => ({
    section,
    ways: ['plain'],
    request: requestFor(plain, section),
    plan: null,
  }))
  if (!paired) return works
  for (const section of sectionsOf(paired)) {
    const request = requestFor(paired, section)
    const same = works.find((work) => work.section === section)
    if (same && JSON.stringify(same.request.parts) === JSON.stringify(request.parts)) same.ways.push('paired')
    else works.push({ section, ways: ['paired'], request, plan: null })
  }
  return works
}

const isBetter = (plan: BuyingPlan, than: BuyingPlan | null): boolean =>
  than === null || plan.cost < than.cost || (plan.cost === than.cost && plan.bound > than.bound)

const unsound = (section: string, faults: readonly string[]): Problem => ({
  code: 'unsound',
  field: 'plan',
  message: `the plan for ${section} didn’t pass its own check (${faults[0] ?? ''}), so it isn’t shown`,
})

const never = () => false

/**
 * Plans an order's sections in rounds of growing effort, both ways, until every one is proven, the effort is spent, or stop says so. The first round
 * is always gone through: after it there is a plan. Every plan told has passed the independent checker.
 */
export function* planSteps(requests: OrderTask['requests'], stop: () => boolean): Generator<PlanStep, void> {
  const works = worksOf(requests)
  for (const [round, mostEffort] of rounds.entries()) {
    for (const work of works) {
      if (work.plan?.status === 'proven') continue
      if (round > 0 && stop()) return
      yield { told: 'section', section: work.section }
      const found = buyingPlan(work.request, { stop, mostEffort })
      if (!found.ok) return void (yield { told: 'problems', problems: found.problems })
      if (!isBetter(found.value, work.plan)) continue
      const faults = lookOver(work.request, found.value, work.plan ? stop : never)
      if (!faults) return
      if (faults.length > 0)
        return void (yield { told: 'problems', problems: [unsound(work.section, faults)] })
      work.plan = found.value
      yield { told: 'planned', section: work.section, ways: work.ways, plan: found.value }
    }
  }
}
