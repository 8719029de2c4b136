import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan, type Options, type Progress } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { seed } from '../fixtures/sample.ts'
import { jobRequest, shuffled, smallRequest } from './smallRequests.ts'

const bare: BuyRequest = { version: 1, kerf: 0, endTrim: 0, leastOffcut: 0, parts: [], stock: [] }

const part = (length: number, quantity = 1, mark?: string) => ({
  section: 'board',
  length,
  quantity,
  ...(mark === undefined ? {} : { mark }),
})
const stock = (length: number, pence: number, available?: number) => ({
  section: 'board',
  length,
  pence,
  ...(available === undefined ? {} : { available }),
})

/** The plan of a request, looked at by the checker. */
function planned(request: BuyRequest, options?: Options): BuyingPlan {
  const plan = buyingPlan(request, options)
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
  expect(checkPlan(request, plan.value)).toEqual({ faults: [], bound: plan.value.bound })
  return plan.value
}

const cutsOf = ({ lengths }: BuyingPlan) =>
  lengths.map(({ count, cuts }) => [count, ...cuts.map(({ length }) => length)])

describe('what fits a length', () => {
  const two = { ...bare, kerf: 3, parts: [part(1000, 2)] }

  it('the last cut may meet the end: two of 1000 with a kerf of 3 come from 2003, not from 2002.9', () => {
    expect(cutsOf(planned({ ...two, stock: [stock(2003, 700)] }))).toEqual([[1, 1000, 1000]])
    expect(cutsOf(planned({ ...two, stock: [stock(2002.9, 700)] }))).toEqual([[2, 1000]])
  })

  it('a merchant’s length loses the end trim, a rack piece doesn’t', () => {
    const request = { ...bare, endTrim: 20, parts: [part(990)], stock: [stock(1010, 300)] }
    expect(planned(request).cost).toBe(300)
    const withRack = planned({ ...request, rack: [{ section: 'board', length: 990, pence: 15 }] })
    expect(withRack.lengths).toEqual([
      { section: 'board', from: 'rack', stock: 990, pence: 15, count: 1, cuts: [{ length: 990 }], offcut: 0 },
    ])
  })

  it('the offcut is 3000 − 20 − (1200 + 3) − (1100 + 3) = 674, wasted unless it is worth keeping', () => {
    const request = {
      ...bare,
      kerf: 3,
      endTrim: 20,
      parts: [part(1200), part(1100)],
      stock: [stock(3000, 800)],
    }
    const kept = planned({ ...request, leastOffcut: 674 })
    expect([kept.lengths[0]?.offcut, kept.waste]).toEqual([674, 26])
    expect(planned({ ...request, leastOffcut: 674.1 }).waste).toBe(700)
  })

  it('the offcut is never below nothing where the last kerf runs off the end', () => {
    const plan = planned({ ...bare, kerf: 3, parts: [part(1000)], stock: [stock(1001, 300)] })
    expect([plan.lengths[0]?.offcut, plan.waste]).toEqual([0, 1])
  })

  it('tenths are kept: three of 333.4 with a kerf of 0.1 take 1000.4', () => {
    const request = { ...bare, kerf: 0.1, parts: [part(333.4, 3)] }
    expect(planned({ ...request, stock: [stock(1000.4, 50)] }).cost).toBe(50)
    expect(planned({ ...request, stock: [stock(1000.3, 50)] }).cost).toBe(100)
  })
})

