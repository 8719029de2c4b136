import { median, quantile, written, type Effort, type Measured } from './row.ts'
import { flowModel, patternModel } from './buyingHighsModels.ts'
import { requestOf, type Scale } from './buyingRequests.ts'
import { trackedPlan } from './buyingTracked.ts'
import { geometricMean, ours, rival, type Solved } from './buyingRival.ts'

const first = 20261125

/** Requests solved beforehand, so that both run warm: a fresh process spends its first hundreds of jobs on compiling itself. */
const warmUps: Record<Scale, { own: number; other: number }> = {
  job: { own: 400, other: 20 },
  week: { own: 10, other: 0 },
  quarter: { own: 0, other: 0 },
  corner: { own: 1, other: 0 },
}

type Beside = {
  scale: Scale
  count: number
  model: 'all patterns' | 'arc flow'
  limitMs: number
  goes?: number
}

type Pair = { seed: number; own: Solved; other: Solved }

/** The middle one, by time, of what each round gave for one request. */
function middleOf(rounds: readonly Solved[][], at: number): Solved {
  const goes = rounds.flatMap((round) => round.slice(at, at + 1)).toSorted((one, other) => one.ms - other.ms)
  const middle = goes[Math.floor(goes.length / 2)]
  if (!middle) throw new Error(`no request number ${at}`)
  return middle
}

/**
 * Each solver's requests stand together: a new HiGHS is compiled on other threads while it runs, which would slow whatever of ours came next. Each
 * request of a job is solved three times by both and its middle time counts, so that what the machine does beside shows in neither.
 */
async function pairsOf({ scale, count, model, limitMs, goes = 1 }: Beside): Promise<Pair[]> {
  const build = model === 'arc flow' ? flowModel : patternModel
  const seeds = Array.from({ length: count }, (_, at) => first + at)
  const before = (many: number) => Array.from({ length: many }, (_, at) => first - many + at)
  for (const seed of before(warmUps[scale].own)) ours(requestOf(scale, seed), limitMs)
  const own: Solved[][] = []
  while (own.length < goes) own.push(seeds.map((seed) => ours(requestOf(scale, seed), limitMs)))
  for (const seed of before(warmUps[scale].other))
    await rival(requestOf(scale, seed), { model: build, limitMs })
  const others: Solved[][] = []
  while (others.length < goes) {
    const round: Solved[] = []
    for (const seed of seeds) round.push(await rival(requestOf(scale, seed), { model: build, limitMs }))
    others.push(round)
  }
  return seeds.map((seed, at) => ({ seed, own: middleOf(own, at), other: middleOf(others, at) }))
}

const timesFaster = ({ own, other }: Pair): number => other.ms / own.ms

/** What the two didn't agree on: none where both say that theirs is the cheapest. */
const differences = (pairs: readonly Pair[]): string[] =>
  pairs.flatMap(({ seed, own, other }) =>
    own.proven && other.proven && own.cost !== other.cost
      ? [`DIFFERENT at seed ${seed}: ${own.cost} and ${other.cost} pence`]
      : [],
  )

function saidOf(pairs: readonly Pair[], model: string): string[] {
  const own = pairs.map((pair) => pair.own.ms)
  const limited = pairs.filter(({ other }) => !other.proven).length
  return [
    `${model}: ${pairs.length} requests, ours median ${written(median(own))} ms, worst ${written(Math.max(...own))} ms; least ratio ${written(Math.min(...pairs.map(timesFaster)))}`,
    ...(limited > 0
      ? [`HiGHS gave up on ${limited} of them at its limit: the ratio is at least so much`]
      : []),
    ...differences(pairs),
  ]
}

/** A row from instances solved by both: the geometric mean of how many times as fast, and never slower. */
function rowOf(
  { name, aim, against }: { name: string; aim: number; against: string },
  pairs: readonly Pair[],
): Measured['row'] {
  const ratio = geometricMean(pairs.map(timesFaster))
  const isNeverSlower = pairs.every((pair) => timesFaster(pair) >= 1)
  const holds = ratio >= aim && isNeverSlower && differences(pairs).length === 0
  return { name, value: median(pairs.map(({ own }) => own.ms)), unit: 'ms', against, ratio, aim, holds }
}

const rivalWords = (model: string, limitMs: number): string =>
  `HiGHS 1.15.3 in WebAssembly, ${model}, its default options and a limit of ${limitMs / 1000} s, model building counted on both sides`

/** A job's timber beside HiGHS on all patterns. */
export async function buyJob({ quick }: Effort): Promise<Measured> {
  const beside: Beside = {
    scale: 'job',
    count: quick ? 2 : 60,
    model: 'all patterns',
    limitMs: 20_000,
    goes: quick ? 1 : 3,
  }
  const pairs = await pairsOf(beside)
  const against = rivalWords(beside.model, beside.limitMs)
  return { row: rowOf({ name: 'buy-job', aim: 20, against }, pairs), said: saidOf(pairs, beside.model) }
}

/** A week's timber beside HiGHS: the row on arc flow, the words on all patterns too. */
export async function buyWeek({ quick }: Effort): Promise<Measured> {
  const limitMs = quick ? 100 : 40_000
  const count = quick ? 1 : 3
  const flow = await pairsOf({ scale: 'week', count, model: 'arc flow', limitMs })
  const row = rowOf({ name: 'buy-week', aim: 300, against: rivalWords('arc flow', limitMs) }, flow)
  if (quick) return { row, said: [] }
  const patterns = await pairsOf({ scale: 'week', count: 2, model: 'all patterns', limitMs })
  const ratio = geometricMean(patterns.map(timesFaster))
  return {
    row,
    said: [
      ...saidOf(flow, 'arc flow'),
      ...saidOf(patterns, 'all patterns'),
      `all patterns: ratio ${written(ratio)}, aim 100: ${ratio >= 100 ? 'holds' : 'MISSED'}`,
    ],
  }
}

/** A quarter's timber, 5 s: how far from the bound, as a share of how far the first quick plan was. HiGHS comes to nothing on it. */
export function buyQuarter({ quick }: Effort): Promise<Measured> {
  const runs = Array.from({ length: quick ? 1 : 3 }, (_, at) =>
    trackedPlan(requestOf('quarter', first + at), quick ? 500 : 5000),
  )
  const gap = geometricMean(runs.map((run) => Math.max(1e-6, run.gap)))
  const firstGap = geometricMean(runs.map((run) => run.firstGap))
  const ratio = gap / 0.0001
  return Promise.resolve({
    row: {
      name: 'buy-quarter',
      value: gap * 100,
      unit: '% over the bound',
      against: 'a gap of 0.01 % after 5 s; HiGHS ends no quarter within a minute and isn’t run here',
      ratio,
      aim: 1,
      holds: ratio <= 1,
    },
    said: [
      `first plan after ${runs.map(({ firstMs }) => written(firstMs)).join(', ')} ms (asked: 50), ${written(firstGap * 100)} % over the bound: price-aware greedy`,
      `longest between two questions whether to stop: ${written(
        quantile(
          runs.map(({ wait }) => wait),
          1,
        ),
      )} ms (asked: 50)`,
      `proven: ${runs.filter(({ gap: left }) => left === 0).length} of ${runs.length}`,
    ],
  })
}
