import type { Bought, CuttingProblem, Pattern } from './cuttingProblem.ts'
import {
  claim,
  cutOff,
  makeClosed,
  planOf,
  solveWithin,
  unlimited,
  valuesOf,
  type Closed,
  type NodeBounds,
  type Values,
} from './closed.ts'
import type { Listed } from './listing.ts'
import { wholes } from './lists.ts'
import { boughtCounts, countsOf, type Bounds, type Master } from './master.ts'
import { unsettled, unsettledStock } from './openCases.ts'
import type { RankOne } from './rankOne.ts'
import { worstRow } from './pivoting.ts'
import { valueOf } from './simplex.ts'
import { entries } from './sparse.ts'

/** What a case is divided by: how many are bought of a stock, or how often a listed pattern is taken. */
type Split = { on: 'stock' | 'pattern'; at: number; upTo: number }

/** A case of what shows that a list holds no cheaper plan: divided in two, or closed by values of parts, cuts and lengths. */
export type ListProof =
  | (({ offer: number } | { pattern: Pattern; of: number }) & {
      upTo: number
      fewer: ListProof
      more: ListProof
    })
  | (Values & { bound: number })

type Change = { on: Split['on']; at: number; least?: number; most?: number }

type Node = Values & {
  parent: Node | undefined
  change: Change | undefined
  bound: number
  split?: Split & { fewer: Node; more: Node }
}

/**
 * A closed search: the patterns it may use, the bounds it keeps to, what a plan must cost less than. onPlan takes a plan and gives what the best one costs
 * now; spend counts work and tells whether to stop.
 */
export type Closing = {
  problem: CuttingProblem
  listed: readonly Listed[]
  bounds: Bounds
  cutoff: number
  known: readonly RankOne[]
  onPlan: (plan: Bought[]) => number
  spend: (effort: number) => boolean
  stop: () => boolean
}

/** How a closed search ended. bound: what every plan of the list within the bounds costs at least. */
export type ClosedBy = { proof: ListProof; bound: number; cuts: RankOne[] }

type State = Closing & { closed: Closed; at: NodeBounds; open: Node[]; stopped: boolean }

/** Past so many cuts, or counts of patterns in cuts, the program would be slower than what they spare. */
const [mostCuts, mostCounts] = [120, 60_000]
/** Times a node's solution is cut off: more where the search starts. */
const [rootRounds, nodeRounds] = [6, 2]

/** The bounds that hold at a node: the search's own and every change on the way to it. */
function boundsAt({ bounds, at }: State, node: Node): void {
  at.stocks.least.set(bounds.least)
  at.stocks.most.set(bounds.most)
  at.patterns.least.fill(0)
  at.patterns.most.fill(unlimited)
  for (let one: Node | undefined = node; one; one = one.parent) {
    if (!one.change) continue
    const { least, most } = one.change
    const kind = one.change.on === 'stock' ? at.stocks : at.patterns
    const place = one.change.at
    if (least !== undefined) kind.least[place] = Math.max(kind.least[place] as number, least)
    if (most !== undefined) kind.most[place] = Math.min(kind.most[place] as number, most)
  }
}

/**
 * Solves a node's program, no further than closes the node, and claims what it shows: all of it where whole numbers didn't show that. False where it
 * couldn't be solved.
 */
function solve(state: State, node: Node): boolean {
  const { closed } = state
  const { simplex } = closed.master
  for (const enough of [state.cutoff - closed.problem.priceStep + 1e-3, Infinity]) {
    const before = simplex.pivots
    simplex.enough = enough
    const sane = solveWithin(closed, state.at)
    const steps = simplex.pivots - before + 1
    state.stopped ||= state.spend(steps * (simplex.rows * simplex.rows + entries(simplex.across)))
    if (!sane) return false
    const values = valuesOf(closed)
    const bound = claim(closed, values, state.at)
    if (bound > node.bound) Object.assign(node, values, { bound })
    if (node.bound >= state.cutoff || worstRow(simplex).row < 0) break
  }
  return true
}

