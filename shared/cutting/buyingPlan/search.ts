import { claimedBound } from './bound.ts'
import { priceOf, type Bought, type CuttingProblem } from './cuttingProblem.ts'
import { cheapened, dive, otherWays, plainWay } from './dive.ts'
import { generate, type Workbench } from './generate.ts'
import { bestGreedy } from './greedy.ts'
import { makeKnapsack } from './knapsack.ts'
import { addPattern, boughtCounts, makeMaster, type Bounds } from './master.ts'
import { packInto } from './packing.ts'

/** A part of the certificate: either divided by how many of a stock are bought, or closed by one value a part. */
export type Proof =
  | { stock: number; upTo: number; fewer: Proof; more: Proof }
  | { duals: number[]; bound: number }
  | { searched: number[] }

/** What a section's search came to: the plan, what it costs, the least that any plan could, and why. */
export type Found = {
  plan: Bought[] | undefined
  pence: number
  bound: number
  proof: Proof
  effort: number
  /** Parts that the last try could not cut, where there is no plan. */
  uncut: Int32Array
}

/** most: effort after which the search gives up; stop: whether someone wants it to end now. */
export type Limits = {
  most: number
  stop: () => boolean
  onPlan?: (pence: number, bound: number) => void
}

type Node = {
  bounds: Bounds
  duals: number[]
  bound: number
  order: number
  split?: { stock: number; upTo: number; fewer: Node; more: Node }
  searched?: boolean
}

type State = {
  bench: Workbench
  plan: Bought[] | undefined
  pence: number
  open: Node[]
  limits: Limits
  nodes: number
}

const greedyRounds = 30
/** Work allowed for looking through every packing into lengths that were settled. */
const packingWork = 200_000

function offer(state: State, plan: Bought[] | undefined): void {
  if (!plan) return
  const better = cheapened(state.bench.problem, plan)
  const pence = priceOf(state.bench.problem, better)
  if (pence >= state.pence) return
  state.plan = better
  state.pence = pence
  state.limits.onPlan?.(pence, lowest(state))
}

const lowest = ({ open, pence }: State): number =>
  open.reduce((least, { bound }) => Math.min(least, bound), pence)

/** Works on one open node until it is closed, divided, or looked through. */
function work(state: State, node: Node): void {
  const { bench } = state
  const solved = generate(bench, node.bounds, state.pence)
  if (solved.bound > node.bound || node.duals.length === 0) {
    node.bound = Math.max(solved.bound, node.bound)
    node.duals = solved.duals
  }
  if (node.bound >= state.pence || bench.stop()) return keepOpen(state, node)
  const counts = boughtCounts(bench.master)
  const settled = counts.every((count) => Math.abs(count - Math.round(count)) < 1e-6)
  if (settled) return workSettled(state, node, Int32Array.from(counts, Math.round))
  if (state.nodes < 12 || state.nodes % 8 === 0) offer(state, dive(bench, node.bounds, plainWay))
  if (node.bound >= state.pence) return
  divide(state, node, splitOf(bench.problem, counts))
}

/** A node that was interrupted stays open with its bound. */
function keepOpen(state: State, node: Node): void {
  if (node.bound < state.pence) state.open.push(node)
}

/** The stock whose count is least settled, a dear one first. */
function splitOf({ stocks }: CuttingProblem, counts: number[]): { stock: number; upTo: number } {
  let best = { stock: 0, upTo: 0, gain: -1 }
  counts.forEach((count, stock) => {
    const share = count - Math.floor(count + 1e-9)
    const gain = Math.min(share, 1 - share) * ((stocks[stock]?.pence ?? 0) + 1)
    if (share > 1e-6 && share < 1 - 1e-6 && gain > best.gain)
      best = { stock, upTo: Math.floor(count + 1e-9), gain }
  })
  return best
}

function child({ bounds, duals }: Node, change: { stock: number; least?: number; most?: number }): Node {
  const least = bounds.least.slice()
  const most = bounds.most.slice()
  if (change.least !== undefined) least[change.stock] = change.least
  if (change.most !== undefined) most[change.stock] = change.most
  return { bounds: { least, most }, duals, bound: -Infinity, order: 0 }
}

function divide(state: State, node: Node, { stock, upTo }: { stock: number; upTo: number }): [Node, Node] {
  const fewer = child(node, { stock, most: upTo })
  const more = child(node, { stock, least: upTo + 1 })
  node.split = { stock, upTo, fewer, more }
  for (const one of [fewer, more]) {
    one.bound = claimedBound(state.bench.problem, { table: state.bench.table, duals: one.duals }, one.bounds)
    one.order = state.nodes
    if (one.bound < state.pence) state.open.push(one)
  }
  return [fewer, more]
}

