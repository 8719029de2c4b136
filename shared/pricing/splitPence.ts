import { pence, type Pence } from './pence.ts'

/** How much of a total one share gets before the odd pennies are handed out, and what it falls short of its due by. */
type Share = { index: number; whole: bigint; short: bigint }

/**
 * A total shared out by weights (whole numbers, not below 0) so that no penny is lost or made: each gets its share rounded down, then
 * the odd pennies go one each to those that fell shortest, the earlier first where two are alike (largest remainder). Weights that
 * are all 0 count alike. splitPence(100, [1, 1, 1]) is 34, 33, 33. Throws RangeError without weights, or for one that isn't whole.
 */
export function splitPence(total: Pence, weights: readonly number[]): Pence[] {
  if (weights.length === 0) throw new RangeError('splitPence needs at least one weight')
  for (const weight of weights)
    if (!Number.isSafeInteger(weight) || weight < 0)
      throw new RangeError(`whole weights not below 0 are accepted, got ${weight}`)
  const even = weights.every((weight) => weight === 0)
  const counted = weights.map((weight) => (even ? 1n : BigInt(weight)))
  const sum = counted.reduce((all, weight) => all + weight, 0n)
  const size = BigInt(Math.abs(total))
  const shares = counted.map((weight, index): Share => {
    const due = size * weight
    return { index, whole: due / sum, short: due % sum }
  })
  let odd = size - shares.reduce((all, share) => all + share.whole, 0n)
  const byShortfall = [...shares].sort((a, b) =>
    a.short === b.short ? a.index - b.index : a.short > b.short ? -1 : 1,
  )
  for (const share of byShortfall) {
    if (odd === 0n) break
    share.whole += 1n
    odd -= 1n
  }
  return shares.map(({ whole }) => pence(Number(whole) * (total < 0 ? -1 : 1)))
}
