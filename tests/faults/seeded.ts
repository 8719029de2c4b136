/** Numbers that look like chance and are the same in every run: 0 up to 1, from a seed (mulberry32, public domain). */
export type Chance = {
  /** From 0 up to, never, 1. */
  next: () => number
  /** A whole number from 0 up to, never, `below`. */
  below: (below: number) => number
  /** One of a list that isn't empty. */
  oneOf: <T>(list: readonly T[]) => T
}

/** A stream of seeded chance. */
export function seeded(seed: number): Chance {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
  const below = (most: number): number => Math.floor(next() * most)
  const oneOf = <T>(list: readonly T[]): T => {
    if (list.length === 0) throw new Error('nothing to choose from')
    return list[below(list.length)] as T
  }
  return { next, below, oneOf }
}
