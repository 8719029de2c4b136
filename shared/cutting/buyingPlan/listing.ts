import type { CuttingProblem, Pattern } from './cuttingProblem.ts'
import { wholes } from './lists.ts'
import type { Bounds } from './master.ts'

/** A pattern of a stock that a plan within some cost may still use. */
export type Listed = { stock: number; counts: Pattern }

/**
 * What the search for patterns goes by: values of the parts and the table filled with them, in whole shares of a penny, and how much dearer than
 * the bound's own a pattern may be, in the same shares.
 */
export type Regard = {
  values: readonly number[]
  best: Float64Array
  scale: number
  most: number
  bounds: Bounds
}

type Listing = {
  problem: CuttingProblem
  regard: Regard
  found: Listed[]
  cap: number
  counts: Int32Array
  stock: number
  /** What the pattern must be worth at least. */
  least: number
}

/** Whether nothing wanted still goes into the room left: a fuller pattern is never worse. */
const isFull = ({ problem, counts }: Listing, room: number): boolean =>
  problem.parts.every(({ size, demand }, part) => size > room || (counts[part] as number) >= demand)

function fill(listing: Listing, part: number, { room, worth }: { room: number; worth: number }): void {
  const { problem, regard, found, cap, counts, least } = listing
  if (found.length > cap || worth + (regard.best[room] as number) < least) return
  const one = problem.parts[part]
  if (!one) {
    if (worth >= least && isFull(listing, room)) found.push({ stock: listing.stock, counts: counts.slice() })
    return
  }
  const value = regard.values[part] as number
  for (let count = Math.min(one.demand, Math.floor(room / one.size)); count >= 0; count -= 1) {
    counts[part] = count
    fill(listing, part + 1, { room: room - count * one.size, worth: worth + count * value })
  }
  counts[part] = 0
}

/**
 * Every full pattern that a plan costing no more than the bound and `most` shares on top may use; undefined where there are more than cap.
 * What a stock's best pattern is worth beyond its price has gone into the bound already, as often as the stock is to be had; and the
 * rest of the price of lengths that must be bought.
 */
export function listPatterns(problem: CuttingProblem, regard: Regard, cap: number): Listed[] | undefined {
  const found: Listed[] = []
  const counts = wholes(problem.parts.length)
  problem.stocks.forEach(({ room, pence }, stock) => {
    const price = pence * regard.scale
    if (regard.bounds.most[stock] === 0) return
    const paid = (regard.bounds.least[stock] as number) > 0 ? 0 : price
    const least = Math.max(paid, regard.best[room] as number) - regard.most
    fill({ problem, regard, found, cap, counts, stock, least }, 0, { room, worth: 0 })
  })
  return found.length > cap ? undefined : found
}