describe('what a plan says', () => {
  it('sections come in the order of their names, rack before merchant, the longest first', () => {
    const plan = planned({
      ...bare,
      parts: [part(1500, 3), { section: 'batten', length: 700, quantity: 1 }],
      stock: [stock(1600, 500), { section: 'batten', length: 900, pence: 90 }],
      rack: [{ section: 'board', length: 1510 }],
    })
    expect(
      plan.lengths.map(({ section, from, stock: length, count }) => [section, from, length, count]),
    ).toEqual([
      ['batten', 'merchant', 900, 1],
      ['board', 'rack', 1510, 1],
      ['board', 'merchant', 1600, 2],
    ])
    expect([plan.cost, plan.bound, plan.status]).toEqual([1090, 1090, 'proven'])
  })

  it('parts of one length take their marks in the marks’ order, unmarked ones last', () => {
    const parts = [part(500, 1), part(500, 2, 'wicket'), part(500, 2, 'gate'), part(500, 1, 'door')]
    const plan = planned({ ...bare, parts, stock: [stock(1000, 100)] })
    expect(plan.lengths.map(({ cuts }) => cuts.map(({ mark }) => mark))).toEqual([
      ['door', 'gate'],
      ['gate', 'wicket'],
      ['wicket', undefined],
    ])
  })

  it('says that money is proven and that waste and patterns are not', () => {
    const plan = planned({ ...bare, parts: [part(500)], stock: [stock(1000, 100)] })
    expect(plan.shown).toEqual({ cost: true, waste: false, patterns: false })
  })

  it('nothing to cut costs nothing', () => {
    const plan = planned(bare)
    expect([plan.status, plan.cost, plan.bound, plan.lengths]).toEqual(['proven', 0, 0, []])
  })

  it('ten thousand equal pieces are one line and what is left over', () => {
    const plan = planned({
      ...bare,
      kerf: 3,
      parts: [part(700, 10_000)],
      stock: [stock(2106, 400), stock(4800, 799)],
    })
    expect(plan.lengths.map(({ stock: length, count }) => [length, count])).toEqual([
      [4800, 1666],
      [4800, 1],
    ])
    expect([plan.cost, plan.status]).toEqual([1667 * 799, 'proven'])
  })

  it('free lengths, no kerf and a part as long as a length less its trim do no harm', () => {
    const plan = planned({
      ...bare,
      endTrim: 20,
      parts: [part(1980, 2), part(990, 3)],
      stock: [stock(2000, 0, 2), stock(2000, 350)],
    })
    expect([plan.cost, plan.status]).toEqual([700, 'proven'])
  })
})

describe('after money', () => {
  it('a free rack piece spares a longer offcut: 500 from the 520, not beside the 1400', () => {
    const request = { ...bare, leastOffcut: 550, parts: [part(1400), part(500)], stock: [stock(2000, 800)] }
    const plan = planned({ ...request, rack: [{ section: 'board', length: 520 }] })
    expect([plan.cost, plan.waste]).toEqual([800, 20])
    expect(plan.lengths.map(({ from, offcut }) => [from, offcut])).toEqual([
      ['rack', 20],
      ['merchant', 600],
    ])
  })

  it('the offcuts are gathered into one worth keeping: 100 and 1100 rather than twice 600', () => {
    const request = {
      ...bare,
      leastOffcut: 700,
      parts: [part(900, 2), part(500, 2)],
      stock: [stock(2000, 800)],
    }
    expect(planned(request).waste).toBe(100)
  })

  it('where both ways waste nothing, the one with a single pattern is taken', () => {
    const request = {
      ...bare,
      leastOffcut: 100,
      parts: [part(900, 2), part(500, 2)],
      stock: [stock(2000, 800)],
    }
    const plan = planned(request)
    expect([plan.waste, plan.patterns, cutsOf(plan)]).toEqual([0, 1, [[2, 900, 500]]])
  })

  it('of two lengths at one price the one that wastes less is taken', () => {
    const request = {
      ...bare,
      leastOffcut: 1000,
      parts: [part(1500)],
      stock: [stock(2400, 500), stock(1800, 500)],
    }
    expect(planned(request).lengths[0]?.stock).toBe(1800)
    expect(planned({ ...request, leastOffcut: 900 }).lengths[0]?.stock).toBe(2400)
  })
})

describe('the same request', () => {
  it('gives the same bytes again, and with its rows in any order or its quantities split', () => {
    for (let index = 0; index < 40; index += 1) {
      const request = index % 2 === 0 ? smallRequest(seed + index) : jobRequest(seed + index, { rack: true })
      const bytes = (one: BuyRequest) => {
        const plan = buyingPlan(one)
        return plan.ok ? JSON.stringify(plan.value) : undefined
      }
      const first = bytes(request)
      expect(bytes(request)).toBe(first)
      const mixed = {
        ...request,
        parts: shuffled(request.parts, index),
        stock: shuffled(request.stock, index + 1),
        rack: shuffled(request.rack ?? [], index + 2),
      }
      expect(bytes(mixed)).toBe(first)
    }
    const whole = { ...bare, parts: [part(700, 5, 'gate'), part(450, 3)], stock: [stock(2000, 300)] }
    const split = { ...whole, parts: [part(450), part(700, 2, 'gate'), part(450, 2), part(700, 3, 'gate')] }
    expect(JSON.stringify(planned(split))).toBe(JSON.stringify(planned(whole)))
  })
})

