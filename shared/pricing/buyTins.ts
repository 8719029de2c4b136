import type { Pence } from './pence.ts'

/** A tin as it is sold: litres in it and its price. */
export type Tin = { litres: number; pence: Pence }

/** How many of each tin (in the order given) and what they come to. */
export type TinsBought = { counts: number[]; pence: number }

const millilitres = (litres: number): number => Math.max(1, Math.floor(litres * 1000 + 1e-6))

function commonMeasure(a: number, b: number): number {
  return b === 0 ? a : commonMeasure(b, a % b)
}

/** More steps than this are never gone through: past it the tin cheapest by the litre is bought for the bulk. */
const mostSteps = 20_000

/** The cheapest tins that hold at least so many steps: for each amount, what the last tin bought for it was. */
function leastFor(steps: number, sizes: readonly number[], tins: readonly Tin[]): number[] {
  const cost = new Float64Array(steps + 1).fill(Infinity)
  const last = new Int32Array(steps + 1)
  cost[0] = 0
  for (let amount = 1; amount <= steps; amount += 1)
    tins.forEach((tin, index) => {
      const whole = (cost[Math.max(0, amount - (sizes[index] as number))] as number) + tin.pence
      if (whole < (cost[amount] as number)) {
        cost[amount] = whole
        last[amount] = index
      }
    })
  const counts = tins.map(() => 0)
  for (let left = steps; left > 0; left -= sizes[last[left] as number] as number)
    counts[last[left] as number] = (counts[last[left] as number] as number) + 1
  return counts
}

/**
 * The cheapest whole tins that hold at least so many litres. 3.2 litres from tins of 1 at £14 and 2.5 at £30: one of each, £44. Tins
 * cost more than nothing; none are bought for 0 litres. Throws RangeError without tins.
 */
export function buyTins(litres: number, tins: readonly Tin[]): TinsBought {
  if (tins.length === 0) throw new RangeError('buyTins needs at least one tin')
  const contents = tins.map((tin) => millilitres(tin.litres))
  const step = contents.reduce(commonMeasure)
  const wanted = Math.ceil(Math.ceil(litres * 1000 - 1e-6) / step)
  const sizes = contents.map((content) => content / step)
  const cheapest = tins.reduce(
    (best, tin, index) =>
      tin.pence * (sizes[best] as number) < (tins[best] as Tin).pence * (sizes[index] as number)
        ? index
        : best,
    0,
  )
  const bulk = Math.max(0, Math.ceil((wanted - mostSteps) / (sizes[cheapest] as number)))
  const counts = leastFor(Math.max(0, wanted - bulk * (sizes[cheapest] as number)), sizes, tins)
  counts[cheapest] = (counts[cheapest] as number) + bulk
  return { counts, pence: counts.reduce((sum, count, index) => sum + count * (tins[index] as Tin).pence, 0) }
}
