import { isClosed, offer, type Node, type State } from './cases.ts'
import type { Bought, CuttingProblem } from './cuttingProblem.ts'
import { dive, plainWay, quickWays, turnedWay, type DiveWay } from './dive.ts'
import { rework, type Span } from './rework.ts'

/** Looks for a plan of a smaller problem below a cutoff, with so much work; gives what it took. */
export type SolveSmaller = (
  problem: CuttingProblem,
  limits: { most: number; cutoff: number; stop: () => boolean },
) => { plan: Bought[] | undefined; effort: number }

/** Plans of fewer lengths than this are closed as they are. */
const fewLengths = 60
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
  diveBy(state, node, quickWays)
  reworkLengths(state, node, solveSmaller)
}

function diveBy(
  state: State,
  { bound, bounds }: Pick<Node, 'bound' | 'bounds'>,
  ways: readonly DiveWay[],
): void {
  for (const way of ways) {
    if (bound >= state.pence || state.bench.stop()) return
    offer(state, dive(state.bench, { bounds, way, cutoff: state.pence }))
  }
}

/** Tries once to pack every part into exactly these counts of a long plan. */
export function packExactly(state: State, { bound }: Node, counts: readonly number[]): void {
  const least = Int32Array.from(counts, Math.round)
  const key = least.join()
  if (state.tried.has(key)) return
  state.tried.add(key)
  diveBy(state, { bound, bounds: { least, most: least } }, [plainWay, ...quickWays])
}

/** How often settled lengths are tried to be packed, and the ways tried at once. */
const [mostTries, waysAtOnce] = [6, 4]

/** Leaves a case with settled lengths to be tried again, or aside when every way was tried. */
export function putBack(state: State, node: Node): void {
  node.tries += 1
  node.pence = state.pence
  if (node.tries > mostTries) state.aside.push(node)
  else state.open.push(node)
}

/** Tries further ways to pack a case whose lengths are settled, and to close it where a cheaper plan has made that shorter. */
export function tryAgain(state: State, node: Node, closeNode: () => void): void {
  if (state.pence < (node.pence ?? 0)) closeNode()
  const from = (node.tries - 1) * waysAtOnce
  const ways = Array.from({ length: waysAtOnce }, (_, at) => turnedWay(from + at + 1))
  diveBy(state, node, ways)
  if (!isClosed(state, node)) putBack(state, node)
}
