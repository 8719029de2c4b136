import type { CuttingProblem } from './cuttingProblem.ts'
import { wholes } from './lists.ts'

/** Lengths as they come, in whole tenths of a millimetre, kerf and trim put on: before anything is left out or merged. */
export type RawProblem = {
  parts: { size: number; demand: number }[]
  stocks: { room: number; pence: number; most: number }[]
}

/**
 * A problem made small, and which of the given parts and stocks each of its own stands for. beaten: given stocks that a stock of its own is no dearer
 * and no shorter than; the rest hold no part or aren't to be had.
 */
export type Normalised = {
  problem: CuttingProblem
  parts: number[][]
  stocks: number[][]
  beaten: number[][]
}

const greatest = (a: number, b: number): number => (b === 0 ? a : greatest(b, a % b))

/** The longest length that sums of parts reach within each room: what lies beyond is never used. */
function reachable(parts: RawProblem['parts'], longest: number): Uint8Array {
  const reached = new Uint8Array(longest + 1)
  reached[0] = 1
  for (const { size, demand } of parts) {
    const used = wholes(longest + 1)
    for (let room = size; room <= longest; room += 1) {
      const from = room - size
      if (reached[room] === 1 || reached[from] === 0 || (used[from] as number) >= demand) continue
      reached[room] = 1
      used[room] = (used[from] as number) + 1
    }
  }
  return reached
}

function mergedParts(parts: RawProblem['parts']): { size: number; demand: number; of: number[] }[] {
  const bySize = new Map<number, { size: number; demand: number; of: number[] }>()
  parts.forEach(({ size, demand }, index) => {
    if (demand === 0) return
    const known = bySize.get(size) ?? { size, demand: 0, of: [] }
    known.demand += demand
    known.of.push(index)
    bySize.set(size, known)
  })
  return [...bySize.values()].sort((a, b) => b.size - a.size)
}

type Merged = { room: number; pence: number; most: number; of: number[] }

/** Stocks of one room and price counted together; longest first, of one room the cheapest first. */
function mergedStocks(stocks: (RawProblem['stocks'][number] & { of: number })[]): Merged[] {
  const known = new Map<string, Merged>()
  for (const { room, pence, most, of } of stocks) {
    const key = `${room}:${pence}`
    const one = known.get(key) ?? { room, pence, most: 0, of: [] }
    one.most += most
    one.of.push(of)
    known.set(key, one)
  }
  return [...known.values()].sort((a, b) => b.room - a.room || a.pence - b.pence)
}

/** Whether a stock, to be had without limit, is at least as long as another and no dearer. */
const beats = (other: Merged, stock: Merged, enough: number): boolean =>
  other.most >= enough &&
  other.room >= stock.room &&
  other.pence <= stock.pence &&
  (other.room > stock.room || other.pence < stock.pence)

/** What was left out for each stock's sake: a stock that beats another and is itself beaten leaves both to the one that isn't. */
function beatenBy(stocks: Merged[], all: Merged[], enough: number): number[][] {
  const out = all.filter((stock) => !stocks.includes(stock))
  return stocks.map((stock, at) =>
    out
      .filter((other) => stocks.findIndex((one) => beats(one, other, enough)) === at)
      .flatMap((other) => (beats(stock, other, enough) ? other.of : [])),
  )
}

/**
 * A problem in its least form, whatever the order it came in: like parts and like stocks merged, rooms cut back to what parts can fill, lengths
 * divided by what they have in common, stocks left out that hold no part or are beaten. Everything is whole, so nothing is lost by it.
 */
export function normalise(raw: RawProblem): Normalised {
  const parts = mergedParts(raw.parts)
  const step = parts.reduce((common, { size }) => greatest(size, common), 0) || 1
  const small = parts.map(({ size, demand }) => ({ size: size / step, demand }))
  const pieces = parts.reduce((total, { demand }) => total + demand, 0)
  const total = small.reduce((sum, { size, demand }) => sum + size * demand, 0)
  const rooms = raw.stocks.map(({ room }) => Math.min(total, Math.floor(room / step)))
  const reached = reachable(small, Math.max(0, ...rooms))
  const usable = raw.stocks.flatMap(({ pence, most }, of) => {
    let room = Math.max(0, rooms[of] as number)
    while (room > 0 && reached[room] === 0) room -= 1
    return room > 0 && most > 0 ? [{ room, pence, most: Math.min(most, pieces), of }] : []
  })
  const merged = mergedStocks(usable).map((stock) => ({ ...stock, most: Math.min(stock.most, pieces) }))
  const stocks = merged.filter((stock) => !merged.some((other) => beats(other, stock, pieces)))
  const priceStep = stocks.reduce((common, { pence }) => greatest(pence, common), 0) || 1
  return {
    problem: {
      parts: small,
      stocks: stocks.map(({ room, pence, most }) => ({ room, pence, most })),
      priceStep,
    },
    parts: parts.map(({ of }) => of),
    stocks: stocks.map(({ of }) => of),
    beaten: beatenBy(stocks, merged, pieces),
  }
}
