import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { outFolder } from '../paths.ts'
import { flowModel, patternModel } from './buyingHighsModels.ts'
import { requestOf } from './buyingRequests.ts'
import { geometricMean, ours, rival, type Solved } from './buyingRival.ts'
import { growthPlot, type Series } from './growthPlot.ts'
import { ownClock, type LongCount, type Say, type Span } from './longCount.ts'
import { written } from './row.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'

const first = 20261125
const partLengths = [4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 200]
/** Requests of each number of part lengths, and the limit by the clock, ms. */
const [requests, limitMs] = [5, 10_000]
/** Past so many part lengths the patterns are too many to be written down at all. */
const mostForPatterns = 24

/** HiGHS has a longer limit on the wall, so that on a busy machine too it is its own time that ends it. */
const asked = { limitMs: 12 * limitMs, clock: ownClock() }

type Solver = { name: string; colour: string; most: number; solve: (request: BuyRequest) => Promise<Solved> }

const solvers: Solver[] = [
  {
    ...{ name: 'Bracework', colour: '#1d4e4a', most: Infinity },
    solve: (request) => Promise.resolve(ours(request, limitMs, ownClock())),
  },
  {
    ...{ name: 'HiGHS, all patterns', colour: '#b3541e', most: mostForPatterns },
    solve: (request) => rival(request, { model: patternModel, ...asked }),
  },
  {
    ...{ name: 'HiGHS, arc flow', colour: '#7a6a9c', most: Infinity },
    solve: (request) => rival(request, { model: flowModel, ...asked }),
  },
]

/** What is given up before the limit, for want of memory say, stands at the limit too. A solver at each number of part lengths, until it ends none of that many within the limit. */
async function seriesOf(
  { name, colour, most, solve }: Solver,
  counts: readonly number[],
  say: Say,
): Promise<Series> {
  const points: Series['points'] = []
  for (const count of counts.filter((one) => one <= most)) {
    const times: Solved[] = []
    for (let at = 0; at < requests; at += 1)
      times.push(await solve(requestOf('week', first + at, { partLengths: count })))
    const proven = times.filter((one) => one.proven && one.ms <= limitMs)
    for (const one of times)
      points.push({ count, ms: proven.includes(one) ? one.ms : limitMs, ended: proven.includes(one) })
    say(
      `  ${name}, ${count} part lengths: ${proven.length} of ${requests} proven; geometric mean ${written(geometricMean(times.map(({ ms }) => Math.min(ms, limitMs))))} ms`,
    )
    const short = times.filter((one) => !one.proven && one.ms < limitMs * 0.99).length
    if (short > 0)
      say(
        `  ${name}: ${short} of them gave up before their own time was over; drawn at the limit all the same`,
      )
    if (proven.length === 0) break
  }
  return { name, colour, points }
}

/**
 * How the time to a proven plan grows with the number of part lengths, ours and HiGHS in the same run, drawn as build/out/growth.svg. The span says
 * which of the numbers, by their place.
 */
export const growth: LongCount = async (span: Span | undefined, say) => {
  const counts = partLengths.slice((span?.from ?? 1) - 1, span?.to)
  const all: Series[] = []
  // The first plans of a process are mostly the machine's own warming up.
  for (let seed = first - 20; seed < first; seed += 1) ours(requestOf('job', seed), limitMs)
  for (const solver of solvers) all.push(await seriesOf(solver, counts, say))
  mkdirSync(outFolder, { recursive: true })
  const path = join(outFolder, 'growth.svg')
  writeFileSync(path, growthPlot(all, { limitMs, requests }))
  say(
    `growth: ${counts.join(', ')} part lengths, ${requests} requests each, limit ${limitMs / 1000} s of its own time; drawn in build/out/growth.svg`,
  )
}