describe('a search that is stopped', () => {
  const hard = jobRequest(seed + 1, { rack: true })

  it('at once still gives a plan, with a bound that its certificate shows', () => {
    const plan = planned(hard, { stop: () => true })
    expect(plan.cost).toBeGreaterThan(0)
    expect(plan.bound).toBeLessThanOrEqual(plan.cost)
    expect(plan.status).toBe(plan.bound === plan.cost ? 'proven' : 'best-found')
  })

  it('at any moment claims no more than its certificate shows', () => {
    const costs = Array.from({ length: 40 }, (_, asked) => {
      let times = 0
      return planned(hard, {
        stop: () => {
          times += 1
          return times > asked
        },
      }).cost
    })
    expect(costs).toEqual(costs.toSorted((a, b) => b - a))
  })

  it('by its measure of work gives the same bytes each time', () => {
    const bytes = () => JSON.stringify(planned(hard, { mostEffort: 20_000 }))
    expect(bytes()).toBe(bytes())
  })

  it('tells how far it has come, costs falling', () => {
    const said: Progress[] = []
    const plan = planned(hard, { onProgress: (progress) => said.push(progress) })
    expect(said.length).toBeGreaterThan(0)
    expect(said.map(({ cost }) => cost)).toEqual(said.map(({ cost }) => cost).toSorted((a, b) => b - a))
    expect(said.every(({ section, bound, cost }) => section === 'board' && bound <= cost)).toBe(true)
    expect(said.at(-1)?.cost).toBe(plan.cost)
  })
})

describe('a request that can’t be met', () => {
  const problems = (request: BuyRequest) => {
    const plan = buyingPlan(request)
    return plan.ok ? [] : plan.problems.map(({ field, message }) => `${field}: ${message}`)
  }

  it('names each part that is too long, the longest usable, by how much and what trim took', () => {
    const request = {
      ...bare,
      kerf: 3,
      endTrim: 20,
      parts: [part(2400, 1, 'gate 4'), part(900), part(2385.5)],
      stock: [stock(2400, 700), stock(1800, 500)],
      rack: [{ section: 'board', length: 2370 }],
    }
    expect(problems(request)).toEqual([
      "parts[0].length: a part of 2400 ('gate 4') can’t be cut from 'board': the longest usable is 2380 (a length of 2400 of the merchant’s, 20 lost to end trim, none to the kerf since its cut meets the end), 20 too long",
      "parts[2].length: a part of 2385.5 can’t be cut from 'board': the longest usable is 2380 (a length of 2400 of the merchant’s, 20 lost to end trim, none to the kerf since its cut meets the end), 5.5 too long",
    ])
  })

  it('says so where nothing is offered of a section', () => {
    expect(
      problems({ ...bare, parts: [part(900)], stock: [{ section: 'ledge', length: 900, pence: 5 }] }),
    ).toEqual([
      "parts[0].length: a part of 900 can’t be cut from 'board': no length of that section is offered",
    ])
  })

  it('says which parts stay uncut and the cheapest way out: one more of 3000, not of 6000', () => {
    const request = { ...bare, parts: [part(2900, 10)], stock: [stock(6000, 2000, 2), stock(3000, 900, 5)] }
    expect(problems(request)).toEqual([
      "stock: what is to be had of 'board' can’t hold every part; uncut stay 1 of 2900; the cheapest way out is 1 more of 3000 (£9.00)",
    ])
  })

  it('says so where no merchant’s length holds what is left', () => {
    const request = {
      ...bare,
      parts: [part(2900, 2)],
      stock: [stock(2400, 700)],
      rack: [{ section: 'board', length: 3000 }],
    }
    expect(problems(request)).toEqual([
      "stock: what is to be had of 'board' can’t hold every part; uncut stay 1 of 2900; no merchant offers a length that holds them, add one",
    ])
  })

  it('tells the problems of all sections at once', () => {
    const request = {
      ...bare,
      parts: [part(2900, 2), { section: 'ledge', length: 800, quantity: 3 }],
      stock: [stock(3000, 700, 1), { section: 'ledge', length: 900, pence: 250, available: 2 }],
    }
    expect(problems(request)).toHaveLength(2)
  })

  it('finds the only way there is where quick plans miss it', () => {
    const request = {
      ...bare,
      parts: [part(6), part(5), part(4), part(3), part(2)],
      stock: [stock(10, 30, 2)],
    }
    expect(planned(request).cost).toBe(60)
  })
})
