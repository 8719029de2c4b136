import type { BuyTimber, Purchase, TimberToBuy } from '../../shared/pricing/buyTimber.ts'

/** Sections planned that are kept in mind: those of every version on the screen, and of some keys before. */
const mostRemembered = 200

/** What alone decides which lengths are bought: pieces by length whatever their order, lengths with their prices, kerf and trim. */
function problemIn({ pieces, stock, cutting }: TimberToBuy): string {
  const counts = new Map<number, number>()
  for (const { length, quantity } of pieces) counts.set(length, (counts.get(length) ?? 0) + quantity)
  const byLength = [...counts].sort(([a], [b]) => a - b)
  const { kerf, endTrim } = cutting
  return JSON.stringify([byLength, stock.map(({ size, pence }) => [size, pence]), kerf, endTrim])
}

/**
 * A way of buying timber that works nothing out twice: an estimate is worked anew at every key, and most keys leave its timber as it is.
 * The oldest answer is forgotten past two hundred.
 */
export function rememberedTimber(buy: BuyTimber): BuyTimber {
  const known = new Map<string, Purchase | null>()
  return (ask) => {
    const key = problemIn(ask)
    const before = known.get(key)
    if (before !== undefined) return before
    const purchase = buy(ask)
    const [oldest] = known.size < mostRemembered ? [] : known.keys()
    if (oldest !== undefined) known.delete(oldest)
    known.set(key, purchase)
    return purchase
  }
}
