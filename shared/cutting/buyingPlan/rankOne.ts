import type { Pattern } from './cuttingProblem.ts'

/**
 * A cut of the parts' rows: each as often as `times` says over a common divisor, rounded up. Any plan counts at least as much of it as the parts
 * wanted do: halves of two parts wanted once each, say, count 1, and so does a pattern with either or both.
 */
export type RankOne = { times: number[]; over: number }

/** What a cut counts in a pattern, or in the parts wanted. */
export function cutCount({ times, over }: RankOne, counts: ArrayLike<number>): number {
  let sum = 0
  for (let part = 0; part < times.length; part += 1) sum += (times[part] as number) * (counts[part] as number)
  return Math.ceil(sum / over)
}

/** A solution to be cut off: patterns with how often they are taken, and the parts wanted. */
export type Shares = { used: readonly { counts: Pattern; times: number }[]; demand: readonly number[] }

/** By how much a solution breaks a cut; 0 or less where it doesn't. */
export function brokenBy(cut: RankOne, { used, demand }: Shares): number {
  let held = 0
  for (const { counts, times } of used) held += times * cutCount(cut, counts)
  return cutCount(cut, demand) - held
}

/** Past so many parts only pairs are tried: threes would take longer than the program they are for. */
const mostForThrees = 60

/** Whether parts wanted an odd number of times in all stand oddly in less than one length of the solution. */
function isOdd({ used, demand }: Shares, parts: readonly number[]): boolean {
  let wanted = 0
  for (const part of parts) wanted += demand[part] as number
  if (wanted % 2 === 0) return false
  let odd = 0
  for (const { counts, times } of used) {
    let sum = 0
    for (const part of parts) sum += counts[part] as number
    if (sum % 2 === 1) odd += times
    if (odd >= 1) return false
  }
  return true
}

/** The cut by halves of some parts. */
export const halvesOf = (chosen: readonly number[], { demand }: Shares): RankOne => ({
  times: demand.map((_, part) => (chosen.includes(part) ? 1 : 0)),
  over: 2,
})

/** One, two or three parts whose cut by halves a solution may break: so many that they aren't written out as cuts. */
export function oddParts(shares: Shares): number[][] {
  const parts = shares.demand.length
  const atOnce = parts <= mostForThrees ? 3 : 2
  const found: number[][] = []
  const chosen: number[] = []
  const choose = (from: number) => {
    for (let part = from; part < parts; part += 1) {
      chosen.push(part)
      if (isOdd(shares, chosen)) found.push(chosen.slice())
      if (chosen.length < atOnce) choose(part + 1)
      chosen.pop()
    }
  }
  choose(0)
  return found
}

const divisor = 2 ** 12

/**
 * A row of the basis' inverse as a cut: its multipliers' shares of one, rounded down, so that what is whole in the row stays whole or falls
 * short of it.
 */
export function cutFromRow(row: Float64Array, parts: number, sign: 1 | -1): RankOne {
  const times = new Array<number>(parts).fill(0)
  for (let part = 0; part < parts; part += 1) {
    const value = sign * (row[part] as number)
    times[part] = Math.max(0, Math.floor((value - Math.floor(value + 1e-9)) * divisor + 1e-6))
  }
  return { times, over: divisor }
}
