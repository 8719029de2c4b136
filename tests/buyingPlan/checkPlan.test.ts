import { beforeAll, describe, expect, it } from 'vitest'
import { seeded, type Draws } from '../../build/bench/seeded.ts'
import { checkPlan, checkSteps } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type {
  BuyingPlan,
  Certificate,
  CutLength,
  ListCase,
  ProofRow,
} from '../../shared/cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'
import { leastByTrial } from './bruteForce.ts'
import { jobRequest, smallRequest } from './smallRequests.ts'

/** Two sections, a limited length that is used up, a rack piece, marks. */
const request: BuyRequest = {
  version: 1,
  kerf: 3.2,
  endTrim: 25,
  leastOffcut: 450,
  parts: [
    { section: 'board', length: 1830.5, quantity: 9, mark: 'gate 1' },
    { section: 'board', length: 1650, quantity: 7 },
    { section: 'board', length: 905, quantity: 2, mark: 'gate 2' },
    { section: 'ledge', length: 860, quantity: 5, mark: 'gate 1' },
  ],
  stock: [
    { section: 'board', length: 3600, pence: 910, available: 2 },
    { section: 'board', length: 4200, pence: 1130 },
    { section: 'board', length: 5400, pence: 1520 },
    { section: 'ledge', length: 1800, pence: 710 },
    { section: 'ledge', length: 3600, pence: 1490 },
  ],
  rack: [
    { section: 'board', length: 1900, pence: 40 },
    { section: 'ledge', length: 900 },
  ],
}

const planned = (wanted: BuyRequest): BuyingPlan => {
  const plan = buyingPlan(wanted)
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
  return plan.value
}

/** The plan with something changed in it. */
function changed(plan: BuyingPlan, change: (plan: BuyingPlan) => void): BuyingPlan {
  const copy = structuredClone(plan)
  change(copy)
  return copy
}

const first = (plan: BuyingPlan): CutLength => plan.lengths[0] as CutLength
const rackOf = (plan: BuyingPlan): CutLength => plan.lengths.find(({ from }) => from === 'rack') as CutLength
const limitedOf = (plan: BuyingPlan): CutLength =>
  plan.lengths.find(({ section, stock }) => section === 'board' && stock === 3600) as CutLength
const board = (plan: BuyingPlan): Certificate => plan.certificate[0] as Certificate

/** A proof by a list up to the plan's own cost that shows nothing by itself. */
const emptyList = ({ parts, cost }: Certificate, cases: ListCase[]): ProofRow[] => [
  { duals: parts.map(() => 0), list: { most: cost, cuts: [], values: [], cases } },
]

/** Every vector of duals in a proof. */
const dualsOf = (proof: ProofRow[]): number[][] => proof.flatMap((row) => ('duals' in row ? [row.duals] : []))

const dearer = (plan: BuyingPlan, pence: number) => {
  plan.cost += pence
  plan.bound += pence
  board(plan).cost += pence
  board(plan).bound += pence
}

