import type { CuttingProblem } from './cuttingProblem.ts'

/** The open case with the lowest bound, the newest of those that were tried least. */
export function lowestOpen<Case extends { bound: number; order: number; tries?: number }>(
  open: readonly Case[],
): Case | undefined {
  let best: Case | undefined
  for (const one of open) {
    const later =
      best && (one.bound - best.bound || (one.tries ?? 0) - (best.tries ?? 0) || best.order - one.order)
    if (later === undefined || later < 0) best = one
  }
  return best
}

/** Of the counts that aren't whole the one whose settling gains most, and the whole number under it; none where every gain is under 0. */
export function unsettled(
  counts: readonly number[],
  gainOf: (share: number, at: number) => number,
): { at: number; upTo: number } | undefined {
  let best: { at: number; upTo: number } | undefined
  let most = -1
  counts.forEach((count, at) => {
    const upTo = Math.floor(count + 1e-6)
    const gain = gainOf(count - upTo, at)
    if (Math.abs(count - Math.round(count)) <= 1e-6 || gain <= most) return
    best = { at, upTo }
    most = gain
  })
  return best
}

/** The stock whose count is least settled, a dear one first. */
export const unsettledStock = ({ stocks }: CuttingProblem, counts: readonly number[]) =>
  unsettled(counts, (share, stock) => Math.min(share, 1 - share) * ((stocks[stock]?.pence ?? 0) + 1))
