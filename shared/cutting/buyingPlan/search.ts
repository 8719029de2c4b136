import { claimedBound } from './bound.ts'
import { priceOf, type Bought, type CuttingProblem } from './cuttingProblem.ts'
import { cheapened, dive, otherWays, plainWay } from './dive.ts'
import { generate, type Workbench } from './generate.ts'
import { bestGreedy } from './greedy.ts'
import { makeKnapsack } from './knapsack.ts'
import { addPattern, boughtCounts, makeMaster, type Bounds } from './master.ts'
import { rework } from './rework.ts'
import { closeInStages, type ClosedProof } from './stages.ts'

/** A part of the certificate: either divided by how many of a stock are bought, or closed by one value a part. */
export type Proof =
  | { stock: number; upTo: number; fewer: Proof; more: Proof }
  | { duals: number[]; bound: number }
  | { closed: ClosedProof }

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
  /** Only plans that cost less are looked for. */
  cutoff?: number
  onPlan?: (pence: number, bound: number) => void
}

type Node = {
  bounds: Bounds
  duals: number[]
  bound: number
  order: number
  split?: { stock: number; upTo: number; fewer: Node; more: Node }
  closed?: ClosedProof
}

type State = {
  bench: Workbench
  plan: Bought[] | undefined
  pence: number
  open: Node[]
  aside: Node[]
  limits: Limits
  nodes: number
}

const greedyRounds = 30
/** What closing a node may cost before it is divided instead: more where the lengths are settled, since little else is left to try. */
const [usualClosing, settledClosing] = [
  { most: 3e8, cap: 4000 },
  { most: 2e9, cap: 32_000 },
]

function offer(state: State, plan: Bought[] | undefined): void {
  if (!plan) return
  const better = cheapened(state.bench.problem, plan)
  const pence = priceOf(state.bench.problem, better)
  if (pence >= state.pence) return
  state.plan = better
  state.pence = pence
  state.limits.onPlan?.(pence, lowest(state))
}

const lowest = ({ open, aside, pence }: State): number =>
  [...open, ...aside].reduce((least, { bound }) => Math.min(least, bound), pence)

/** Works on one open node until it is closed or divided. */
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
  const split = splitOf(bench.problem, counts, node.bounds)
  const isLong =
    state.nodes > 1 && (state.plan ?? []).reduce((count, { times }) => count + times, 0) >= fewLengths
  if (isLong && !settled && split) return divide(state, node, split)
  if (isLong) {
    const exactly = { least: Int32Array.from(counts, Math.round), most: Int32Array.from(counts, Math.round) }
    for (const way of [plainWay, ...quickWays]) {
      const was = state.pence
      const d = dive(bench, exactly, way)
      offer(state, d)
      if (process.env.LNS)
        console.log(
          'node',
          state.nodes,
          'level',
          node.bound,
          'packed',
          !!d,
          was,
          state.pence,
          performance.now() | 0,
        )
      if (node.bound >= state.pence || bench.stop()) return keepOpen(state, node)
    }
  } else offer(state, dive(bench, node.bounds, plainWay))
  if (node.bound >= state.pence || bench.stop()) return keepOpen(state, node)
  if (state.nodes === 1) better(state, node)
  if (node.bound >= state.pence || bench.stop()) return keepOpen(state, node)
  if (state.nodes > 1 || (state.plan ?? []).reduce((count, { times }) => count + times, 0) < fewLengths)
    closeNode(state, node, settled ? settledClosing : usualClosing)
  if (node.bound >= state.pence || bench.stop()) return keepOpen(state, node)
  if (split) divide(state, node, split)
  else keepAside(state, node)
}

/** Plans of fewer lengths than this are closed as they are. */
const fewLengths = 60
/** Ways of diving tried for a plan of many lengths, after the plainest. */
const quickWays = otherWays.filter(({ slow }) => !slow).slice(0, 3)
/** Windows that a plan of many lengths is cut anew in, the tries in a row that may come to nothing, and the work each may take. */
const reworkings = [
  { window: { atOnce: 14, worst: 5 }, idle: 40, work: 3e7 },
  { window: { atOnce: 24, worst: 6 }, idle: 40, work: 6e7 },
  { window: { atOnce: 36, worst: 8 }, idle: 15, work: 1.5e8 },
]