const faults: [what: string, change: (plan: BuyingPlan) => void][] = [
  ['a cut left out', (plan) => first(plan).cuts.pop()],
  ['a cut too many', (plan) => first(plan).cuts.push({ length: 905, mark: 'gate 2' })],
  ['a cut a tenth too short', (plan) => ((first(plan).cuts[0] as { length: number }).length -= 0.1)],
  ['a cut for another gate', (plan) => ((first(plan).cuts[0] as { mark?: string }).mark = 'gate 3')],
  ['a length once more', (plan) => (first(plan).count += 1)],
  ['half a length', (plan) => (first(plan).count -= 0.5)],
  ['a length with nothing cut', (plan) => plan.lengths.push({ ...first(plan), cuts: [], offcut: 1 })],
  ['a rack piece that isn’t there', (plan) => (rackOf(plan).stock += 100)],
  ['a rack piece called a merchant’s', (plan) => (rackOf(plan).from = 'merchant')],
  ['a rack piece twice', (plan) => plan.lengths.push({ ...rackOf(plan) })],
  ['more of a length than there is', (plan) => plan.lengths.push({ ...limitedOf(plan), count: 3 })],
  ['a length of another section', (plan) => (first(plan).section = 'ledge')],
  ['a longer length at the shorter’s price', (plan) => (limitedOf(plan).stock = 4200)],
  ['an offcut a tenth out', (plan) => (first(plan).offcut += 0.1)],
  ['a price a penny less', (plan) => (limitedOf(plan).pence -= 1)],
  ['a cost a penny less', (plan) => (plan.cost -= 1)],
  ['a cost and bound a penny less', (plan) => dearer(plan, -1)],
  ['a cost and bound a penny more', (plan) => dearer(plan, 1)],
  ['a bound a penny more', (plan) => (plan.bound += 1)],
  ['a section’s bound a penny more', (plan) => (board(plan).bound += 1)],
  ['a waste a tenth less', (plan) => (plan.waste -= 0.1)],
  ['a waste a tenth more', (plan) => (plan.waste += 0.1)],
  ['no waste', (plan) => (plan.waste = 0)],
  ['a pattern fewer', (plan) => (plan.patterns -= 1)],
  ['a pattern more', (plan) => (plan.patterns += 1)],
  ['proven at a lower bound', (plan) => (plan.bound -= 1)],
  ['best found at its own bound', (plan) => (plan.status = 'best-found')],
  ['not shown where it is', (plan) => (plan.shown.cost = false)],
  ['a section without a certificate', (plan) => plan.certificate.pop()],
  ['a certificate without a part', (plan) => board(plan).parts.pop()],
  ['a certificate with a part of another length', (plan) => (board(plan).parts[0] = 1831)],
  ['a certificate without its cheapest offer', (plan) => (board(plan).offers = board(plan).offers.slice(1))],
  ['a certificate without offers', (plan) => (board(plan).offers = [])],
  [
    'duals half as large again',
    (plan) =>
      dualsOf(board(plan).proof).forEach((duals) =>
        duals.forEach((dual, part) => (duals[part] = Math.round(dual * 1.5))),
      ),
  ],
  ['duals of nothing', (plan) => dualsOf(board(plan).proof).forEach((duals) => duals.fill(0))],
  ['a dual below nothing', (plan) => ((dualsOf(board(plan).proof)[0] as number[])[0] = -5)],
  ['a dual that isn’t whole', (plan) => ((dualsOf(board(plan).proof)[0] as number[])[0] = 9.5)],
  ['a dual past exact numbers', (plan) => ((dualsOf(board(plan).proof)[0] as number[])[0] = 2 ** 53)],
  ['a dual too few', (plan) => dualsOf(board(plan).proof).forEach((duals) => duals.pop())],
  [
    'a list whose cases are closed by nothing',
    (plan) => (board(plan).proof = emptyList(board(plan), [{ by: 0 }])),
  ],
  [
    'a list divided by a pattern that isn’t in it',
    (plan) =>
      (board(plan).proof = emptyList(board(plan), [
        { pattern: board(plan).parts.map(() => 9), of: 0, upTo: 0 },
        { by: 0 },
        { by: 0 },
      ])),
  ],
  [
    'a split of an offer that isn’t there',
    (plan) => (board(plan).proof = [{ offer: 9, upTo: 1 }, ...board(plan).proof, ...board(plan).proof]),
  ],
]

describe('the checker of a buying plan', () => {
  let plan: BuyingPlan
  beforeAll(() => {
    plan = planned(request)
  })

  it('finds no fault in the plan as it was made, which uses rack, limit and two sections', () => {
    expect(checkPlan(request, plan)).toEqual({ faults: [], bound: plan.cost })
    expect(plan.status).toBe('proven')
    expect(rackOf(plan).count).toBe(1)
    const limited = plan.lengths.filter(({ stock, section }) => stock === 3600 && section === 'board')
    expect(limited.reduce((sum, { count }) => sum + count, 0)).toBe(2)
    expect(plan.certificate.map(({ section }) => section)).toEqual(['board', 'ledge'])
  })

  it('looks a piece at a time, and comes to the same', () => {
    const steps = checkSteps(request, plan)
    let pieces = 0
    for (;;) {
      const { done, value } = steps.next()
      if (done) {
        expect(value).toEqual(checkPlan(request, plan))
        break
      }
      pieces += 1
    }
    expect(pieces).toBeGreaterThan(10)
  })

  it('says what the waste and the ways of cutting come to', () => {
    const wrong = changed(plan, (one) => {
      one.waste += 12.5
      one.patterns += 3
    })
    expect(checkPlan(request, wrong).faults).toEqual([
      `waste: ${plan.waste} mm is lost, not ${wrong.waste}`,
      `patterns: there are ${plan.patterns}, not ${wrong.patterns}`,
    ])
  })

  it.each(faults)('finds %s', (_what, change) => {
    expect(checkPlan(request, changed(plan, change)).faults).not.toEqual([])
  })

  it('finds a dearer plan that calls itself proven', () => {
    const dear = changed(plan, (one) => {
      const swapped = one.lengths.find(
        ({ section, stock }) => section === 'ledge' && stock === 1800,
      ) as CutLength
      const more = (1490 - 710) * swapped.count
      // What was too short to keep is kept with 1800 more.
      expect(swapped.offcut).toBeLessThan(request.leastOffcut)
      one.waste -= swapped.offcut * swapped.count
      Object.assign(swapped, { stock: 3600, pence: 1490, offcut: swapped.offcut + 1800 })
      const ledge = one.certificate[1] as Certificate
      for (const sums of [one, ledge]) {
        sums.cost += more
        sums.bound += more
      }
    })
    const { faults: found, bound } = checkPlan(request, dear)
    expect(found.length).toBeGreaterThan(0)
    expect(found.filter((fault) => !/bound/.test(fault))).toEqual([])
    expect(bound).toBeLessThan(dear.cost)
  })
})

