import { boundOf, shownBy, stepsUp } from './bound.ts'
import {
  demandsOf,
  priceOf,
  sizeOf,
  type Bought,
  type CuttingProblem,
  type Pattern,
} from './cuttingProblem.ts'
import { fillKnapsack, makeKnapsack } from './knapsack.ts'
import { newPatterns, type Workbench } from './generate.ts'
import { gathered } from './layOut.ts'
import {
  keepPatterns,
  partDuals,
  resolve,
  shiftCosts,
  solveFor,
  unmet,
  usedPatterns,
  type Bounds,
} from './master.ts'
import { goBack, markSpot } from './simplex.ts'

/** What is still to be cut and to be bought, and the plan so far. */
export type Rest = { demand: number[]; bounds: Bounds; plan: Bought[] }

/** Rounds of new patterns for one step of a dive; more than any needed. */
const mostRounds = 100

/** Takes a pattern into the plan, no more of each part than is still wanted. False when nothing of it was. */
function take({ demand, bounds, plan }: Rest, { stock, counts, times }: Bought): boolean {
  const wanted: Pattern = counts.map((count, part) => Math.min(count, demand[part] as number))
  if (!wanted.some((count) => count > 0)) return false
  const most = bounds.most[stock] as number
  let often = Math.min(times, most)
  wanted.forEach((count, part) => {
    if (count > 0) often = Math.min(often, Math.floor((demand[part] as number) / count))
  })
  if (often < 1) return false
  plan.push({ stock, counts: wanted, times: often })
  wanted.forEach((count, part) => (demand[part] = (demand[part] as number) - count * often))
  bounds.most[stock] = most - often
  bounds.least[stock] = Math.max(0, (bounds.least[stock] as number) - often)
  return true
}

/**
 * How a dive differs from the plainest one: at the step named, a share further down the list is rounded up; turn makes other patterns a trifle
 * dearer, so that of solutions that cost the same another one is met.
 */
export type DiveWay = { step: number; down: number; turn: number }

export const plainWay: DiveWay = { step: -1, down: 0, turn: 0 }

/** Ways to try after the plainest, and when those fail. */
export const quickWays: readonly DiveWay[] = [
  { ...plainWay, step: 0, down: 1 },
  { ...plainWay, step: 0, down: 2 },
  { ...plainWay, step: 1, down: 1 },
]
export const turnedWay = (turn: number): DiveWay => ({ ...plainWay, turn })

/** The solution's whole shares taken at once; where there are none, its largest share rounded up, or one further down the list. */
export function takeFrom(rest: Rest, used: Bought[], down: number): boolean {
  const whole = used.filter(({ times }) => times > 1 - 1e-6)
  const taken = whole.map((one) => take(rest, { ...one, times: Math.floor(one.times + 1e-6) }))
  if (taken.some((done) => done)) return true
  const largest = [...used].sort((a, b) => b.times - a.times || a.stock - b.stock)
  const order = [...largest.slice(down), ...largest.slice(0, down)]
  return order.some((one) => take(rest, { ...one, times: 1 }))
}

/** The rest as a problem of its own, whose patterns never take more of a part than is still wanted. */
const restOf = ({ problem }: Workbench, demand: number[]): CuttingProblem => ({
  ...problem,
  parts: problem.parts.map(({ size }, part) => ({ size, demand: demand[part] as number })),
})

/** Solves for what is still wanted, with patterns that take no more than that. False when it can't be, or not for less than the cutoff. */
function solveRest(bench: Workbench, now: Rest, cutoff: number): boolean {
  const { demand, bounds } = now
  const { master } = bench
  keepPatterns(master, demand)
  if (!solveFor(master, bounds, demand)) return false
  const problem = restOf(bench, demand)
  const table = makeKnapsack(problem, bench.ofRest)
  bench.ofRest = table
  const paid = priceOf(problem, now.plan)
  for (let round = 0; round < mostRounds && !bench.stop(); round += 1) {
    const values = partDuals(master)
    const { best } = table
    bench.effort += fillKnapsack(table, values)
    if (stepsUp(problem, paid + boundOf(shownBy(problem, { values, best, scale: 1 }), bounds)) >= cutoff)
      return false
    if (newPatterns({ ...bench, table }) === 0) return true
    if (!resolve(master)) return false
  }
  return !bench.stop()
}

/** Where a dive starts, how it goes, and what a plan must cost less than. */
export type Dive = { bounds: Bounds; way: DiveWay; cutoff: number }

/** From the solution within bounds to a whole plan, fixing patterns and solving the rest again; undefined where it gets stuck. */
export function dive(bench: Workbench, how: Dive): Bought[] | undefined {
  const spot = markSpot(bench.master.simplex)
  shiftCosts(bench.master, how.way.turn)
  const plan = descend(bench, how)
  keepPatterns(bench.master, [])
  shiftCosts(bench.master, 0)
  goBack(bench.master.simplex, spot)
  return plan
}

function descend(bench: Workbench, { bounds: { least, most }, way, cutoff }: Dive): Bought[] | undefined {
  const rest: Rest = {
    demand: demandsOf(bench.problem),
    bounds: { least: least.slice(), most: most.slice() },
    plan: [],
  }
  let roundings = 0
  while (rest.demand.some((count) => count > 0)) {
    if (bench.stop() || !solveRest(bench, rest, cutoff)) return undefined
    if (unmet(bench.master) > 1e-6) return undefined
    const before = rest.plan.length
    const down = roundings === way.step ? way.down : 0
    if (!takeFrom(rest, usedPatterns(bench.master), down)) return undefined
    if (rest.plan.length === before + 1) roundings += 1
  }
  return gathered(rest.plan)
}

/** Every length from the cheapest stock that holds it and is still to be had; dearest lengths first. */
export function cheapened(problem: CuttingProblem, plan: readonly Bought[]): Bought[] {
  const left = Int32Array.from(problem.stocks, ({ most }) => most)
  for (const { stock, times } of plan) left[stock] = (left[stock] as number) - times
  const cheapest = problem.stocks
    .map(({ room, pence }, stock) => ({ room, pence, stock }))
    .sort((a, b) => a.pence - b.pence || a.room - b.room || a.stock - b.stock)
  const result: Bought[] = []
  for (const { stock, counts, times } of plan) {
    const size = sizeOf(problem, counts)
    for (let one = 0; one < times; one += 1) {
      const now = cheapest.find(
        (other) => other.room >= size && (other.stock === stock || (left[other.stock] as number) > 0),
      )
      const to = now?.stock ?? stock
      left[stock] = (left[stock] as number) + 1
      left[to] = (left[to] as number) - 1
      result.push({ stock: to, counts, times: 1 })
    }
  }
  return gathered(result)
}
