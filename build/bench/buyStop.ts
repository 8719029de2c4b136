import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { requestOf, type Scale } from './buyingRequests.ts'
import { ownTime } from './longCount.ts'
import { seeded } from './seeded.ts'
import { median, written, type Effort, type Measured } from './row.ts'

const first = 20261125
/** What is asked for, ms, and goes at one moment: what else the machine does only ever adds. */
const [most, goes] = [50, 3]

type Sort = { name: string; scale: Scale; rack: boolean; limitMs: number; count: number; moments: number }

const sortsOf = (quick: boolean): Sort[] =>
  [
    { name: 'job', scale: 'job' as const, rack: false, limitMs: 5000, count: 20, moments: 5 },
    { name: 'job with rack', scale: 'job' as const, rack: true, limitMs: 5000, count: 20, moments: 5 },
    { name: 'week', scale: 'week' as const, rack: false, limitMs: 2000, count: 4, moments: 5 },
    { name: 'week with rack', scale: 'week' as const, rack: true, limitMs: 2000, count: 4, moments: 5 },
    { name: 'hard corner', scale: 'corner' as const, rack: false, limitMs: 2000, count: 4, moments: 5 },
    { name: 'quarter', scale: 'quarter' as const, rack: false, limitMs: 5000, count: 2, moments: 5 },
  ].map((sort) => (quick ? { ...sort, limitMs: 300, count: 1, moments: 1 } : sort))

/** A search that was told to stop: how long the answer took from then, ms, undefined where it had come before; and by how much its plan may be dearer. */
type Stopped = { late: number | undefined; pence: number; faults: string[] }

/** Stops a search so long after its start. The clock is looked at whenever the search asks, so that what is measured is the search's own. */
function stoppedAt(request: BuyRequest, afterMs: number): Stopped & { ms: number } {
  const start = ownTime()
  const plan = buyingPlan(request, { stop: () => ownTime() - start >= afterMs })
  const ms = ownTime() - start
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
  const { cost, bound } = plan.value
  const late = ms >= afterMs ? ms - afterMs : undefined
  return { ms, late, pence: cost - bound, faults: checkPlan(request, plan.value).faults }
}

/** The quickest answer of some goes at one moment, the first that is quick enough. */
function quickest(request: BuyRequest, afterMs: number): Stopped {
  let best = stoppedAt(request, afterMs)
  for (let go = 1; go < goes && (best.late ?? 0) > most; go += 1) {
    const next = stoppedAt(request, afterMs)
    if ((next.late ?? Infinity) < (best.late ?? 0))
      best = { ...next, faults: [...best.faults, ...next.faults] }
  }
  return best
}

type Found = Stopped & { seed: number; afterMs: number; sort: string }

function stopsOf({ name, scale, rack, limitMs, count, moments }: Sort): Found[] {
  return Array.from({ length: count }, (_, at) => {
    const seed = first + at
    const request = requestOf(scale, seed, { rack })
    const draws = seeded(seed)
    // As long as it takes by itself: every moment of it may be the one.
    const { ms } = stoppedAt(request, limitMs)
    return Array.from({ length: moments }, () => {
      const afterMs = (Math.min(ms, limitMs) * draws.between(0, 999)) / 1000
      return { ...quickest(request, afterMs), seed, afterMs, sort: name }
    })
  }).flat()
}

const wordsOf = (sort: string, found: readonly Found[]): string => {
  const late = found.map((one) => one.late ?? 0)
  const over = late.filter((ms) => ms > most).length
  const worst = found.reduce((a, b) => ((b.late ?? 0) > (a.late ?? 0) ? b : a))
  return `${sort}: ${late.length} stops, median ${written(median(late))} ms, longest ${written(worst.late ?? 0)} ms (seed ${worst.seed}, stopped at ${written(worst.afterMs)} ms); ${over} over ${most} ms; at most ${Math.max(...found.map(({ pence }) => pence))}p dearer than the best there is`
}

/** From asking a search to stop, at seeded moments of all its length, until the answer is there: plan, bound and gap with it, looked over by the checker. */
export function buyStop({ quick }: Effort): Promise<Measured> {
  const all = sortsOf(quick).map((sort) => ({ sort: sort.name, found: stopsOf(sort) }))
  const every = all.flatMap(({ found }) => found)
  const value = Math.max(1e-3, ...every.map(({ late }) => late ?? 0))
  const faults = every.flatMap(({ seed, sort, faults: of }) => of.map((fault) => `${sort} ${seed}: ${fault}`))
  return Promise.resolve({
    row: {
      name: 'buy-stop',
      value,
      unit: 'ms',
      against: `${most} ms of its own time from asking to the answer, the longest of ${every.length} stops, best of up to ${goes} goes each`,
      ...{ ratio: value / most, aim: 1, holds: value <= most && faults.length === 0 },
    },
    said: [...all.map(({ sort, found }) => wordsOf(sort, found)), ...faults],
  })
}