/** Duals made up by chance, near what lengths cost or far from it. */
const someDuals = (draws: Draws, { parts }: Certificate): number[] => {
  const rate = draws.between(0, 1500)
  return parts
    .map((length) => Math.round(length * (rate + draws.between(-20, 20)) * 2 ** 14))
    .map((dual) => Math.max(0, dual))
}

/** Cases of a list made up by chance: splits of offers and patterns, values out of the list's own. */
function someCases(draws: Draws, of: Certificate, depth: number): ListCase[] {
  if (draws.between(0, depth) === 0) return [{ by: draws.between(0, 3) }]
  const offer = draws.between(0, of.offers.length - 1)
  const upTo = draws.between(0, 2)
  const split: ListCase =
    draws.between(0, 1) === 0
      ? { offer, upTo }
      : { pattern: of.parts.map(() => draws.between(0, 2)), of: offer, upTo }
  return [split, ...someCases(draws, of, depth - 1), ...someCases(draws, of, depth - 1)]
}

function someList(draws: Draws, of: Certificate): ProofRow {
  const cuts = Array.from({ length: draws.between(0, 2) }, () => ({
    times: of.parts.map(() => draws.between(0, 2)),
    over: draws.between(1, 3),
  }))
  const values = Array.from({ length: 4 }, () => ({
    duals: [...someDuals(draws, of), ...cuts.map(() => draws.between(0, 300) * 2 ** 24)],
    slots: of.offers.map(() => draws.between(0, 2000) * 2 ** 24),
  }))
  return {
    duals: someDuals(draws, of),
    list: { most: draws.between(0, 12_000), cuts, values, cases: someCases(draws, of, 3) },
  }
}

/** A proof made up by chance: splits, duals and lists, none of them sound. */
function madeUp(draws: Draws, of: Certificate, depth: number): ProofRow[] {
  if (draws.between(0, depth) > 0)
    return [
      { offer: draws.between(0, of.offers.length - 1), upTo: draws.between(0, 3) },
      ...madeUp(draws, of, depth - 1),
      ...madeUp(draws, of, depth - 1),
    ]
  return [draws.between(0, 2) === 0 ? someList(draws, of) : { duals: someDuals(draws, of) }]
}

describe('the bound that the checker shows', () => {
  it('is never over the least there is, whatever proof it is given', () => {
    const size = sampleSize('Made-up proofs', {
      usual: 300,
      long: 5000,
      of: 'random small requests, six proofs each',
    })
    let tight = 0
    for (let index = 0; index < size; index += 1) {
      const small = smallRequest(seed + index)
      const made = buyingPlan(small)
      if (!made.ok) continue
      const { pence } = leastByTrial(small)
      const draws = seeded(seed + index)
      for (let trial = 0; trial < 6; trial += 1) {
        const fake = changed(made.value, (one) => {
          board(one).proof = madeUp(draws, board(one), 3)
          one.cost = board(one).cost = 1e9
        })
        const { bound } = checkPlan(small, fake)
        expect([seed + index, trial, bound <= pence]).toEqual([seed + index, trial, true])
        if (bound > 0 && bound > pence / 2) tight += 1
      }
    }
    process.stdout.write(`${tight} bounds over half of the least\n`)
    expect(tight).toBeGreaterThan(size / 10)
  })

  it('catches a penny taken off or put on in any of fifty jobs', () => {
    for (let index = 0; index < 50; index += 1) {
      const job = jobRequest(seed + index, { rack: index % 2 === 0 })
      const plan = planned(job)
      expect(checkPlan(job, plan).faults).toEqual([])
      for (const pence of [-1, 1])
        expect(
          checkPlan(
            job,
            changed(plan, (one) => dearer(one, pence)),
          ).faults,
        ).not.toEqual([])
      expect(
        checkPlan(
          job,
          changed(plan, (one) => (board(one).cost = one.cost + 1)),
        ).faults,
      ).not.toEqual([])
    }
  })
})
