import { bad, good, type Problem, type Result } from '../../problem.ts'
import { bestGreedy } from './greedy.ts'
import type { CuttingProblem } from './cuttingProblem.ts'
import { layOut, wasteOf, type Line } from './layOut.ts'
import { normalise } from './normalise.ts'
import { certificateOf } from './certificate.ts'
import { boundShownBy } from './proof.ts'
import type { BuyingPlan, Certificate, CutLength } from './planModel.ts'
import type { BuyRequest } from './request.ts'
import type { Limits } from './cases.ts'
import { search } from './search.ts'
import { sectionWorks, type SectionWork } from './sectionWork.ts'
import { cheapestRepair, notEnough, rawOf, tooLong } from './shortage.ts'
import { tidied } from './tidy.ts'
import { writeLengths } from './writeLengths.ts'

/** How far a plan has come: the section in hand, the best plan's cost in it and what no plan can cost less than, pence. */
export type Progress = { section: string; cost: number; bound: number }

/**
 * stop is asked often and ends the search with the best plan so far: a caller with a clock keeps the request's timeLimitMs by it. mostEffort:
 * work for one section after which it ends by itself, the same on every machine.
 */
export type Options = { stop?: () => boolean; onProgress?: (progress: Progress) => void; mostEffort?: number }

/** Table cells and pivot steps: about a minute of a small laptop's time. */
const usualEffort = 1.5e10

/** Quick plans tried before limited stock is looked into. */
const greedyRounds = 30

type Solved = {
  lengths: CutLength[]
  cost: number
  bound: number
  waste: number
  patterns: number
  certificate: Certificate
}

const costOf = ({ kinds }: SectionWork, lines: Line[]): number =>
  lines.reduce((sum, { kind, times }) => sum + (kinds[kind]?.pence ?? 0) * times, 0)

/** Where quick plans find no way with what is limited: whether there is one, with the least that must be had beyond it. */
function limitedPlan(work: SectionWork, limits: Limits): Result<Line[]> {
  const repair = cheapestRepair(work, limits)
  return repair.pence > 0 ? bad(notEnough(work, repair)) : good(repair.lines)
}

/** Whether there must be a plan: a length without limit holds the longest part, or a quick plan gets by with what is to be had. */
function isSurelyEnough(problem: CuttingProblem): boolean {
  const pieces = problem.parts.reduce((sum, { demand }) => sum + demand, 0)
  const longest = problem.parts[0]?.size ?? 0
  if (problem.stocks.some(({ room, most }) => room >= longest && most >= pieces)) return true
  return bestGreedy(problem, { rounds: greedyRounds }) !== undefined
}

function solveSection(work: SectionWork, { most, stop, onPlan }: Limits): Result<Solved> {
  const normalised = normalise(rawOf(work))
  const limited = isSurelyEnough(normalised.problem) ? undefined : limitedPlan(work, { most, stop })
  if (limited && !limited.ok) return limited
  const found = search(normalised.problem, { most, stop, ...(onPlan ? { onPlan } : {}) })
  const first = found.plan ? layOut(work, normalised, found.plan) : (limited?.value ?? [])
  const lines = tidied(work, first, stop)
  const cost = costOf(work, lines)
  const bound = Math.min(cost, boundShownBy(found.proof))
  return good({
    lengths: writeLengths(work, lines),
    cost,
    bound,
    waste: lines.reduce((sum, line) => sum + wasteOf(work, line) * line.times, 0) / 10,
    patterns: lines.length,
    certificate: certificateOf(work, normalised, { cost, bound, proof: found.proof }),
  })
}

function wholePlan(solved: Solved[]): BuyingPlan {
  const sum = (of: (one: Solved) => number) => solved.reduce((total, one) => total + of(one), 0)
  const cost = sum((one) => one.cost)
  const bound = sum((one) => one.bound)
  return {
    version: 1,
    status: cost === bound ? 'proven' : 'best-found',
    cost,
    bound,
    waste: sum((one) => Math.round(one.waste * 10)) / 10,
    patterns: sum((one) => one.patterns),
    shown: { cost: cost === bound, waste: false, patterns: false },
    lengths: solved.flatMap(({ lengths }) => lengths),
    certificate: solved.map(({ certificate }) => certificate),
  }
}

/**
 * The cheapest lengths to buy and to take from the rack for a request, section by section, with what proves that none are cheaper. The
 * same request gives the same plan whatever the order of its rows, unless stop ended the search. Problems: a part longer than every usable
 * length, or limited stock that can't hold every part.
 */
export function buyingPlan(request: BuyRequest, options: Options = {}): Result<BuyingPlan> {
  const { stop = () => false, onProgress, mostEffort = usualEffort } = options
  const works = sectionWorks(request)
  const long: Problem[] = works.flatMap((work) => tooLong(work, request))
  if (long.length > 0) return bad(...long)
  const solved = works.map((work) => {
    const onPlan = (cost: number, bound: number) => onProgress?.({ section: work.section, cost, bound })
    return solveSection(work, { most: mostEffort, stop, onPlan })
  })
  const problems = solved.flatMap((one) => (one.ok ? [] : one.problems))
  if (problems.length > 0) return bad(...problems)
  return good(wholePlan(solved.flatMap((one) => (one.ok ? [one.value] : []))))
}
