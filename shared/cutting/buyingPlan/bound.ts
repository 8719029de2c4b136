import type { CuttingProblem } from './cuttingProblem.ts'
import { fillKnapsack, type Knapsack } from './knapsack.ts'
import type { Bounds } from './master.ts'

/** Whole numbers stand for shares of a penny: 2²⁴ of them make one. */
export const dualScale = 2 ** 24

/** What values of the parts show, whatever the bounds: what all parts are worth, and each stock's price less what its best pattern is worth. */
export type Shown = { worth: number; over: number[] }

/** What values show, in 1/scale pence. best is the table filled with them. */
export function shownBy(
  { parts, stocks }: CuttingProblem,
  { values, best, scale }: { values: ArrayLike<number>; best: Float64Array; scale: number },
): Shown {
  let worth = 0
  parts.forEach(({ demand }, part) => (worth += demand * (values[part] as number)))
  return { worth, over: stocks.map(({ room, pence }) => pence * scale - (best[room] as number)) }
}

/**
 * The least that any plan within the bounds can cost: the parts' values, less for each stock what its best pattern is
 * worth beyond its price (as often as it may be bought), or more for lengths that must be bought.
 */
export function boundOf({ worth, over }: Shown, { least, most }: Bounds): number {
  let sum = worth
  for (let stock = 0; stock < over.length; stock += 1) {
    const one = over[stock] as number
    sum += one * ((one >= 0 ? least : most)[stock] as number)
  }
  return sum
}

/** A bound in steps of price, as far as doubles tell: to steer by, never to claim. */
export const stepsUp = ({ priceStep }: CuttingProblem, lower: number): number =>
  Math.ceil((lower - 1e-6) / priceStep) * priceStep

/** A cost in whole numbers of 1/2²⁴ pence as the least sum of money at or over it that prices can make. */
export const roundUp = ({ priceStep }: CuttingProblem, scaled: number): number =>
  Math.ceil(scaled / dualScale / priceStep) * priceStep

/** Duals as whole numbers of 1/2²⁴ pence. */
export const wholeDuals = (duals: ArrayLike<number>): number[] =>
  Array.from(duals, (dual) => Math.max(0, Math.round(dual * dualScale)))

/** Whole duals and what they show. */
export type Claim = Shown & { duals: number[] }

/** What whole duals show: exact, since every number on the way is whole and under 2⁵³. */
export function claimOf(problem: CuttingProblem, table: Knapsack, duals: number[]): Claim {
  fillKnapsack(table, duals)
  return { duals, ...shownBy(problem, { values: duals, best: table.best, scale: dualScale }) }
}
