import type { CuttingProblem, Pattern } from './cuttingProblem.ts'
import { dualSimplex, primalSimplex, worstRow } from './pivoting.ts'
import {
  addColumn,
  makeSimplex,
  restart,
  setDuals,
  setLevels,
  unit,
  valueOf,
  atLower,
  atUpper,
  type Column,
  type Simplex,
} from './simplex.ts'

/** Least and most of each stock to be bought, by the stocks' order. */
export type Bounds = { least: Int32Array; most: Int32Array }

/**
 * The master program: each part's demand met or exceeded, the patterns of a stock (and lengths left whole) as many as are bought of it.
 * Columns in order: over-supply of each part, unmet parts at a price no plan would pay, lengths bought of each stock, lengths left whole,
 * then patterns as they come.
 */
export type Master = {
  problem: CuttingProblem
  simplex: Simplex
  /** What column a pattern is, and the other way round. */
  patterns: { stock: number; counts: Pattern; column: number }[]
  known: Set<string>
  /** The surplus columns of rows added since. */
  surpluses: number[]
}

/** First column number of lengths bought. */
const boughtFrom = ({ parts }: CuttingProblem): number => 2 * parts.length

export function makeMaster(problem: CuttingProblem, unmetPence: number): Master {
  const { parts, stocks } = problem
  const right = [...parts.map(({ demand }) => demand), ...stocks.map(() => 0)]
  const columns = [
    ...parts.map((_, row) => unit(row, -1)),
    ...parts.map((_, row) => unit(row, 1, { cost: unmetPence })),
    ...stocks.map(({ pence, most }, stock) => unit(parts.length + stock, -1, { cost: pence, upper: most })),
    ...stocks.map((_, stock) => unit(parts.length + stock, 1)),
  ]
  return {
    problem,
    simplex: makeSimplex(right, columns, firstBasis(problem)),
    patterns: [],
    known: new Set(),
    surpluses: [],
  }
}

/** Over-supply and lengths bought: every reduced cost is right from the start, whatever the bounds. */
const firstBasis = ({ parts, stocks }: CuttingProblem): number[] => [
  ...parts.map((_, part) => part),
  ...stocks.map((_, stock) => 2 * parts.length + stock),
]

/** Adds a pattern unless it is known. True when it was new. */
export function addPattern(master: Master, stock: number, counts: Pattern): boolean {
  const key = `${stock}:${counts.join(',')}`
  if (master.known.has(key)) return false
  master.known.add(key)
  const rows: number[] = []
  const values: number[] = []
  counts.forEach((count, part) => {
    if (count > 0) {
      rows.push(part)
      values.push(count)
    }
  })
  rows.push(master.problem.parts.length + stock)
  values.push(1)
  const column = addColumn(master.simplex, {
    rows: Int32Array.from(rows),
    values: Float64Array.from(values),
    cost: 0,
    lower: 0,
    upper: Infinity,
  })
  master.patterns.push({ stock, counts, column })
  return true
}

/** Sets how many of each stock may be bought and what is wanted of each part, and solves anew. False when the arithmetic failed. */
export function solveFor(master: Master, bounds: Bounds, demand: ArrayLike<number>): boolean {
  const { simplex, problem } = master
  const from = boughtFrom(problem)
  problem.stocks.forEach((_, stock) => {
    const column = simplex.columns[from + stock] as Column
    column.lower = bounds.least[stock] as number
    column.upper = bounds.most[stock] as number
  })
  for (let part = 0; part < problem.parts.length; part += 1) simplex.right[part] = demand[part] as number
  settleBounds(master)
  setLevels(simplex)
  return resolve(master)
}

/** Every column off the basis at the bound that its reduced cost asks for. */
function settleBounds({ simplex }: Master): void {
  for (let number = 0; number < simplex.columns.length; number += 1) {
    if ((simplex.place[number] as number) >= 0) continue
    const column = simplex.columns[number] as Column
    if (column.upper === Infinity) simplex.place[number] = atLower
    else simplex.place[number] = (simplex.costs[number] as number) < 0 ? atUpper : atLower
  }
}

/** Most steps before a solve counts as failed: far more than any that did well. */
const mostSteps = (simplex: Simplex): number => 400 + 10 * simplex.rows

/**
 * Makes each pattern dearer by a sum of its own, under a thousandth of a penny, another one each turn: where all cost the same, a solve can walk in a
 * circle. 0: no longer.
 */
export function shiftCosts({ simplex, patterns }: Master, turn: number): void {
  for (const { column } of patterns)
    (simplex.columns[column] as Column).cost = turn && (1 + ((column * (618 + turn)) % 997)) * 1e-6
  setDuals(simplex)
}

/** Dual, then primal simplex; from the first basis again, with costs a little apart, when that fails. */
export function resolve(master: Master): boolean {
  const { simplex } = master
  // A solve that ended since it cost enough isn't one to go on from.
  const improve = () => worstRow(simplex).row >= 0 || primalSimplex(simplex, mostSteps(simplex))
  if (dualSimplex(simplex, mostSteps(simplex)) && improve()) return true
  if (simplex.stop()) return false
  restart(simplex, [...firstBasis(master.problem), ...master.surpluses])
  shiftCosts(master, 1)
  settleBounds(master)
  setLevels(simplex)
  const done = dualSimplex(simplex, 4 * mostSteps(simplex)) && improve()
  shiftCosts(master, 0)
  return done && improve()
}

/** What a part more of each would cost, not below 0. */
export const partDuals = ({ simplex, problem }: Master): Float64Array =>
  simplex.duals.slice(0, problem.parts.length).map((dual) => Math.max(0, dual))

/** What a length of a stock is worth in the plan: patterns worth more than this improve it. */
export const slotPrice = ({ simplex, problem }: Master, stock: number): number =>
  -(simplex.duals[problem.parts.length + stock] as number)

/** How many of each stock the solution buys, as it stands. */
export const boughtCounts = ({ simplex, problem }: Master): number[] =>
  problem.stocks.map((_, stock) => valueOf(simplex, boughtFrom(problem) + stock))

/** The patterns that the solution uses, with how often. */
export const usedPatterns = (master: Master): { stock: number; counts: Pattern; times: number }[] =>
  master.patterns.flatMap(({ stock, counts, column }) => {
    const times = valueOf(master.simplex, column)
    return times > 1e-7 ? [{ stock, counts, times }] : []
  })

/** How many parts the solution leaves uncut, paying their price instead. */
export function unmet({ simplex, problem: { parts } }: Master): number {
  let total = 0
  for (let part = 0; part < parts.length; part += 1) total += valueOf(simplex, parts.length + part)
  return total
}

/** Lets only patterns be used that take no more of a part than is wanted; every pattern where wanted is empty. */
export function keepPatterns({ simplex, patterns }: Master, wanted: Int32Array): void {
  for (const { counts, column } of patterns) {
    const fits = wanted.every((want, part) => (counts[part] as number) <= want)
    ;(simplex.columns[column] as Column).upper = fits ? Infinity : 0
  }
}
