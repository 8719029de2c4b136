import { dualScale, roundUp } from './bound.ts'
import { demandsOf, type Bought, type CuttingProblem, type Pattern } from './cuttingProblem.ts'
import { addRow } from './grow.ts'
import { addShare } from './sparse.ts'
import type { Listed } from './listing.ts'
import {
  addColumnOf,
  makeMaster,
  partDuals,
  slotPrice,
  solveFor,
  usedPatterns,
  type Bounds,
  type Master,
} from './master.ts'
import { brokenBy, cutCount, cutFromRow, halvesOf, oddParts, type RankOne, type Shares } from './rankOne.ts'
import type { Column } from './simplex.ts'

/** A closed program: no pattern but those listed, with the cuts found so far. wanted: of each part, and what that counts in each cut behind them. */
export type Closed = {
  problem: CuttingProblem
  master: Master
  cuts: RankOne[]
  wanted: number[]
}

/** How often each stock may be bought and each pattern taken at a node; `unlimited` for any number. */
export type NodeBounds = { stocks: Bounds; patterns: Bounds }
export const unlimited = 1e9

/** Values of parts and cuts, and of a length of each stock, in whole shares of a penny. */
export type Values = { duals: number[]; slots: number[] }

export function makeClosed(
  problem: CuttingProblem,
  listed: readonly Listed[],
  { known, stop }: { known: readonly RankOne[]; stop: () => boolean },
): Closed {
  const master = makeMaster(problem, stop)
  for (const { stock, column } of listed) addColumnOf(master, stock, column)
  const closed: Closed = {
    problem,
    master,
    cuts: [],
    wanted: demandsOf(problem),
  }
  for (const cut of known) addCut(closed, cut)
  return closed
}

/** What a column counts in a cut: a pattern its parts, an unmet part itself, what is cut too much nothing. */
function countIn({ problem: { parts }, master }: Closed, { times, over }: RankOne, number: number): number {
  const { rows, values } = master.simplex.columns[number] as Column
  let sum = 0
  for (let k = 0; number >= parts.length && (rows[k] as number) < parts.length; k += 1)
    sum += (times[rows[k] as number] as number) * (values[k] as number)
  return Math.ceil(sum / over)
}

function addCut(closed: Closed, cut: RankOne): void {
  const right = cutCount(cut, closed.wanted)
  const counts = (number: number) => countIn(closed, cut, number)
  closed.master.surpluses.push(addRow(closed.master.simplex, { counts, right }))
  closed.cuts.push(cut)
  closed.wanted.push(right)
}

/** The solution as it stands, for cuts. */
const sharesOf = ({ master, problem }: Closed): Shares => ({
  used: usedPatterns(master),
  demand: demandsOf(problem),
})

/** Cuts that the solution's own rows give. */
function rowCuts({ master, problem: { parts } }: Closed): RankOne[] {
  const { rows, level, inverse } = master.simplex
  const cuts: RankOne[] = []
  for (let row = 0; row < rows; row += 1) {
    const value = level[row] as number
    if (Math.abs(value - Math.round(value)) < 1e-5) continue
    const multipliers = inverse.subarray(row * rows)
    cuts.push(cutFromRow(multipliers, parts.length, 1), cutFromRow(multipliers, parts.length, -1))
  }
  return cuts
}

/** The most cuts added at once. */
const mostAtOnce = 15

/** The same for cuts that are alike: halves are halves, whatever they are written over. */
const cutKey = ({ times, over }: RankOne): string =>
  times.map((one) => Math.round((one / over) * 4096)).join()

/** Adds the cuts that the solution as it stands breaks most; how many. */
export function cutOff(closed: Closed): number {
  const shares = sharesOf(closed)
  const known = new Set(closed.cuts.map(cutKey))
  const isNew = (cut: RankOne): boolean => !known.has(cutKey(cut)) && known.add(cutKey(cut)).size > 0
  const made = [
    ...oddParts(shares).map((parts) => () => halvesOf(parts, shares)),
    ...rowCuts(closed).map((cut) => () => cut),
  ]
  const broken = made
    .map((cut) => ({ cut, by: brokenBy(cut(), shares) }))
    .filter(({ by }) => by > 1e-3)
    .sort((a, b) => b.by - a.by)
  let added = 0
  for (const { cut } of broken) {
    if (added === mostAtOnce) break
    const one = cut()
    if (!isNew(one)) continue
    addCut(closed, one)
    added += 1
  }
  return added
}

