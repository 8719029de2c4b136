import { demandsOf, type CuttingProblem, type Pattern } from './cuttingProblem.ts'
import { keyOf } from './layOut.ts'
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
  patterns: { stock: number; column: number }[]
  known: Set<string>
  /** The surplus columns of rows added since. */
  surpluses: number[]
}

/** First column number of lengths bought. */
const boughtFrom = ({ parts }: CuttingProblem): number => 2 * parts.length

export function makeMaster(problem: CuttingProblem, stop: () => boolean): Master {
  const { parts, stocks } = problem
  const right = [...demandsOf(problem), ...stocks.map(() => 0)]
  const unmetPence = 4 * Math.max(1, ...stocks.map(({ pence }) => pence))
  const columns = [
    ...parts.map((_, row) => unit(row, -1)),
    ...parts.map((_, row) => unit(row, 1, { cost: unmetPence })),
    ...stocks.map(({ pence, most }, stock) => unit(parts.length + stock, -1, { cost: pence, upper: most })),
    ...stocks.map((_, stock) => unit(parts.length + stock, 1)),
  ]
  return {
    problem,
    simplex: makeSimplex(right, columns, { basis: firstBasis(problem), stop }),
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

/** A pattern of a stock as a column: its parts' rows in order, then its stock's. */
export function columnOf({ parts }: CuttingProblem, stock: number, counts: Pattern): Column {
  const rows = []
  const values = []
  for (let part = 0; part < parts.length; part += 1)
    if ((counts[part] as number) > 0) {
      rows.push(part)
      values.push(counts[part] as number)
    }
  rows.push(parts.length + stock)
  values.push(1)
  return { rows, values, cost: 0, lower: 0, upper: Infinity }
}

/** How often each part is cut by a pattern's column. */
export function countsOf({ simplex, problem: { parts } }: Master, number: number): Pattern {
  const { rows, values } = simplex.columns[number] as Column
  const counts = parts.map(() => 0)
  for (let k = 0; (rows[k] as number) < parts.length; k += 1) counts[rows[k] as number] = values[k] as number
  return counts
}

/** Adds a pattern's column. */
export const addColumnOf = ({ simplex, patterns }: Master, stock: number, column: Column): number =>
  patterns.push({ stock, column: addColumn(simplex, column) })

/** Adds a pattern unless it is known. True when it was new. */
export function addPattern(master: Master, stock: number, counts: Pattern): boolean {
  const key = keyOf({ stock, counts })
  if (master.known.has(key)) return false
  master.known.add(key)
  addColumnOf(master, stock, columnOf(master.problem, stock, counts))
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
export function usedPatterns(master: Master): { stock: number; counts: Pattern; times: number }[] {
  const used = []
  for (const { stock, column } of master.patterns) {
    const times = valueOf(master.simplex, column)
    if (times > 1e-7) used.push({ stock, counts: countsOf(master, column), times })
  }
  return used
}

/** How many parts the solution leaves uncut, paying their price instead. */
export function unmet({ simplex, problem: { parts } }: Master): number {
  let total = 0
  for (let part = 0; part < parts.length; part += 1) total += valueOf(simplex, parts.length + part)
  return total
}

/** Lets only patterns be used that take no more of a part than is wanted; every pattern where wanted is empty. */
export function keepPatterns({ simplex, patterns }: Master, wanted: readonly number[]): void {
  for (const { column } of patterns) {
    const one = simplex.columns[column] as Column
    one.upper = one.rows.every((row, k) => (one.values[k] as number) <= (wanted[row] ?? Infinity))
      ? Infinity
      : 0
  }
}
