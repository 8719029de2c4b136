import { describe, expect, it } from 'vitest'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { lookOver } from '../../shared/ordering/lookOver.ts'
import { planSteps } from '../../shared/ordering/planSteps.ts'
import { hardRequest } from './hardRequest.ts'

const request = hardRequest(9, 3)
const made = buyingPlan(request)
if (!made.ok) throw new Error(JSON.stringify(made.problems))
const plan = made.value

/** Says stop from the asking on that is counted to. */
const stopAt = (asking: number) => {
  let asked = 0
  return () => (asked += 1) >= asking
}

describe('looking a plan over before it is shown', () => {
  it('finds nothing in a sound one, and every wrong figure in another', () => {
    expect(lookOver(request, plan, () => false)).toEqual([])
    const wrong = { ...plan, cost: plan.cost - 7, waste: plan.waste + 3, patterns: plan.patterns + 1 }
    const faults = lookOver(request, wrong, () => false) ?? []
    for (const figure of ['cost', 'waste', 'patterns', 'status'])
      expect(faults.filter((fault) => fault.startsWith(figure))).toHaveLength(1)
  })

  it('is broken off when told to stop, and then says nothing of the plan', () => {
    expect(lookOver(request, plan, stopAt(1))).toBeUndefined()
    expect(lookOver(request, plan, stopAt(5))).toBeUndefined()
  })

  it('keeps the plan that was looked over before where it is broken off', () => {
    const hard = hardRequest(24, 7)
    for (const asking of [200, 2000]) {
      const told = [...planSteps({ plain: hard, paired: null }, stopAt(asking))]
      const plans = told.flatMap((step) => (step.told === 'planned' ? [step.plan] : []))
      expect(plans.length).toBeGreaterThan(0)
      for (const one of plans) expect(lookOver(hard, one, () => false)).toEqual([])
    }
  })
})