/** Solves the program within a node's bounds. False where the arithmetic failed. */
export function solveWithin({ master, problem }: Closed, { stocks, patterns }: NodeBounds): boolean {
  master.patterns.forEach(({ column }, at) => {
    const one = master.simplex.columns[column] as Column
    const most = patterns.most[at] as number
    one.lower = patterns.least[at] as number
    one.upper = most >= unlimited ? Infinity : most
  })
  return solveFor(master, stocks, demandsOf(problem))
}

/** Never −0, which doesn’t survive being written down. */
const wholeShares = (value: number): number => Math.round(value * dualScale) + 0

/** The solution's values made whole. */
export function valuesOf({ master, problem, cuts }: Closed): Values {
  const from = problem.parts.length + problem.stocks.length
  const cutDuals = master.simplex.duals.subarray(from, from + cuts.length)
  return {
    duals: [...partDuals(master), ...cutDuals].map((dual) => Math.max(0, wholeShares(dual))),
    slots: problem.stocks.map((_, stock) => wholeShares(slotPrice(master, stock))),
  }
}

/** What each column is worth by values of parts and cuts. */
function worthsOf(
  { master: { simplex }, problem: { parts, stocks } }: Closed,
  duals: readonly number[],
): Float64Array {
  const worths = simplex.along.fill(0)
  duals.forEach((dual, at) => {
    const row = simplex.across[at < parts.length ? at : at + stocks.length]
    if (row && dual > 0) addShare(row, dual, worths)
  })
  return worths
}

/**
 * What every plan of listed patterns within the bounds costs at least, pence, exactly: a length's value is raised to the
 * worth of the best pattern that may be taken any number of times.
 */
export function claim(closed: Closed, values: Values, { stocks, patterns }: NodeBounds): number {
  const { problem, master, wanted } = closed
  const { duals } = values
  const slots = values.slots.slice()
  const worths = worthsOf(closed, duals)
  master.patterns.forEach(({ stock, column }, at) => {
    const worth = worths[column] as number
    if ((patterns.most[at] as number) >= unlimited && worth > (slots[stock] as number)) slots[stock] = worth
  })
  let total = 0
  let size = 0
  const add = (shares: number) => {
    total += shares
    size += Math.abs(shares)
  }
  duals.forEach((dual, at) => add(dual * (wanted[at] as number)))
  problem.stocks.forEach(({ pence }, stock) => {
    const over = pence * dualScale - (slots[stock] as number)
    add(over * ((over >= 0 ? stocks.least : stocks.most)[stock] as number))
  })
  master.patterns.forEach(({ stock, column }, at) => {
    const over = (slots[stock] as number) - (worths[column] as number)
    const often = (over >= 0 ? patterns.least : patterns.most)[at] as number
    if (over !== 0 && often !== 0) add(over * often)
  })
  // Past whole numbers that doubles hold exactly nothing is claimed.
  return size > Number.MAX_SAFE_INTEGER ? 0 : roundUp(problem, total)
}

/** The whole solution as a plan, no more of a part than is wanted. */
export function planOf({ master, problem }: Closed): Bought[] {
  const left = demandsOf(problem)
  const taken = (counts: Pattern): Pattern => {
    const now = counts.map((count, part) => Math.min(count, left[part] as number))
    now.forEach((count, part) => (left[part] = (left[part] as number) - count))
    return now
  }
  return usedPatterns(master).flatMap(({ stock, counts, times }) =>
    Array.from({ length: Math.round(times) }, () => ({ stock, counts: taken(counts), times: 1 })).filter(
      (one) => one.counts.some((count) => count > 0),
    ),
  )
}
