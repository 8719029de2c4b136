/** Draws from a seed: the same seed gives the same draws on every machine. */
export type Draws = {
  /** A number from low to high in whole steps, both ends possible. */
  between: (low: number, high: number, step?: number) => number
  one: <T>(choices: readonly T[]) => T
}

/** Numbers from 0 to 1 by mulberry32, a 32-bit generator in the public domain (from memory): good enough to vary sizes with. */
function mulberry32(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/** Draws from a whole-number seed. */
export function seeded(seed: number): Draws {
  const next = mulberry32(seed)
  const between = (low: number, high: number, step = 1): number =>
    low + step * Math.floor(next() * (Math.floor((high - low) / step) + 1))
  return {
    between,
    one: (choices) => {
      if (choices.length === 0) throw new RangeError('there is nothing to draw from')
      return choices[between(0, choices.length - 1)] as (typeof choices)[number]
    },
  }
}
