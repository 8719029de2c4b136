import { boundOf, roundUp, type Claim } from './bound.ts'
import { priceOf, type Bought, type CuttingProblem } from './cuttingProblem.ts'
import { cheapened } from './dive.ts'
import type { Workbench } from './generate.ts'
import type { Bounds } from './master.ts'
import { unsettledStock } from './openCases.ts'
import { boundShownBy, type Proof } from './proof.ts'
import type { ClosedProof } from './stages.ts'

/** A case of the search: how many of each stock may be bought, what is shown for it and by which duals, and how it was divided or closed. */
export type Node = {
  bounds: Bounds
  duals: number[]
  bound: number
  /** What the duals show, in 1/2²⁴ pence: the bound before it is rounded up. */
  lower: number
  /** What no plan within its parent's bounds costs less than. */
  known: number
  order: number
  /** How often its settled lengths were tried to be packed and neither packed nor shown to hold too little. */
  tries: number
  /** What the best plan cost when that was tried last. */
  pence?: number
  split?: { stock: number; upTo: number; fewer: Node; more: Node }
  closed?: ClosedProof
}

/** most: effort after which the search gives up; stop: whether someone wants it to end now; cutoff: only plans that cost less are looked for. */
export type Limits = {
  most: number
  stop: () => boolean
  cutoff?: number
  onPlan?: (pence: number, bound: number) => void
}

/** How far a search has come. aside: cases with settled lengths whose lists were too long; they stay in the bound. */
export type State = {
  bench: Workbench
  plan: Bought[] | undefined
  pence: number
  open: Node[]
  aside: Node[]
  limits: Limits
  nodes: number
  /** What every set of duals so far shows: each may close cases far from its own. */
  claims: Claim[]
  /** Counts of the stocks that were tried to be packed. */
  tried: Set<string>
}

/** What no plan of a case costs less than, by what was shown for it or for the one it came of. */
const shown = ({ bound, known }: Node): number => Math.max(bound, known)

/** Whether a case can't hold a plan that is cheaper than the best. */
export const isClosed = (state: State, node: Node): boolean => shown(node) >= state.pence

/** No plan costs less than this. */
export const lowest = ({ open, aside, pence }: State): number =>
  [...open, ...aside].reduce((least, node) => Math.min(least, shown(node)), pence)

/** Keeps a plan if it is the cheapest so far. */
export function offer(state: State, plan: Bought[] | undefined): void {
  if (!plan) return
  const better = cheapened(state.bench.problem, plan)
  const pence = priceOf(state.bench.problem, better)
  if (pence >= state.pence) return
  state.plan = better
  state.pence = pence
  state.limits.onPlan?.(pence, lowest(state))
}

export type Split = { stock: number; upTo: number }

/** A stock whose bounds are still apart, divided near its count. */
function anySplit(counts: readonly number[], { least, most }: Bounds): Split | undefined {
  const stock = counts.findIndex((_, at) => (least[at] as number) < (most[at] as number))
  if (stock < 0) return undefined
  const near = Math.min((most[stock] as number) - 1, Math.round(counts[stock] as number))
  return { stock, upTo: Math.max(least[stock] as number, near) }
}

/** The stock to divide by: the least settled; where all are settled, one whose bounds are still apart. */
export function splitOf(
  problem: CuttingProblem,
  counts: readonly number[],
  bounds: Bounds,
): Split | undefined {
  const found = unsettledStock(problem, counts)
  return found ? { stock: found.at, upTo: found.upTo } : anySplit(counts, bounds)
}

function child(parent: Node, change: { stock: number; least?: number; most?: number }): Node {
  const { bounds, duals } = parent
  const least = bounds.least.slice()
  const most = bounds.most.slice()
  if (change.least !== undefined) least[change.stock] = change.least
  if (change.most !== undefined) most[change.stock] = change.most
  return {
    bounds: { least, most },
    duals,
    bound: -Infinity,
    lower: -Infinity,
    known: shown(parent),
    order: 0,
    tries: 0,
  }
}

/** Closes a case as far as a claim shows. */
function apply({ bench }: State, node: Node, claim: Claim): void {
  const lower = boundOf(claim, node.bounds)
  if (lower <= node.lower) return
  Object.assign(node, {
    lower,
    duals: claim.duals,
    bound: Math.max(node.bound, roundUp(bench.problem, lower)),
  })
}

/** Takes a claim in, and what it shows for every open case. */
export function claim(state: State, node: Node, made: Claim): void {
  state.claims.push(made)
  for (const one of [node, ...state.open]) apply(state, one, made)
}

/** Divides a case in two, each open unless its parent's duals already close it. */
export function divide(state: State, node: Node, { stock, upTo }: Split): void {
  const fewer = child(node, { stock, most: upTo })
  const more = child(node, { stock, least: upTo + 1 })
  node.split = { stock, upTo, fewer, more }
  for (const one of [fewer, more]) {
    for (const claim of state.claims) apply(state, one, claim)
    one.order = state.nodes
    if (!isClosed(state, one)) state.open.push(one)
  }
}

/** What shows a case: its own closed list where its parts show no more than that. */
export function proofOf({ split, closed, duals, bound }: Node): Proof {
  if (!split) return closed ? { closed } : { duals, bound }
  const { stock, upTo, fewer, more } = split
  const divided = { stock, upTo, fewer: proofOf(fewer), more: proofOf(more) }
  return closed && closed.bound >= boundShownBy(divided) ? { closed } : divided
}
