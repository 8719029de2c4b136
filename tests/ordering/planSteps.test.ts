import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { joinPlans, sectionsOf } from '../../shared/ordering/joinPlans.ts'
import { oneLengthSteps } from '../../shared/ordering/oneLength.ts'
import { planSteps, type PlanStep } from '../../shared/ordering/planSteps.ts'
import { hardRequest } from './hardRequest.ts'

const never = () => false
const request: BuyRequest = {
  ...{ version: 1, kerf: 4, endTrim: 20, leastOffcut: 450 },
  parts: [
    { section: 'boards', length: 1830, quantity: 9, mark: '2026-014 board' },
    { section: 'ledges', length: 910.5, quantity: 3, mark: '2026-014 ledge' },
    { section: 'braces', length: 1000, quantity: 2, mark: '2026-014 brace' },
  ],
  stock: [
    { section: 'boards', length: 2400, pence: 605 },
    { section: 'boards', length: 3900, pence: 983 },
    { section: 'ledges', length: 2400, pence: 890 },
    { section: 'ledges', length: 3000, pence: 1113 },
    { section: 'braces', length: 2000, pence: 500 },
    { section: 'braces', length: 2100, pence: 560 },
  ],
  rack: [
    { section: 'boards', length: 1862, pence: 0 },
    { section: 'ledges', length: 600, pence: 0 },
  ],
}
const paired: BuyRequest = {
  ...request,
  parts: [
    ...request.parts.slice(0, 2),
    { section: 'braces', length: 1949.8, quantity: 1, mark: '2026-014 brace + brace' },
  ],
}
const plannedOf = (steps: readonly PlanStep[]) =>
  steps.flatMap((step) => (step.told === 'planned' ? [step] : []))
const wholeOf = (steps: readonly PlanStep[], way: 'plain' | 'paired'): BuyingPlan => {
  const last = new Map(
    plannedOf(steps).flatMap((step) => (step.ways.includes(way) ? [[step.section, step.plan] as const] : [])),
  )
  return joinPlans([...last.values()])
}

describe('planning an order step by step', () => {
  it('comes to the plan that planning it at once comes to, with its proof, both ways', () => {
    const steps = [...planSteps({ plain: request, paired }, never)]
    for (const [way, asked] of [
      ['plain', request],
      ['paired', paired],
    ] as const) {
      const whole = buyingPlan(asked)
      if (!whole.ok) throw new Error('no plan')
      const plan = wholeOf(steps, way)
      expect({ cost: plan.cost, bound: plan.bound, status: plan.status, waste: plan.waste }).toEqual({
        ...{ cost: whole.value.cost, bound: whole.value.bound, status: 'proven', waste: whole.value.waste },
      })
      expect(checkPlan(asked, plan)).toMatchObject({ faults: [], bound: whole.value.bound })
    }
    // Two braces of 1000 with 20 trimmed and a cut of 4 between want 2024, past 2000; both in one piece of 1949.8 fit it.
    expect(wholeOf(steps, 'plain').cost - wholeOf(steps, 'paired').cost).toBe(60)
  })

  it('plans a section that no pair touches once for both ways', () => {
    const steps = plannedOf([...planSteps({ plain: request, paired }, never)])
    const boards = steps.filter(({ section }) => section === 'boards')
    expect(boards.map(({ ways }) => ways)).toEqual([['plain', 'paired']])
    const braces = steps.filter(({ section }) => section === 'braces')
    expect(braces.map(({ ways }) => ways)).toEqual([['plain'], ['paired']])
  })

  it('has a plan of every section in hand even when told to stop at once, and claims no more than is shown', () => {
    const hard = hardRequest(24, 7)
    const steps = [...planSteps({ plain: hard, paired: null }, () => true)]
    const plan = wholeOf(steps, 'plain')
    expect(plan.certificate.map(({ section }) => section)).toEqual(sectionsOf(hard))
    expect(checkPlan(hard, plan).faults).toEqual([])
    expect(plan.bound).toBeLessThan(plan.cost)
  })

  it('never gives a worse plan after a better one', () => {
    let asked = 0
    const steps = plannedOf([
      ...planSteps({ plain: hardRequest(24, 7), paired: null }, () => (asked += 1) > 10_000),
    ])
    expect(steps.length).toBeGreaterThan(1)
    steps.forEach(({ plan }, place) => {
      const before = steps[place - 1]?.plan
      if (before) expect(plan.cost).toBeLessThanOrEqual(before.cost)
    })
  })

  it('tells a part that no length holds', () => {
    const long = {
      ...request,
      parts: [{ section: 'boards', length: 4000, quantity: 1, mark: '2026-014 board' }],
    }
    const steps = [...planSteps({ plain: long, paired: null }, never)]
    expect(steps.at(-1)).toMatchObject({ told: 'problems', problems: [{ field: 'parts[0].length' }] })
  })
})

describe('one length for all', () => {
  it('is the cheapest single length of each section, the rack left alone', () => {
    const found = [...oneLengthSteps(request, never)]
    // Boards: nine of 2400 at 605 are 5445; two to a length of 3900 is five at 983: 4915.
    expect(found).toEqual([
      { section: 'boards', cheapest: { length: 3900, count: 5, cost: 4915, least: 4915 } },
      // Ledges: two to a 2400 is two at 890: 1780; three to a 3000 is one at 1113.
      { section: 'ledges', cheapest: { length: 3000, count: 1, cost: 1113, least: 1113 } },
      { section: 'braces', cheapest: { length: 2100, count: 1, cost: 560, least: 560 } },
    ])
  })

  it('says where no one length holds every part', () => {
    const only = {
      ...request,
      stock: [{ section: 'boards', length: 1800, pence: 400 }],
      parts: request.parts.slice(0, 1),
    }
    expect([...oneLengthSteps(only, never)]).toEqual([{ section: 'boards', cheapest: null }])
  })
})