/** Cuts some lengths of the best plan anew at a time, the worst first, for as long as that makes it cheaper. */
function reworkLengths(
  state: State,
  { duals, bound }: Node,
  { window, idle, work: most }: (typeof reworkings)[number],
): void {
  const { bench } = state
  const solve = (problem: CuttingProblem, cutoff: number) => {
    const found = search(problem, { most, cutoff, stop: bench.stop })
    bench.effort += found.effort
    return found.plan
  }
  for (let attempt = 0, since = 0; since < idle && bound < state.pence; attempt += 1) {
    const { plan, pence } = state
    if (!plan || bench.stop()) return
    offer(state, rework(bench.problem, plan, { duals, window, attempt, solve }))
    since = state.pence < pence ? 0 : since + 1
  }
}

/** A plan of many lengths made cheaper, before what it may still save is looked through. */
function better(state: State, node: Node): void {
  const lengths = (state.plan ?? []).reduce((count, { times }) => count + times, 0)
  if (lengths < fewLengths) return
  for (const way of quickWays)
    if (node.bound < state.pence && !state.bench.stop()) offer(state, dive(state.bench, node.bounds, way))
  for (const reworking of reworkings.slice(0, 1)) reworkLengths(state, node, reworking)
  if (process.env.LNS) console.log(state.pence, node.bound, performance.now() | 0)
}

/** Looks through the patterns that could still better the best plan, if they are few enough. */
function closeNode(state: State, node: Node, limits: { most: number; cap: number }): void {
  const closed = closeInStages(
    {
      bench: state.bench,
      pence: () => state.pence,
      onPlan: (plan) => offer(state, plan),
      ...limits,
    },
    node,
  )
  if (!closed || closed.bound <= node.bound) return
  node.closed = closed
  node.bound = closed.bound
}

/** A node that was interrupted stays open with its bound. */
function keepOpen(state: State, node: Node): void {
  if (node.bound < state.pence) state.open.push(node)
}

/** The stock whose count is least settled, a dear one first; where all are settled, one whose bounds are still apart. */
function splitOf(
  { stocks }: CuttingProblem,
  counts: number[],
  { least, most }: Bounds,
): { stock: number; upTo: number } | undefined {
  let best: { stock: number; upTo: number; gain: number } | undefined
  counts.forEach((count, stock) => {
    if ((least[stock] as number) >= (most[stock] as number)) return
    const share = count - Math.floor(count + 1e-9)
    const gain = Math.min(share, 1 - share) * ((stocks[stock]?.pence ?? 0) + 1)
    if (share > 1e-6 && share < 1 - 1e-6 && gain > (best?.gain ?? -1))
      best = { stock, upTo: Math.floor(count + 1e-9), gain }
  })
  if (best) return best
  const stock = counts.findIndex((_, at) => (least[at] as number) < (most[at] as number))
  return stock < 0
    ? undefined
    : {
        stock,
        upTo: Math.max(
          least[stock] as number,
          Math.min((most[stock] as number) - 1, Math.round(counts[stock] as number)),
        ),
      }
}

function child({ bounds, duals }: Node, change: { stock: number; least?: number; most?: number }): Node {
  const least = bounds.least.slice()
  const most = bounds.most.slice()
  if (change.least !== undefined) least[change.stock] = change.least
  if (change.most !== undefined) most[change.stock] = change.most
  return { bounds: { least, most }, duals, bound: -Infinity, order: 0 }
}

function divide(state: State, node: Node, { stock, upTo }: { stock: number; upTo: number }): void {
  const fewer = child(node, { stock, most: upTo })
  const more = child(node, { stock, least: upTo + 1 })
  node.split = { stock, upTo, fewer, more }
  for (const one of [fewer, more]) {
    one.bound = claimedBound(state.bench.problem, { table: state.bench.table, duals: one.duals }, one.bounds)
    one.order = state.nodes
    if (one.bound < state.pence) state.open.push(one)
  }
}

/** A node whose lengths are settled and whose list is too long to close: it stays in the bound, and isn't worked on again. */
function keepAside(state: State, node: Node): void {
  state.aside.push(node)
}

/** The open node with the lowest bound, the newest of those. */
function next({ open }: State): Node | undefined {
  let best: Node | undefined
  for (const node of open) {
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
  return node.closed ? { closed: node.closed } : { duals: node.duals, bound: node.bound }
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
  const pence = limits.cutoff ?? Infinity
  const state: State = { bench, plan: undefined, pence, open: [], aside: [], limits, nodes: 0 }
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
