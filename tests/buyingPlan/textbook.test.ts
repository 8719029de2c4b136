import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'

type Case = {
  name: string
  source: string
  stocks: [length: number, cost: number, limit: number | null][]
  items: [length: number, quantity: number][]
  optimum: number
}

const cases = JSON.parse(
  readFileSync(new URL('../fixtures/cutting/textbook.json', import.meta.url), 'utf8'),
) as Case[]

/** A published case as a request: its units taken as tenths of a millimetre, nothing lost to kerf or trim. */
const requestOf = ({ stocks, items }: Case): BuyRequest => ({
  version: 1,
  kerf: 0,
  endTrim: 0,
  leastOffcut: 0,
  parts: items.map(([length, quantity]) => ({ section: 'board', length: length / 10, quantity })),
  stock: stocks.map(([length, pence, limit]) => ({
    section: 'board',
    length: length / 10,
    pence,
    ...(limit === null ? {} : { available: limit }),
  })),
})

/** Its linear bound is a whole length below what is possible, and 32 lengths are too many to look through: the plan is right, unproven. */
const unproven = 'rietz-gap-6/5'

describe('published cutting cases', () => {
  it('are twelve', () => expect(cases).toHaveLength(12))

  it.each(cases)('$name costs its published optimum of $optimum ($source)', (published) => {
    const request = requestOf(published)
    const plan = buyingPlan(request, { mostEffort: 1e9 })
    if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
    const { cost, bound, status } = plan.value
    expect(cost).toBe(published.optimum)
    expect(bound).toBeGreaterThanOrEqual(published.name === unproven ? cost - 1 : cost)
    if (published.name !== unproven) expect(status).toBe('proven')
    expect(checkPlan(request, plan.value)).toEqual({ faults: [], bound })
  })
})
