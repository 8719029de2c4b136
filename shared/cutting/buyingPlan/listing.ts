import type { CuttingProblem, Pattern } from './cuttingProblem.ts'
import { columnOf, type Bounds } from './master.ts'
import type { Column } from './simplex.ts'

/** A pattern of a stock that a plan within some cost may still use. */
export type Listed = { stock: number; column: Column }

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
  /** Patterns that were found, or only how many: too long a list is never written. */
  found: Listed[] | undefined
  number: number
  cap: number
  counts: Pattern
  stock: number
  /** What the pattern must be worth at least. */
  least: number
  /** What is left of the length, and what the parts put in so far are worth. */
  room: number
  worth: number
}

/** Whether nothing wanted still goes into the room left: a fuller pattern is never worse. */
const isFull = ({ problem, counts }: Listing, room: number): boolean =>
  problem.parts.every(({ size, demand }, part) => size > room || (counts[part] as number) >= demand)

function fill(listing: Listing, part: number): void {
  const { problem, regard, counts, least, room, worth } = listing
  if (listing.number > listing.cap || worth + (regard.best[room] as number) < least) return
  const one = problem.parts[part]
  if (!one) {
    if (worth < least || !isFull(listing, room)) return
    listing.number += 1
    listing.found?.push({ stock: listing.stock, column: columnOf(problem, listing.stock, counts) })
    return
  }
  const value = regard.values[part] as number
  for (let count = Math.min(one.demand, Math.floor(room / one.size)); count >= 0; count -= 1) {
    counts[part] = count
    listing.room = room - count * one.size
    listing.worth = worth + count * value
    fill(listing, part + 1)
  }
}

function fillAll(listing: Listing): void {
  const { problem, regard } = listing
  problem.stocks.forEach(({ room, pence }, stock) => {
    const price = pence * regard.scale
    if (regard.bounds.most[stock] === 0) return
    const paid = (regard.bounds.least[stock] as number) > 0 ? 0 : price
    const least = Math.max(paid, regard.best[room] as number) - regard.most
    fill(Object.assign(listing, { stock, least, room, worth: 0 }), 0)
  })
}

/**
 * Every full pattern that a plan costing no more than the bound and `most` shares on top may use; undefined where there are more than cap.
 * What a stock's best pattern is worth beyond its price has gone into the bound already, as often as the stock is to be had; and the
 * rest of the price of lengths that must be bought.
 */
export function listPatterns(problem: CuttingProblem, regard: Regard, cap: number): Listed[] | undefined {
  const counts = problem.parts.map(() => 0)
  const listing: Listing = {
    problem,
    regard,
    found: undefined,
    number: 0,
    cap,
    counts,
    stock: 0,
    least: 0,
    room: 0,
    worth: 0,
  }
  fillAll(listing)
  if (listing.number > cap) return undefined
  const found: Listed[] = []
  fillAll({ ...listing, found, number: 0 })
  return found
}
