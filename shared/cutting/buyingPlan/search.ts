import {
  claim,
  divide,
  isClosed,
  lowest,
  offer,
  proofOf,
  splitOf,
  type Limits,
  type Node,
  type State,
} from './cases.ts'
import type { Bought, CuttingProblem } from './cuttingProblem.ts'
import { dive, plainWay } from './dive.ts'
import { generate, type Workbench } from './generate.ts'
import { bestGreedy } from './greedy.ts'
import { makeKnapsack } from './knapsack.ts'
import { wholes } from './lists.ts'
import { betterLongPlan, isLong, packExactly, putBack, tryAgain } from './longPlan.ts'
import { addPattern, boughtCounts, makeMaster } from './master.ts'
import { lowestOpen } from './openCases.ts'
import type { Proof } from './proof.ts'
import { goBack, markSpot } from './simplex.ts'
import { closeInStages } from './stages.ts'

/** What a section's search came to: the plan, what it costs, the least that any plan could, and why. */
export type Found = {
  plan: Bought[] | undefined
  pence: number
  bound: number
  proof: Proof
  effort: number
}

const greedyRounds = 8
/** What closing a node may cost before it is divided instead: more where the lengths are settled, since little else is left to try. */
const [usualClosing, settledClosing] = [
  { most: 6e8, cap: 4000 },
  { most: 2e9, cap: 32_000 },
]

/** A node that was closed, or interrupted: that stays open with its bound. */
function isDone(state: State, node: Node): boolean {
  const closed = isClosed(state, node)
  const stopped = state.bench.stop()
  if (stopped && !closed) state.open.push(node)
  return stopped || closed
}

/** Solves a node's program; its bound and duals where they show more than was known. */
function solve(state: State, node: Node): number[] {
  const { simplex } = state.bench.master
  const spot = markSpot(simplex)
  claim(state, node, generate(state.bench, node.bounds, state.pence))
  if (node.bound >= state.pence) goBack(simplex, spot)
  return boughtCounts(state.bench.master)
}

/** Looks through the patterns that could still better the best plan, if they are few enough. */
function closeNode(state: State, node: Node, limits: { most: number; cap: number }): void {
  const { bench } = state
  const stage = {
    bench,
    pence: () => state.pence,
    onPlan: (plan: Bought[]) => offer(state, plan),
    ...limits,
  }
  const closed = closeInStages(stage, node)
  if (!closed || closed.bound <= node.bound) return
  node.closed = closed
  node.bound = closed.bound
}

/** Works on one open node until it is closed or divided. */
function work(state: State, node: Node): void {
  const { bench } = state
  if (node.tries > 0) return tryAgain(state, node, () => closeNode(state, node, settledClosing))
  const counts = solve(state, node)
  if (isDone(state, node)) return
  const split = splitOf(bench.problem, counts, node.bounds)
  const settled = counts.every((count) => Math.abs(count - Math.round(count)) < 1e-6)
  const isFirst = state.nodes === 1
  const long = isLong(state)
  if (long && !isFirst && !settled && split) return divide(state, node, split)
  if (long && !isFirst) packExactly(state, node, counts)
  else offer(state, dive(bench, { bounds: node.bounds, way: plainWay, cutoff: state.pence }))
  if (isDone(state, node)) return
  if (long && isFirst) betterLongPlan(state, node, search)
  else closeNode(state, node, settled ? settledClosing : usualClosing)
  if (isDone(state, node)) return
  if (split) divide(state, node, split)
  else putBack(state, node)
}

function setUp(problem: CuttingProblem, limits: Limits): { state: State; root: Node } {
  const stop = () => bench.effort > limits.most || limits.stop()
  const bench: Workbench = {
    problem,
    master: makeMaster(problem, stop),
    table: makeKnapsack(problem),
    effort: 0,
    stop,
  }
  const pence = limits.cutoff ?? Infinity
  const state: State = {
    bench,
    plan: undefined,
    pence,
    open: [],
    aside: [],
    limits,
    nodes: 0,
    claims: [],
    tried: new Set(),
  }
  const keep = (plan: Bought[]) => offer(state, plan)
  const plan = bestGreedy(problem, { rounds: greedyRounds, stop: limits.stop, onBetter: keep })
  for (const { stock, counts } of plan ?? []) addPattern(bench.master, stock, counts)
  const bounds = {
    least: wholes(problem.stocks.length),
    most: Int32Array.from(problem.stocks, ({ most }) => most),
  }
  return {
    state,
    root: { bounds, duals: problem.parts.map(() => 0), bound: 0, lower: 0, known: 0, order: 0, tries: 0 },
  }
}

/** The case to work on next. Those set aside come back when there is no other; a part of a plan that is cut anew leaves them. */
function next(state: State): Node | undefined {
  if (state.open.length === 0 && state.limits.cutoff === undefined) state.open = state.aside.splice(0)
  return lowestOpen(state.open)
}

/** The cheapest plan for one section, by branching on how many of each length are bought, the lowest bound first. */
export function search(problem: CuttingProblem, limits: Limits): Found {
  const { state, root } = setUp(problem, limits)
  state.open.push(root)
  for (let node = next(state); node && !state.bench.stop(); node = next(state)) {
    const now = node
    state.open = state.open.filter((one) => one !== now && !isClosed(state, one))
    if (isClosed(state, now)) continue
    state.nodes += 1
    work(state, now)
  }
  const { plan, pence, bench } = state
  return { plan, pence, bound: lowest(state), proof: proofOf(root), effort: bench.effort }
}
