/**
 * An exact decimal number: figures × 10^-places. 36.625 is { figures: 36625n, places: 3 }.
 * Every length typed comes out exactly in it: an inch is 25.4 mm and a 64th of anything ends after six places.
 */
export type Decimal = { figures: bigint; places: number }

/** Reads plain digits with at most one point: '36.625', '.5', '1830'. Other text throws SyntaxError. */
export function decimal(digits: string): Decimal {
  const [whole = '', after = ''] = digits.split('.')
  return { figures: BigInt(`${whole}${after}`), places: after.length }
}

/** numerator / denominator exactly, for a denominator of 2 to 64 that is a power of two. */
export const binaryFraction = (numerator: bigint, denominator: bigint): Decimal => ({
  figures: numerator * (1_000_000n / denominator),
  places: 6,
})

const atPlaces = (value: Decimal, places: number): bigint =>
  value.figures * 10n ** BigInt(places - value.places)

export function plus(a: Decimal, b: Decimal): Decimal {
  const places = Math.max(a.places, b.places)
  return { figures: atPlaces(a, places) + atPlaces(b, places), places }
}

export const negated = (a: Decimal): Decimal => ({ figures: -a.figures, places: a.places })

export const times = (a: Decimal, b: Decimal): Decimal => ({
  figures: a.figures * b.figures,
  places: a.places + b.places,
})

/** The double nearest to the exact value, since a decimal literal is read that way. Infinity past 1.8e308. */
export const toNumber = (value: Decimal): number => Number(`${value.figures}e-${value.places}`)