/** The stock whose count is least settled, a dear one first. */
function stockSplit({ closed: { master, problem } }: State): Split | undefined {
  const found = unsettledStock(problem, boughtCounts(master))
  return found && { on: 'stock', ...found }
}

/** The pattern that is nearest to being taken once more. */
function patternSplit({ closed: { master } }: State): Split | undefined {
  const counts = master.patterns.map(({ column }) => valueOf(master.simplex, column))
  const found = unsettled(counts, (share) => share)
  return found && { on: 'pattern', ...found }
}

function divide(state: State, node: Node, split: Split): void {
  const child = (change: Pick<Change, 'least' | 'most'>): Node => {
    const { on, at } = split
    const one: Node = {
      parent: node,
      change: { on, at, ...change },
      duals: node.duals,
      slots: node.slots,
      bound: node.bound,
    }
    boundsAt(state, one)
    one.bound = claim(state.closed, one, state.at)
    if (one.bound < state.cutoff) state.open.push(one)
    return one
  }
  const fewer = child({ most: split.upTo })
  const more = child({ least: split.upTo + 1 })
  node.split = { ...split, fewer, more }
}

/** Whether further cuts may come in. */
const hasRoom = ({ closed: { cuts }, listed }: State): boolean =>
  cuts.length < mostCuts && cuts.length * listed.length < mostCounts

/** Works on a node until it is closed or divided. A node whose program can't be solved stays open with its bound. */
function work(state: State, node: Node): void {
  boundsAt(state, node)
  const rounds = node.parent ? nodeRounds : rootRounds
  for (let round = 0; ; round += 1) {
    if (!solve(state, node)) return
    if (node.bound >= state.cutoff || state.stopped) return
    const settled = !stockSplit(state)
    const cuts = (settled || !node.parent) && round < rounds && hasRoom(state)
    if (!cuts || cutOff(state.closed) === 0) break
  }
  const split = stockSplit(state) ?? patternSplit(state)
  if (split) divide(state, node, split)
  else state.cutoff = Math.min(state.cutoff, state.onPlan(planOf(state.closed)))
}

function proofOf(state: State, { split, duals, slots, bound }: Node): ListProof {
  if (!split) return { duals, slots, bound }
  const { on, at, upTo } = split
  const { master } = state.closed
  const fewer = proofOf(state, split.fewer)
  const more = proofOf(state, split.more)
  if (on === 'stock') return { offer: at, upTo, fewer, more }
  const { stock, column } = master.patterns[at] as Master['patterns'][number]
  return { pattern: countsOf(master, column), of: stock, upTo, fewer, more }
}

const leastOf = (proof: ListProof): number =>
  'bound' in proof ? proof.bound : Math.min(leastOf(proof.fewer), leastOf(proof.more))

function setUp(closing: Closing): { state: State; root: Node } {
  const { problem, listed } = closing
  const zeros = (count: number) => ({ least: wholes(count), most: wholes(count) })
  const at = { stocks: zeros(problem.stocks.length), patterns: zeros(listed.length) }
  const root: Node = {
    parent: undefined,
    change: undefined,
    duals: problem.parts.map(() => 0),
    slots: problem.stocks.map(() => 0),
    bound: 0,
  }
  const closed = makeClosed(problem, listed, closing)
  return { state: { ...closing, closed, at, open: [root], stopped: false }, root }
}

/**
 * Looks through a closed list of patterns for plans that cost less than the cutoff, by branching on how many of each stock are bought and how often
 * patterns are taken, with cuts that leave no plan out. The newest case first: its program is a few steps from the one before, and plans come early. Ends early, with what is shown by then, when told to stop.
 */
export function close(closing: Closing): ClosedBy {
  const { state, root } = setUp(closing)
  for (let node = state.open.pop(); node && !state.stopped; node = state.open.pop()) {
    if (node.bound >= state.cutoff) continue
    work(state, node)
  }
  const proof = proofOf(state, root)
  return { proof, bound: leastOf(proof), cuts: state.closed.cuts }
}
