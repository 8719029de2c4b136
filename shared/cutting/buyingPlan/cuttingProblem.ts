/**
 * One section's cutting problem in whole steps of length, kerf put on every part and every length, so that parts fit a length when their
 * sizes add up to no more than its room. Parts longest first; stocks longest first, of one length the cheapest first. No two parts alike.
 */
export type CuttingProblem = {
  parts: { size: number; demand: number }[]
  stocks: { room: number; pence: number; most: number }[]
  /** All prices are whole multiples of this many pence, so that a bound may be rounded up to one. */
  priceStep: number
}

/** How often each part is cut from one length, by the parts' order. */
export type Pattern = number[]

/** A pattern and of which stock, taken count times. */
export type Bought = { stock: number; counts: Pattern; times: number }

/** How many of each part are wanted. */
export const demandsOf = ({ parts }: CuttingProblem): Pattern => parts.map(({ demand }) => demand)

export const sizeOf = ({ parts }: CuttingProblem, counts: Pattern): number =>
  parts.reduce((total, { size }, part) => total + size * (counts[part] as number), 0)

export const priceOf = ({ stocks }: CuttingProblem, plan: readonly Bought[]): number =>
  plan.reduce((total, { stock, times }) => total + (stocks[stock]?.pence ?? 0) * times, 0)
