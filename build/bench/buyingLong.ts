import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { normalise, type RawProblem } from '../../shared/cutting/buyingPlan/normalise.ts'
import { search } from '../../shared/cutting/buyingPlan/search.ts'
import { median, quantile, written } from './row.ts'
import { requestOf, type Scale } from './buyingRequests.ts'
import { trackedPlan } from './buyingTracked.ts'

/** A set of requests: how many, within what time each, and how many of them are asked to be proven. */
type Set = { name: string; scale: Scale; rack: boolean; count: number; limitMs: number; asked: string }

const sets: Set[] = [
  { name: 'job', scale: 'job', rack: false, count: 5000, limitMs: 10_000, asked: 'all' },
  { name: 'job, rack', scale: 'job', rack: true, count: 5000, limitMs: 10_000, asked: 'all' },
  { name: 'week', scale: 'week', rack: false, count: 1000, limitMs: 10_000, asked: 'all' },
  { name: 'hard corner', scale: 'corner', rack: false, count: 100, limitMs: 10_000, asked: '98 %' },
  {
    name: 'quarter',
    scale: 'quarter',
    rack: false,
    count: 50,
    limitMs: 60_000,
    asked: '60 %, aim 80 % in 30 s',
  },
]

const first = 20261125

const timesWords = (times: readonly number[]): string =>
  `median ${written(median(times))} ms, p95 ${written(quantile(times, 0.95))} ms, worst ${written(Math.max(...times))} ms`

/** One set, or so many of it: how many were proven and how long they took. */
function runSet(
  { name, scale, rack, count, limitMs, asked }: Set,
  share: number,
  say: (line: string) => void,
): void {
  const wanted = Math.max(1, Math.round(count * share))
  const runs = Array.from({ length: wanted }, (_, at) => {
    // Jobs with a rack are tried with 1 to 16 stock lengths too.
    const stocks = rack ? 1 + (at % 16) : 0
    return { seed: first + at, ...trackedPlan(requestOf(scale, first + at, { rack, stocks }), limitMs) }
  })
  const open = runs.filter(({ gap }) => gap > 0)
  const faults = runs.flatMap(({ seed, faults: of }) => of.map((fault) => `  seed ${seed}: ${fault}`))
  say(
    `${name}: ${runs.length - open.length} of ${runs.length} proven within ${limitMs / 1000} s (asked: ${asked}); ${timesWords(runs.map(({ ms }) => ms))}`,
  )
  for (const { seed, gap } of open)
    say(`  seed ${seed}: ${written(gap * 10_000)} hundredths of a percent left open`)
  for (const fault of faults) say(fault)
}

/** A published instance file: stock lengths, then parts. One stock length costs 1 where the file gives none. */
function published(text: string, isSingle: boolean): RawProblem {
  const numbers = text.split(/\s+/).filter(Boolean).map(Number)
  const take = () => numbers.shift() ?? 0
  if (isSingle) {
    const count = take()
    const room = take()
    return { stocks: [{ room, pence: 1, most: 1e9 }], parts: pairsOf(count, take) }
  }
  const stocks = Array.from({ length: take() }, () => {
    const [room, most, pence] = [take(), take(), take()]
    return { room, most, pence }
  })
  return { stocks, parts: pairsOf(take(), take) }
}

const pairsOf = (count: number, take: () => number): RawProblem['parts'] =>
  Array.from({ length: count }, () => {
    const [size, demand] = [take(), take()]
    return { size, demand }
  })

const folders: { name: string; isSingle: boolean; limitMs: number; asked: string }[] = [
  { name: 'Waescher_CSP', isSingle: true, limitMs: 10_000, asked: '17 of 17' },
  { name: 'Crainic1', isSingle: false, limitMs: 10_000, asked: '300 of 300' },
  { name: 'Belov1', isSingle: false, limitMs: 10_000, asked: '38 of 50, aim 47' },
  { name: 'Hard28_CSP', isSingle: true, limitMs: 10_000, asked: '17 of 28' },
]

/** The published sets in a folder kept beside the project, each instance within its limit. */
function runPublished(folder: string, share: number, say: (line: string) => void): void {
  for (const { name, isSingle, limitMs, asked } of folders) {
    const files = readdirSync(join(folder, name)).filter((file) => file.endsWith('.txt'))
    const wanted = files.slice(0, Math.max(1, Math.round(files.length * share)))
    const runs = wanted.map((file) => {
      const { problem } = normalise(published(readFileSync(join(folder, name, file), 'utf8'), isSingle))
      const start = performance.now()
      const { pence, bound } = search(problem, {
        most: 1e15,
        stop: () => performance.now() - start > limitMs,
      })
      return { ms: performance.now() - start, proven: bound >= pence, file, pence }
    })
    const proven = runs.filter((run) => run.proven)
    say(
      `${name}: ${proven.length} of ${runs.length} proven within ${limitMs / 1000} s (asked: ${asked}); ${timesWords(runs.map(({ ms }) => ms))}`,
    )
  }
}

/**
 * The long counts: every set of requests, and the published ones where BENCHMARK_FOLDER names a folder that holds them. share of 1 runs all of
 * each, less runs the first of them.
 */
export function buyingLong(share: number, say: (line: string) => void): void {
  for (const set of sets) runSet(set, share, say)
  const folder = process.env['BENCHMARK_FOLDER']
  if (folder) runPublished(folder, share, say)
  else say('published instances: none looked at; BENCHMARK_FOLDER names a folder with them')
}
