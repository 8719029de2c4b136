import { boundOf, claimOf, dualScale } from './bound.ts'
import { close, type ListProof } from './closing.ts'
import { priceOf, type Bought } from './cuttingProblem.ts'
import type { Workbench } from './generate.ts'
import { listPatterns, type Listed } from './listing.ts'
import type { Bounds } from './master.ts'
import type { RankOne } from './rankOne.ts'

/**
 * Why no plan within some bounds costs less than a sum: by the duals, none up to `most` pence uses a pattern that isn't listed, and the list, with
 * its cuts, holds none that is cheaper than its cases show.
 */
export type ClosedProof = {
  duals: number[]
  most: number
  cuts: RankOne[]
  cases: ListProof
  bound: number
}

/**
 * A search to be closed: the bounds, whole duals that show a bound within them, and what no plan within wider bounds costs less than: lists up to that are
 * empty of plans.
 */
export type ToClose = { bounds: Bounds; duals: number[]; bound: number; known: number }

export type Stage = {
  bench: Workbench
  pence: () => number
  onPlan: (plan: Bought[]) => void
  /** Work after which a stage is given up, and the longest list tried. */
  most: number
  cap: number
}

/** Patterns listed at most, stage by stage: short lists find good plans, only the last has to hold every pattern that could beat them. */
const shortest = 250
const caps = [shortest, 500, 1000, 2000, 4000, 8000, 16_000, 32_000]

type Range = { most: number; listed: Listed[] }

/** The dearest sum up to which plans use no more than cap patterns, and those. */
function widest({ bench, pence }: Stage, { bounds, duals, bound }: ToClose, cap: number): Range | undefined {
  const { problem, table } = bench
  const lower = boundOf(claimOf(problem, table, duals), bounds)
  bench.effort += table.cells * table.chunks.length
  const step = problem.priceStep
  if (pence() === Infinity) return undefined
  for (let most = pence() - step; most >= bound;) {
    const regard = { values: duals, best: table.best, scale: dualScale, most: most * dualScale - lower }
    const listed = listPatterns(problem, { ...regard, bounds }, cap)
    bench.effort += 10 * (listed?.length ?? cap)
    if (listed) return { most, listed }
    const nearer = Math.floor((bound + (most - bound) / 2) / step) * step
    most = nearer < most ? nearer : most - step
  }
  return undefined
}

/** Closes one list. The bound is never past what the list can show: one step dearer than `most`. */
function closeList(
  stage: Stage,
  { bounds, duals }: ToClose,
  { most, listed, cuts: known }: Range & { cuts: RankOne[] },
): ClosedProof {
  const { bench } = stage
  const until = bench.effort + stage.most
  let better = false
  const { proof, bound, cuts } = close({
    problem: bench.problem,
    listed,
    bounds,
    stop: bench.stop,
    known,
    cutoff: Math.min(stage.pence(), most + bench.problem.priceStep),
    onPlan: (plan) => {
      stage.onPlan(plan)
      better = listed.length > shortest && stage.pence() <= most
      return priceOf(bench.problem, plan)
    },
    spend: (effort) => {
      bench.effort += effort
      return better || bench.effort > until || bench.stop()
    },
  })
  return { duals, most, cuts, cases: proof, bound: Math.min(bound, most + bench.problem.priceStep) }
}

/**
 * Closes lists, longer and longer, until no plan can be cheaper than the best or a list isn't closed. A plan found on the way makes its list shorter, so
 * that one is tried again. The best that was shown.
 */
export function closeInStages(stage: Stage, toClose: ToClose): ClosedProof | undefined {
  const { priceStep } = stage.bench.problem
  let shown: ClosedProof | undefined
  let cuts: RankOne[] = []
  // Where a case was divided, lists up to what its parent showed hold nothing: few short ones reach past that.
  const lists = caps.filter((cap) => cap <= stage.cap && (cap >= 2000 || toClose.known === 0))
  for (let at = 0; at < lists.length && !stage.bench.stop();) {
    const before = stage.pence()
    const bound = Math.max(toClose.bound, shown?.bound ?? 0)
    if (bound >= before) break
    const range = widest(stage, { ...toClose, bound }, lists[at] as number)
    if (!range || range.most < toClose.known) {
      at += 1
      continue
    }
    const now = closeList(stage, toClose, { ...range, cuts })
    cuts = now.cuts
    if (now.bound > bound) shown = now
    const isClosed = now.bound >= Math.min(stage.pence(), range.most + priceStep)
    if (!isClosed && stage.pence() >= before) break
    if (isClosed) at += 1
  }
  return shown
}
