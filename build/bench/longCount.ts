import { median, quantile, written } from './row.ts'

/** Which of a set's requests are looked at: from 1, both ends with them. */
export type Span = { from: number; to: number }

/** One plan of a long count. left: how far it was from the bound, as a share of its cost, 0 where it is proven; faults: what is wrong with it. */
export type Counted = { name: string; ms: number; left: number; faults: string[] }

/** The processor's time that this process has had, ms, its memory's keeping with it: what else a busy machine does in these hours counts for nothing. */
export function ownTime(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

/** What a plan's time is told by, ms: at its beginning and end, and as often as a search asks whether to stop. */
export type Clock = { now: () => number; often: () => number }

export const onTheWall: Clock = { now: () => performance.now(), often: () => performance.now() }

/** Its own time; as often as a search asks it is looked at anew after 2 ms only, since each look costs more than some steps of a search. */
export function ownClock(): Clock {
  const seen = { wall: -Infinity, own: 0 }
  const often = (): number => {
    const wall = performance.now()
    if (wall - seen.wall > 2) Object.assign(seen, { wall, own: ownTime() })
    return seen.own
  }
  return { now: ownTime, often }
}

/** Tells lines as they come. */
export type Say = (line: string) => void

/** A count that takes minutes or hours: all of its set, or a span of it. */
export type LongCount = (span: Span | undefined, say: Say) => Promise<void>

/** The part of a set that is asked for, with each one's place in it. */
export const within = (count: number, span: Span | undefined): number[] => {
  const [from, to] = [Math.max(1, span?.from ?? 1), Math.min(count, span?.to ?? count)]
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => from + at)
}

const timesWords = (times: readonly number[]): string =>
  `median ${written(median(times))} ms, p95 ${written(quantile(times, 0.95))} ms, worst ${written(Math.max(...times))} ms`

type Closing = { name: string; limitMs: number; asked: string; of: number; places: readonly number[] }

/** What is open or wrong, a line each, then the one line that says how a count ended. */
export function sayCounted(
  { name, limitMs, asked, of, places }: Closing,
  runs: readonly Counted[],
  say: Say,
): void {
  if (runs.length === 0) return say(`${name}: there are ${of}, none of those asked for`)
  const open = runs.filter(({ left }) => left > 0)
  const faults = runs.flatMap((run) => run.faults.map((fault) => `  ${run.name}: ${fault}`))
  for (const run of open) say(`  ${run.name}: ${(run.left * 100).toFixed(4)} % left open`)
  for (const fault of faults) say(fault)
  say(
    `${name}, ${places[0]} to ${places.at(-1)} of ${of}: ${runs.length - open.length} of ${runs.length} proven within ${limitMs / 1000} s of its own time (asked: ${asked}); ${faults.length} faults; ${timesWords(runs.map(({ ms }) => ms))}`,
  )
}
