import { requestOf, type Scale } from './buyingRequests.ts'
import { trackedPlan } from './buyingTracked.ts'
import { ownClock, sayCounted, within, type LongCount } from './longCount.ts'

/** A set of seeded requests: how many, within what time each, and how many of them are asked to be proven. */
type Seeded = { name: string; scale: Scale; rack: boolean; count: number; limitMs: number; asked: string }

const sets: Seeded[] = [
  { name: 'job', scale: 'job', rack: false, count: 10_000, limitMs: 10_000, asked: 'all' },
  { name: 'job-rack', scale: 'job', rack: true, count: 10_000, limitMs: 10_000, asked: 'all' },
  { name: 'week', scale: 'week', rack: false, count: 1000, limitMs: 10_000, asked: 'all' },
  { name: 'corner', scale: 'corner', rack: false, count: 100, limitMs: 10_000, asked: '98 %' },
  {
    ...{ name: 'quarter', scale: 'quarter', rack: false, count: 50, limitMs: 60_000 },
    asked: '60 %, aim 80 % in 30 s',
  },
]

const first = 20261125

/** Jobs are tried with 1 to 16 stock lengths; the others with as many as their kind has. */
const stocksOf = ({ scale }: Seeded, place: number): number => (scale === 'job' ? 1 + ((place - 1) % 16) : 0)

const countOf =
  (set: Seeded): LongCount =>
  (span, say) => {
    const { name, scale, rack, count, limitMs, asked } = set
    const places = within(count, span)
    const runs = places.map((place) => {
      const seed = first + place - 1
      const request = requestOf(scale, seed, { rack, stocks: stocksOf(set, place) })
      const { ms, gap, faults } = trackedPlan(request, limitMs, ownClock())
      return { name: `seed ${seed}`, ms, left: gap, faults }
    })
    sayCounted({ name, limitMs, asked, of: count, places }, runs, say)
    return Promise.resolve()
  }

/** How many buying plans of seeded requests are proven, every one looked at by the checker. */
export const seededCounts = new Map<string, LongCount>(sets.map((set) => [set.name, countOf(set)]))
