import type { Pence } from './pence.ts'

/** A length a merchant sells, mm, and its price. */
export type StockLength = { size: number; pence: Pence }

/** What is lost on the way, mm: kerf at each cut, endTrim in all on squaring one length bought. */
export type Cutting = { kerf: number; endTrim: number }

/** A saw of 4 mm and 20 mm for squaring both ends: common practice, where the workshop hasn't said. */
export const usualCutting: Cutting = { kerf: 4, endTrim: 20 }

export type TimberToBuy = {
  pieces: readonly { length: number; quantity: number }[]
  stock: readonly StockLength[]
  cutting: Cutting
}

/** So many lengths of one size, mm. */
export type BoughtLength = { size: number; count: number }

/** Whole lengths for a list of pieces, shortest first, and whether it is proven that none are cheaper. */
export type Purchase = { lengths: BoughtLength[]; proven: boolean }

/** Which whole lengths to buy for a list of pieces; null where a piece is longer than any length. */
export type BuyTimber = (ask: TimberToBuy) => Purchase | null

/** A length bought so far and how much of it is used, kerfs in it. */
type Opened = { used: number }

/** Room on a length for its pieces, one kerf more than its net since the last cut may meet the end. */
const roomOf = (size: number, { kerf, endTrim }: Cutting): number => size - endTrim + kerf + 1e-6

/** First fit, longest piece first, into lengths of one size. */
function fillLengths(lengths: readonly number[], room: number, kerf: number): Opened[] {
  const opened: Opened[] = []
  for (const length of lengths) {
    const place = opened.find(({ used }) => used + length + kerf <= room)
    if (place) place.used += length + kerf
    else opened.push({ used: length + kerf })
  }
  return opened
}

type Bought = { price: number; sizes: number[] }

/** Each length swapped for the cheapest one that still holds what was put on it. */
function cheapened(opened: readonly Opened[], stock: readonly StockLength[], cutting: Cutting): Bought {
  const bought: Bought = { price: 0, sizes: [] }
  for (const { used } of opened) {
    const least = stock
      .filter(({ size }) => used <= roomOf(size, cutting))
      .reduce((best, one) => (one.pence < best.pence ? one : best))
    bought.price += least.pence
    bought.sizes.push(least.size)
  }
  return bought
}

/**
 * Whole lengths by first fit: the pieces, longest first, go each on the first length with room for it; tried for each size kept, every
 * length then swapped for the cheapest that will do, and the cheapest of these trials taken. Not proven to be the least. Pieces of
 * 1800, 1800 and 900 from lengths of 3000 at £9 and 4800 at £13: one of 4800 with both 1800 on it and 900 beside them.
 */
export const firstFit: BuyTimber = ({ pieces, stock, cutting }) => {
  const lengths = pieces
    .flatMap(({ length, quantity }) => Array.from({ length: quantity }, () => length))
    .sort((a, b) => b - a)
  const longest = lengths[0]
  if (longest === undefined) return { lengths: [], proven: true }
  const able = [...stock]
    .sort((a, b) => a.size - b.size)
    .filter(({ size }) => longest + cutting.kerf <= roomOf(size, cutting))
  let best: Bought | undefined
  for (const { size } of able) {
    const filled = fillLengths(lengths, roomOf(size, cutting), cutting.kerf)
    const bought = cheapened(filled, stock, cutting)
    if (!best || bought.price < best.price) best = bought
  }
  if (!best) return null
  const counts = new Map<number, number>()
  for (const size of [...best.sizes].sort((a, b) => a - b)) counts.set(size, (counts.get(size) ?? 0) + 1)
  return { lengths: [...counts].map(([size, count]) => ({ size, count })), proven: false }
}
