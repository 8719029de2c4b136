import { createPinia, setActivePinia } from 'pinia'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import { layOrder } from '../../shared/ordering/orderLayout.ts'
import { ways } from '../../shared/ordering/planSteps.ts'
import { addressOf, placeAt, type Place } from '../../renderer/stores/place.ts'
import { useOrderMakingStore } from '../../renderer/stores/orderMaking.ts'
import { dearerBy } from '../../renderer/timber/dearerBy.ts'
import {
  byMerchant,
  factsOfOrder,
  factsOfPlan,
  keptOffcuts,
  takenPieces,
} from '../../renderer/timber/orderFacts.ts'
import { braceWords, firstSentence, smallSum, sureWords } from '../../renderer/timber/planWords.ts'
import { chosenPlan, noPlans, withPlan } from '../../renderer/timber/plansInHand.ts'
import { orderOf, orderingCarrier, planner, settled, task } from './timberStandIn.ts'

const pounds = (pence: number) => `£${(pence / 100).toFixed(2)}`
const planned = (request = task().requests.plain): BuyingPlan => {
  const found = buyingPlan(request)
  if (!found.ok) throw new Error('no plan')
  return found.value
}

describe('the place Timber', () => {
  it('has an address for each of its sheets, and Back finds each again', () => {
    const places: Place[] = [
      { name: 'timber', sheet: 'orders' },
      { name: 'timber', sheet: 'make' },
      { name: 'timber', sheet: 'order', id: 12 },
      { name: 'timber', sheet: 'rack' },
      { name: 'timber', sheet: 'count' },
    ]
    expect(places.map(addressOf)).toEqual([
      ...['#/timber', '#/timber/make', '#/timber/order/12', '#/timber/rack', '#/timber/count'],
    ])
    for (const place of places) expect(placeAt(addressOf(place))).toEqual(place)
    expect(placeAt('#/timber/order/none')).toEqual({ name: 'timber', sheet: 'orders' })
  })
})

describe('what a plan is said to be', () => {
  const plan = planned()
  const chosen = (given: object) => ({ plan, paired: false, least: plan.cost, other: null, ...given })

  it('is the cheapest, or dearer by no more than so much, or not known', () => {
    expect(sureWords(chosen({}), pounds)).toBe('No cheaper way there is')
    expect(sureWords(chosen({ least: plan.cost - 31 }), pounds)).toBe(
      'At most 31p dearer than the best there is',
    )
    expect(sureWords(chosen({ least: plan.cost - 131 }), pounds)).toBe(
      'At most £1.31 dearer than the best there is',
    )
    expect(sureWords(chosen({ least: 0 }), pounds)).toBe('How near it is to the cheapest isn’t known yet')
    expect(smallSum(31, (sum) => `${sum / 100} €`)).toBe('0.31 €')
  })

  it('says which way the braces are cut where there was a choice', () => {
    expect(braceWords(chosen({}), pounds)).toBe('')
    expect(braceWords(chosen({ paired: true, other: plan.cost + 149 }), pounds)).toBe(
      'Braces two from one piece: £1.49 cheaper than each from its own blank.',
    )
    expect(braceWords(chosen({ other: plan.cost }), pounds)).toMatch(/^Each brace from its own blank/)
  })

  it('takes the first sentence of what stands in the way', () => {
    expect(firstSentence('the height of the leaf is missing; type it in first')).toBe(
      'the height of the leaf is missing.',
    )
    expect(firstSentence('Board 9 comes to 26.5 mm. Rip elsewhere.')).toBe('Board 9 comes to 26.5 mm.')
  })
})

describe('the plans in hand', () => {
  const { requests } = task()
  const step = (plan: BuyingPlan, own: ('plain' | 'paired')[] = ['plain', 'paired']) => ({
    ...({ told: 'planned', section: plan.certificate[0]?.section ?? '', ways: own, plan } as const),
  })
  const sections = planned().certificate.map(({ section }) => section)
  const one = (section: string, way: 'plain' | 'paired') => {
    const request = requests[way]
    if (!request) throw new Error('no pairs')
    return planned({ ...request, parts: request.parts.filter((part) => part.section === section) })
  }

  it('are no plan until every section has one, and claim nothing while a way is unplanned', () => {
    const [first, ...others] = sections
    if (!first) throw new Error('no sections')
    let plans = withPlan(noPlans, step(one(first, 'plain'), ['plain']))
    expect(chosenPlan(plans, requests)).toBeNull()
    for (const section of others) plans = withPlan(plans, step(one(section, 'plain'), ['plain']))
    expect(chosenPlan(plans, requests)).toMatchObject({ paired: false, least: 0, other: null })
    for (const section of sections) plans = withPlan(plans, step(one(section, 'paired'), ['paired']))
    const chosen = chosenPlan(plans, requests)
    const costs = ways.map((way) => sections.reduce((sum, section) => sum + one(section, way).cost, 0))
    expect(chosen?.plan.cost).toBe(Math.min(...costs))
    expect(chosen?.least).toBe(Math.min(...costs))
    expect(chosen?.paired).toBe((costs[1] ?? 0) < (costs[0] ?? 0))
  })
})

