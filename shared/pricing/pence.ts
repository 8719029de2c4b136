/**
 * Money: whole hundredths of the workshop's currency (pence, cents). Made only by `pence`, so that no part of a penny is ever kept.
 * Percents beside it are basis points: 20 % is 2000.
 */
declare const wholePence: unique symbol
export type Pence = number & { readonly [wholePence]: true }

/** The largest amount kept: ten million pounds. Sums and products of it with a quantity stay exact in a double. */
export const mostPence = 1_000_000_000

/** Takes a whole number as money. Throws RangeError for a fraction, for what isn't a number, and past ten million pounds either way. */
export function pence(amount: number): Pence {
  if (!Number.isSafeInteger(amount) || Math.abs(amount) > mostPence)
    throw new RangeError(`whole pence up to ${mostPence} are accepted, got ${amount}`)
  return (Object.is(amount, -0) ? 0 : amount) as Pence
}

/** Whether a number can be taken as money: whole, and no more than ten million pounds either way. */
export const isPence = (amount: unknown): amount is Pence =>
  Number.isSafeInteger(amount) && Math.abs(amount as number) <= mostPence

/** Rounds to the nearest whole penny, a half away from nothing: 12.5 is 13, −12.5 is −13. A quantity's binary dust is taken off first. */
export function toPence(amount: number): Pence {
  const size = Math.floor(Math.abs(amount) + 0.5 + 1e-7)
  return pence(amount < 0 ? -size : size)
}

/** The sum of amounts, each already whole. */
export const sumPence = (amounts: readonly Pence[]): Pence =>
  pence(amounts.reduce((total: number, one) => total + one, 0))