/** Whole counts: they pack, or it is shown that they don't, or other counts within the bounds are left to try. */
function workSettled(state: State, node: Node, counts: Int32Array): void {
  const { bench } = state
  const exactly = { least: counts.slice(), most: counts.slice() }
  for (const way of [plainWay, ...otherWays]) {
    offer(state, dive(bench, exactly, way))
    if (node.bound >= state.pence || bench.stop()) return keepOpen(state, node)
  }
  const packed = looksThrough(bench.problem, counts)
    ? packInto(bench.problem, counts, packingWork)
    : { found: undefined, whole: false, spent: 0 }
  bench.effort += packed.spent * bench.problem.parts.length
  offer(state, packed.found)
  if (node.bound >= state.pence) return
  const free = counts.findIndex(
    (_, stock) => (node.bounds.least[stock] as number) < (node.bounds.most[stock] as number),
  )
  if (free >= 0) return divideAround(state, node, { stock: free, count: counts[free] as number })
  if (packed.whole) node.searched = true
  else keepAside(state, node)
}

/** Whether every packing can be looked through at all: few parts and few lengths. */
const looksThrough = ({ parts }: CuttingProblem, counts: Int32Array): boolean =>
  parts.length <= 40 && counts.reduce((total, count) => total + count, 0) <= 60

/** Fewer than, exactly, and more than a count: the middle one comes nearer to being settled wholly. */
function divideAround(state: State, node: Node, { stock, count }: { stock: number; count: number }): void {
  const { least, most } = node.bounds
  if (count > (least[stock] as number)) {
    const [, more] = divide(state, node, { stock, upTo: count - 1 })
    if (count < (most[stock] as number)) {
      state.open = state.open.filter((one) => one !== more)
      if (more.bound < state.pence) divide(state, more, { stock, upTo: count })
    }
  } else divide(state, node, { stock, upTo: count })
}

/** A node that can be neither packed nor refuted: it stays in the bound, and isn't worked on again. */
function keepAside(state: State, node: Node): void {
  aside.add(node)
  state.open.push(node)
}
const aside = new WeakSet<Node>()

/** The open node with the lowest bound, the newest of those. */
function next({ open }: State): Node | undefined {
  let best: Node | undefined
  for (const node of open) {
    if (aside.has(node)) continue
    if (!best || node.bound < best.bound || (node.bound === best.bound && node.order > best.order))
      best = node
  }
  return best
}

function proofOf(node: Node): Proof {
  if (node.split) {
    const { stock, upTo, fewer, more } = node.split
    return { stock, upTo, fewer: proofOf(fewer), more: proofOf(more) }
  }
  return node.searched
    ? { searched: Array.from(node.bounds.least) }
    : { duals: node.duals, bound: node.bound }
}

function setUp(problem: CuttingProblem, limits: Limits): { state: State; root: Node; uncut: Int32Array } {
  const dearest = Math.max(1, ...problem.stocks.map(({ pence }) => pence))
  const { plan, left } = bestGreedy(problem, greedyRounds)
  const bench: Workbench = {
    problem,
    master: makeMaster(problem, 4 * dearest),
    table: makeKnapsack(problem),
    effort: 0,
    stop: () => false,
  }
  bench.stop = () => bench.effort > limits.most || limits.stop()
  const state: State = { bench, plan: undefined, pence: Infinity, open: [], limits, nodes: 0 }
  for (const { stock, counts } of plan ?? []) addPattern(bench.master, stock, counts)
  offer(state, plan)
  const bounds = {
    least: new Int32Array(problem.stocks.length),
    most: Int32Array.from(problem.stocks, ({ most }) => most),
  }
  return { state, root: { bounds, duals: [], bound: 0, order: 0 }, uncut: left }
}

/** The cheapest plan for one section, by branching on how many of each length are bought, the lowest bound first. */
export function search(problem: CuttingProblem, limits: Limits): Found {
  const { state, root, uncut } = setUp(problem, limits)
  state.open.push(root)
  for (let node = next(state); node && !state.bench.stop(); node = next(state)) {
    const now = node
    state.open = state.open.filter((one) => one !== now && one.bound < state.pence)
    if (now.bound >= state.pence) continue
    state.nodes += 1
    work(state, now)
  }
  const { plan, pence, bench } = state
  return { plan, pence, bound: lowest(state), proof: proofOf(root), effort: bench.effort, uncut }
}
