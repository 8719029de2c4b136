import { cannotPack, type BoundCase } from './checkPacking.ts'
import type { BoundProof } from './planModel.ts'

const share = 2 ** 24
const at = (list: ArrayLike<number>, index: number): number => list[index] ?? NaN
const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0)
const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b))

/** The most that parts within each room are worth, in whole numbers; each part no more often than it is wanted. */
export function bestWithin({ sizes, demand, offers }: BoundCase, values: readonly number[]): Float64Array {
  const best = new Float64Array(1 + Math.max(0, ...offers.map(({ room }) => room)))
  sizes.forEach((size, part) => {
    let left = Math.min(at(demand, part), Math.floor(best.length / size))
    for (let take = 1; left > 0; left -= take, take *= 2) {
      take = Math.min(take, left)
      for (let room = best.length - 1; room >= take * size; room -= 1)
        best[room] = Math.max(at(best, room), at(best, room - take * size) + take * at(values, part))
    }
  })
  return best
}

/** What every plan within given counts costs at least, by the proof's splits and duals. Infinity: there is no such plan. */
export function leastCost(one: BoundCase, proof: BoundProof): number {
  const step = BigInt(share * (one.offers.reduce((common, { pence }) => divisor(pence, common), 0) || 1))
  const tables = new Map<string, Float64Array>()
  const byDuals = (duals: readonly number[], least: number[], most: number[]): number => {
    const worth = sum(duals.map((dual, part) => dual * at(one.demand, part)))
    const sound = duals.length === one.sizes.length && duals.every((dual) => dual >= 0 && dual % 1 === 0)
    if (!sound || !Number.isSafeInteger(worth)) return 0
    const best = tables.get(duals.join()) ?? bestWithin(one, duals)
    tables.set(duals.join(), best)
    const total = one.offers.reduce((shares, { room, pence }, offer) => {
      const over = pence * share - at(best, room)
      return shares + BigInt(over) * BigInt(at(over >= 0 ? least : most, offer))
    }, BigInt(worth))
    return total <= 0n ? 0 : Number(((total + step - 1n) / step) * step) / share
  }
  const within = (branch: BoundProof, least: number[], most: number[]): number => {
    if (least.some((count, offer) => count > at(most, offer))) return Infinity
    if ('duals' in branch) return byDuals(branch.duals, least, most)
    if ('searched' in branch) return least.join() === most.join() && cannotPack(one, least) ? Infinity : 0
    const { offer, upTo, fewer, more } = branch
    if (one.offers[offer] === undefined || !Number.isInteger(upTo)) return 0
    const lower = within(fewer, least, most.with(offer, Math.min(at(most, offer), upTo)))
    return Math.min(lower, within(more, least.with(offer, Math.max(at(least, offer), upTo + 1)), most))
  }
  return within(
    proof,
    one.offers.map(() => 0),
    one.offers.map(({ most }) => most),
  )
}
