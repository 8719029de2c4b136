import type { CuttingProblem } from './cuttingProblem.ts'
import { fillKnapsack, type Knapsack } from './knapsack.ts'
import type { Bounds } from './master.ts'

/** Whole numbers stand for shares of a penny: 2²⁴ of them make one. */
export const dualScale = 2 ** 24

/**
 * The least that any plan within the bounds can cost, by one value a part: the parts' values, less for each stock what its best pattern is
 * worth beyond its price (as often as it may be bought), or more for lengths that must be bought. best is the table filled with them.
 */
export function boundOf(
  { parts, stocks }: CuttingProblem,
  { values, best, scale }: { values: ArrayLike<number>; best: Float64Array; scale: number },
  { least, most }: Bounds,
): number {
  let total = 0
  parts.forEach(({ demand }, part) => (total += demand * (values[part] as number)))
  stocks.forEach(({ room, pence }, stock) => {
    const over = pence * scale - (best[room] as number)
    total += over * ((over >= 0 ? least[stock] : most[stock]) as number)
  })
  return total
}

/** A cost in whole numbers of 1/2²⁴ pence as the least sum of money at or over it that prices can make. */
export const roundUp = ({ priceStep }: CuttingProblem, scaled: number): number =>
  Math.ceil(scaled / dualScale / priceStep) * priceStep

/** Duals as whole numbers of 1/2²⁴ pence. */
export const wholeDuals = (duals: ArrayLike<number>): number[] =>
  Array.from(duals, (dual) => Math.max(0, Math.round(dual * dualScale)))

/** The bound that whole duals claim, in money: exact, since every number on the way is whole and under 2⁵³. */
export function claimedBound(
  problem: CuttingProblem,
  { table, duals }: { table: Knapsack; duals: number[] },
  bounds: Bounds,
): number {
  fillKnapsack(table, duals)
  const scaled = boundOf(problem, { values: duals, best: table.best, scale: dualScale }, bounds)
  return roundUp(problem, scaled)
}
