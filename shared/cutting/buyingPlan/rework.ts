import { priceOf, type Bought, type CuttingProblem, type Pattern } from './cuttingProblem.ts'
import { dualScale } from './bound.ts'
import { gathered } from './layOut.ts'
import { wholes } from './lists.ts'

/** Looks for a plan of a smaller problem that costs less than a sum. */
export type Solve = (problem: CuttingProblem, cutoff: number) => Bought[] | undefined

/** How many lengths are cut anew at once, and how many of them are the worst: the rest give the worst ones room. */
export type Span = { atOnce: number; worst: number }

type Single = { stock: number; counts: Pattern; regret: number }

/** A plan length by length, the ones that pay most beyond what their parts are worth first. */
function singles({ stocks }: CuttingProblem, plan: readonly Bought[], duals: readonly number[]): Single[] {
  return plan
    .flatMap(({ stock, counts, times }) => {
      let regret = (stocks[stock]?.pence ?? 0) * dualScale
      for (let part = 0; part < counts.length; part += 1)
        regret -= (counts[part] as number) * (duals[part] as number)
      return Array.from({ length: times }, () => ({ stock, counts, regret }))
    })
    .sort((a, b) => b.regret - a.regret)
}

const asPlan = (lengths: readonly Single[]): Bought[] =>
  lengths.map(({ stock, counts }) => ({ stock, counts, times: 1 }))

/** What the chosen lengths hold as a problem of its own, with the stock that the others leave; and which parts it has. */
function partOf(
  problem: CuttingProblem,
  chosen: Single[],
  others: Single[],
): { problem: CuttingProblem; parts: number[] } {
  const demand = wholes(problem.parts.length)
  for (const { counts } of chosen)
    counts.forEach((count, part) => (demand[part] = (demand[part] as number) + count))
  const taken = wholes(problem.stocks.length)
  for (const { stock } of others) taken[stock] = (taken[stock] as number) + 1
  const parts = problem.parts.flatMap((_, part) => ((demand[part] as number) > 0 ? [part] : []))
  return {
    parts,
    problem: {
      parts: parts.map((part) => ({ size: problem.parts[part]?.size ?? 0, demand: demand[part] as number })),
      stocks: problem.stocks.map(({ room, pence, most }, stock) => ({
        room,
        pence,
        most: Math.min(chosen.length * 2, most - (taken[stock] as number)),
      })),
      priceStep: problem.priceStep,
    },
  }
}

/** The part's plan in the whole problem's own parts. */
const widened = (plan: readonly Bought[], parts: readonly number[], all: number): Bought[] =>
  plan.map(({ stock, counts, times }) => {
    const wide = new Array<number>(all).fill(0)
    parts.forEach((part, at) => (wide[part] = counts[at] as number))
    return { stock, counts: wide, times }
  })

/** The lengths of the try numbered from 0: the worst ones, with others further and further down the list. */
function chosenFor(lengths: readonly Single[], { atOnce, worst }: Span, attempt: number): Set<number> {
  const rest = Math.max(1, lengths.length - worst)
  const others = atOnce - worst
  const chosen = new Set(Array.from({ length: Math.min(worst, lengths.length) }, (_, at) => at))
  for (let at = 0; at < others; at += 1)
    chosen.add(Math.min(lengths.length - 1, worst + ((attempt * others + at) % rest)))
  return chosen
}

/** One try to better a plan by cutting some of its lengths anew. undefined: none came cheaper. */
export function rework(
  problem: CuttingProblem,
  plan: readonly Bought[],
  { duals, span, attempt, solve }: { duals: readonly number[]; span: Span; attempt: number; solve: Solve },
): Bought[] | undefined {
  const lengths = singles(problem, plan, duals)
  const numbers = chosenFor(lengths, span, attempt)
  const chosen = lengths.filter((_, at) => numbers.has(at))
  const others = lengths.filter((_, at) => !numbers.has(at))
  const part = partOf(problem, chosen, others)
  const better = solve(part.problem, priceOf(problem, asPlan(chosen)))
  if (!better) return undefined
  return gathered([...asPlan(others), ...widened(better, part.parts, problem.parts.length)])
}
