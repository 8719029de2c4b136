/**
 * A benchmark's result. ratio is value measured beside `against` in the same run; aim the ratio asked for; holds whether it
 * is met. said is what was stated apart, for the plain table only.
 */
export type Row = {
  name: string
  value: number
  unit: string
  against: string
  ratio: number
  aim: number
  holds: boolean
}

export type Measured = { row: Row; said: string[] }

/** How often things are measured: fewer for a trial of the shape alone. */
export type Effort = { quick: boolean }

/** The value below which a share of the measurements lies; share from 0 to 1, nearest rank. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  const value = sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)]
  if (value === undefined) throw new RangeError('quantile needs at least one measurement')
  return value
}

export const median = (values: readonly number[]): number => quantile(values, 0.5)

export const written = (value: number): string => value.toFixed(value < 10 ? 2 : 1)
