import { offer, type Node, type State } from './cases.ts'
import type { Bought, CuttingProblem } from './cuttingProblem.ts'
import { dive, otherWays, plainWay } from './dive.ts'
import { rework, type Span } from './rework.ts'

/** Looks for a plan of a smaller problem below a cutoff, with so much work; gives what it took. */
export type SolveSmaller = (
  problem: CuttingProblem,
  limits: { most: number; cutoff: number; stop: () => boolean },
) => { plan: Bought[] | undefined; effort: number }

/** Plans of fewer lengths than this are closed as they are. */
const fewLengths = 60
/** Ways of diving tried for a plan of many lengths, after the plainest. */
const quickWays = otherWays.filter(({ slow }) => !slow).slice(0, 3)
/** What is cut anew at once, the tries in a row that may come to nothing, and the work each may take. */
const reworking: { span: Span; idle: number; work: number } = {
  span: { atOnce: 14, worst: 5 },
  idle: 40,
  work: 3e7,
}

/** Whether so many lengths are bought that dividing by counts comes before looking through patterns. */
export const isLong = ({ plan }: State): boolean =>
  (plan ?? []).reduce((count, { times }) => count + times, 0) >= fewLengths

/** Cuts some lengths of the best plan anew at a time, the worst first, for as long as that makes it cheaper. */
function reworkLengths(state: State, { duals, bound }: Node, solveSmaller: SolveSmaller): void {
  const { bench } = state
  const { span, idle, work: most } = reworking
  const solve = (problem: CuttingProblem, cutoff: number) => {
    const found = solveSmaller(problem, { most, cutoff, stop: bench.stop })
    bench.effort += found.effort
    return found.plan
  }
  for (let attempt = 0, since = 0; since < idle && bound < state.pence; attempt += 1) {
    const { plan, pence } = state
    if (!plan || bench.stop()) return
    offer(state, rework(bench.problem, plan, { duals, span, attempt, solve }))
    since = state.pence < pence ? 0 : since + 1
  }
}

/** A long plan made cheaper at the start of a search: other ways down, then its worst lengths cut anew. */
export function betterLongPlan(state: State, node: Node, solveSmaller: SolveSmaller): void {
  for (const way of quickWays)
    if (node.bound < state.pence && !state.bench.stop())
      offer(state, dive(state.bench, { bounds: node.bounds, way, cutoff: state.pence }))
  reworkLengths(state, node, solveSmaller)
}

/** Tries to pack every part into exactly these counts of a long plan. */
export function packExactly(state: State, node: Node, counts: readonly number[]): void {
  const exactly = {
    least: Int32Array.from(counts, Math.round),
    most: Int32Array.from(counts, Math.round),
  }
  for (const way of [plainWay, ...quickWays]) {
    if (node.bound >= state.pence || state.bench.stop()) return
    offer(state, dive(state.bench, { bounds: exactly, way, cutoff: state.pence }))
  }
}
