import { boundOf, claimOf, shownBy, stepsUp, wholeDuals, type Claim } from './bound.ts'
import { demandsOf, type CuttingProblem } from './cuttingProblem.ts'
import { fillKnapsack, patternAt, type Knapsack } from './knapsack.ts'
import { reals } from './lists.ts'
import { addPattern, partDuals, resolve, slotPrice, solveFor, type Bounds, type Master } from './master.ts'

/** What a solve works with, and how much it has worked: pivots and table cells, the same on every machine. */
export type Workbench = {
  problem: CuttingProblem
  master: Master
  table: Knapsack
  /** The table for what is left to cut on a dive, its memory used again by the next. */
  ofRest?: Knapsack
  effort: number
  stop: () => boolean
}

/** The least improvement worth a new pattern, of a price in pence. */
const worthwhile = 1e-6

/** Adds each stock's best pattern where it beats the stock's slot price. How many were new. */
export function newPatterns({ problem, master, table }: Workbench): number {
  let added = 0
  problem.stocks.forEach(({ room }, stock) => {
    if ((table.best[room] as number) <= slotPrice(master, stock) + worthwhile) return
    if (addPattern(master, stock, patternAt(table, room))) added += 1
  })
  return added
}

/**
 * Solves the master within bounds, adding patterns until none helps or the bound reaches the cutoff. Duals of the best bound seen
 * are made whole and claimed at the end.
 */
export function generate(bench: Workbench, bounds: Bounds, cutoff: number): Claim {
  const { problem, master, table } = bench
  const before = master.simplex.pivots
  let sane = solveFor(master, bounds, demandsOf(problem))
  let best: { lower: number; duals: Float64Array } = {
    lower: -Infinity,
    duals: reals(problem.parts.length),
  }
  while (sane && !bench.stop()) {
    const duals = partDuals(master)
    bench.effort += fillKnapsack(table, duals)
    const lower = boundOf(shownBy(problem, { values: duals, best: table.best, scale: 1 }), bounds)
    if (lower > best.lower) best = { lower, duals }
    if (stepsUp(problem, best.lower) >= cutoff) break
    if (newPatterns(bench) === 0) break
    sane = resolve(master)
  }
  bench.effort += (master.simplex.pivots - before) * master.simplex.rows * master.simplex.rows
  return claimOf(problem, table, wholeDuals(best.duals))
}
