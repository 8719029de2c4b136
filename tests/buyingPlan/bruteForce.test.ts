import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { parseBuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'
import { leastByTrial } from './bruteForce.ts'
import { smallRequest } from './smallRequests.ts'

const size = sampleSize('Buying plans against every way tried', {
  usual: 300,
  long: 5000,
  of: 'random small requests',
})

describe('a buying plan for a small request', () => {
  it('costs what the cheapest of all ways costs, is proven, and is refused only where there is no way', () => {
    const seen = { made: 0, refused: 0, leastWaste: 0 }
    for (let index = 0; index < size; index += 1) {
      const request = smallRequest(seed + index)
      expect(parseBuyRequest(request).ok).toBe(true)
      const least = leastByTrial(request)
      const plan = buyingPlan(request)
      const which = `seed ${seed + index}`
      if (!plan.ok) {
        expect([which, least.pence]).toEqual([which, Infinity])
        seen.refused += 1
        continue
      }
      const { cost, bound, status, waste } = plan.value
      expect([which, cost, bound, status]).toEqual([which, least.pence, least.pence, 'proven'])
      expect([which, checkPlan(request, plan.value)]).toEqual([which, { faults: [], bound: cost }])
      expect(waste).toBeGreaterThanOrEqual(least.waste)
      seen.made += 1
      if (waste === least.waste) seen.leastWaste += 1
    }
    process.stdout.write(
      `${seen.made} made, ${seen.refused} refused, ${seen.leastWaste} with the least waste there is\n`,
    )
    expect(seen.made).toBeGreaterThan(size / 2)
    expect(seen.refused).toBeGreaterThan(size / 50)
    expect(seen.leastWaste).toBeGreaterThan(seen.made * 0.95)
  })
})