describe('an order as it is shown', () => {
  it('adds up: sections to the plan, merchants to the plan, rows to what is cut', () => {
    const wanted = task()
    const plan = planned(wanted.requests.plain)
    const facts = factsOfPlan(wanted, plan, false)
    expect(facts.sections.reduce((sum, { cost }) => sum + cost, 0)).toBe(plan.cost)
    expect(byMerchant(facts.buying).reduce((sum, one) => sum + one.sum, 0)).toBe(plan.cost)
    const cuts = facts.sections.flatMap(({ rows }) =>
      rows.flatMap(({ cuts: own, count }) => Array(count).fill(own)),
    )
    expect(cuts.flat()).toHaveLength(wanted.parts.reduce((sum, { quantity }) => sum + quantity, 0))
    expect(takenPieces(facts, wanted.rack).map(({ id }) => id)).toEqual(
      layOrder(wanted, plan).lengths.flatMap(({ rackPieceIds }) => rackPieceIds),
    )
    const kept = plan.lengths.filter(({ offcut }) => offcut >= wanted.requests.plain.leastOffcut)
    expect(keptOffcuts(facts).reduce((sum, { count }) => sum + count, 0)).toBe(
      kept.reduce((sum, { count }) => sum + count, 0),
    )
  })

  it('shows a placed order as its plan was shown', () => {
    const wanted = task()
    const plan = planned(wanted.requests.plain)
    const before = factsOfPlan(wanted, plan, false)
    const after = factsOfOrder(orderOf(wanted, plan, false))
    const told = (facts: typeof before) =>
      facts.sections.map(({ name, cost, rows }) => ({
        name,
        cost,
        rows: rows.map(({ id: _, ...row }) => row),
      }))
    expect(told(after)).toEqual(told(before))
  })

  it('says how much dearer one length for all is, and that it is up to so much where it isn’t proven', () => {
    const sections = [
      { itemId: 1, name: 'a', species: '', cost: 1000, rows: [] },
      { itemId: 2, name: 'b', species: '', cost: 500, rows: [] },
    ]
    const keys = new Map([
      ['ka', 1],
      ['kb', 2],
    ])
    const compared = [
      { section: 'ka', cheapest: { length: 3000, count: 4, cost: 1240, least: 1240 } },
      { section: 'kb', cheapest: null },
    ]
    expect(dearerBy(sections, compared, keys)).toEqual({ more: 240, share: '24 %', shown: true })
    const unsure = [{ section: 'ka', cheapest: { length: 3000, count: 4, cost: 1240, least: 1200 } }]
    expect(dearerBy(sections, unsure, keys)).toEqual({ more: 240, share: '24 %', shown: false })
    expect(dearerBy(sections, [{ section: 'kb', cheapest: null }], keys)).toBeNull()
  })
})

describe('an order on its way', () => {
  let off: () => void
  beforeEach(() => {
    setActivePinia(createPinia())
    off = planner()
  })
  afterEach(() => off())

  it('is for the jobs ticked, planned, compared, and placed with the stamp of what it was worked from', async () => {
    const book = orderingCarrier()
    const making = useOrderMakingStore()
    await making.read()
    expect(making.accepted.map(({ jobId }) => jobId)).toEqual([7])
    making.tickOnly(making.open.map(({ jobId }) => jobId))
    await making.plan()
    await settled(() => making.phase === 'planned' && making.oneLength !== null)
    expect(making.ended).toBe('itself')
    expect(making.best?.least).toBe(making.best?.plan.cost)
    const request = task().requests[making.best?.paired ? 'paired' : 'plain']
    if (!request || !making.best) throw new Error('no plan')
    expect(checkPlan(request, making.best.plan).faults).toEqual([])
    making.note = 'ring first'
    expect(await making.place()).toMatchObject({ number: '2026-T01' })
    expect(book.placed).toMatchObject([{ jobIds: [7], stamp: task().stamp, note: 'ring first' }])
    expect([making.phase, making.chosen.size, making.note]).toEqual(['choosing', 0, ''])
  })

  it('stays on the table when the book moved meanwhile, and offers to be worked out again', async () => {
    const book = orderingCarrier()
    book.moved = true
    const making = useOrderMakingStore()
    await making.read()
    making.tick(7, true)
    await making.plan()
    await settled(() => making.phase === 'planned')
    expect(await making.place()).toBeUndefined()
    expect(making.stale).toBe(true)
    expect(making.trouble).toContain('changed meanwhile')
    await making.plan()
    expect([making.stale, making.trouble]).toEqual([false, ''])
  })

  it('says when a job of the sample is ticked beside one of the workshop’s own', async () => {
    orderingCarrier()
    const making = useOrderMakingStore()
    await making.read()
    making.tick(7, true)
    expect(making.mixed).toBe(false)
    making.tick(9, true)
    expect(making.mixed).toBe(true)
    making.tick(7, false)
    expect(making.mixed).toBe(false)
    expect(making.accepted.map(({ jobId }) => jobId)).toEqual([7])
  })

  it('lets go of a job that can’t be ordered for any more', async () => {
    const book = orderingCarrier()
    const making = useOrderMakingStore()
    await making.read()
    making.tick(7, true)
    book.orderedOn = '2026-T09'
    await making.read()
    expect(making.chosen.size).toBe(0)
  })

  it('stopped by hand, has the best plan so far at once and hears no more of the planner', async () => {
    orderingCarrier({ hard: true })
    const making = useOrderMakingStore()
    await making.read()
    making.tick(7, true)
    await making.plan()
    await settled(() => making.best !== null)
    making.stopHere()
    expect([making.phase, making.ended]).toEqual(['planned', 'hand'])
    const held = making.best?.plan
    await new Promise((resolve) => setTimeout(resolve, 300))
    expect(making.best?.plan).toBe(held)
    making.putAway()
  })
})
