import { at, share, type Task } from './checkTask.ts'

/** How many of each offer are taken: at least and at most. */
export type Counts = { least: number[]; most: number[] }

/** Both halves of a case divided by an offer's count. */
export const halves = (
  { least, most }: Counts,
  { offer, upTo }: { offer: number; upTo: number },
): [Counts, Counts] => [
  { least, most: most.with(offer, Math.min(at(most, offer), upTo)) },
  { least: least.with(offer, Math.max(at(least, offer), upTo + 1)), most },
]

/** Whether no plan takes so many of each offer. */
export const isEmpty = ({ least, most }: Counts): boolean => least.some((count, of) => count > at(most, of))

/** What lengths cost beyond, or less than, the values given for one of each offer; shares of a penny. */
export const beyond = ({ offers }: Task, slots: ArrayLike<number>, { least, most }: Counts): bigint =>
  offers.reduce((sum, { pence }, of) => {
    const over = pence * share - at(slots, of)
    return sum + BigInt(over) * BigInt(at(over >= 0 ? least : most, of))
  }, 0n)
