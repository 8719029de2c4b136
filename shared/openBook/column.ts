import * as v from 'valibot'
import type { Problem } from '../problem.ts'

/**
 * One column of a row as it stands in an open file. kind: how it is kept in the book (number and text as they are, flag as 0 or 1,
 * tree as text of its own); optional: nothing may stand in it; since: the book's layout that brought it, 1 unless said; rule: what its
 * shape alone can't say.
 */
export type Column = {
  kind: 'number' | 'text' | 'flag' | 'tree'
  shape: v.GenericSchema
  optional?: true
  since?: number
  rule?: (value: unknown) => Problem[]
}

const shortest = 2000
const longest = 200_000

const words = (most: number) => {
  const accepted = `a text of up to ${most} characters`
  return v.pipe(v.string(accepted), v.maxLength(most, accepted))
}

const fitting = (accepted: string, pattern: RegExp): Column => ({
  kind: 'text',
  shape: v.pipe(v.string(accepted), v.maxLength(100, accepted), v.regex(pattern, accepted)),
})

/** A line of words. */
export const text: Column = { kind: 'text', shape: words(shortest) }

/** Words of a length between two bounds. */
export const wordsOf = (least: number, most: number): Column => {
  const accepted = `a text of ${least} to ${most} characters`
  const shape = v.pipe(v.string(accepted), v.minLength(least, accepted), v.maxLength(most, accepted))
  return { kind: 'text', shape }
}

/** Notes and the like. */
export const longText: Column = { kind: 'text', shape: words(longest) }

/** A text that something can't go without. */
export const name: Column = {
  kind: 'text',
  shape: v.pipe(
    v.string('a text of 1 to 2000 characters'),
    v.minLength(1, 'a text of 1 to 2000 characters'),
    v.maxLength(shortest, 'a text of 1 to 2000 characters'),
  ),
}

export const oneOf = (...words: readonly string[]): Column => ({
  kind: 'text',
  shape: v.picklist(words, `one of ${words.join(', ')}`),
})

/** A moment by universal time, '2026-03-02T08:00:00.000Z'. */
export const moment = fitting(
  'a moment as 2026-03-02T08:00:00.000Z',
  /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?Z$/,
)

/** A day, '2026-03-02'. */
export const day = fitting('a day as 2026-03-02', /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/)

/** A time on the wall, '14:05'. */
export const clock = fitting('a time as 14:05', /^([01]\d|2[0-3]):[0-5]\d$/)

/** A job's number: a year or the sample's S, and a place, '2026-014'. */
export const jobNumber = fitting('a job’s number as 2026-014', /^(\d{4}|S)-\d{3,9}$/)

/** An order's number, '2026-T03'. */
export const orderNumber = fitting('an order’s number as 2026-T03', /^(\d{4}|S)-T\d{2,9}$/)

export const hash = fitting('64 signs from 0 to 9 and a to f', /^[0-9a-f]{64}$/)

const numberOf = (accepted: string, isIt: (value: number) => boolean): Column => ({
  kind: 'number',
  shape: v.pipe(v.number(accepted), v.finite(accepted), v.check(isIt, accepted)),
})

/** A whole number between two bounds. */
export const whole = (least: number, most: number): Column =>
  numberOf(
    `a whole number from ${least} to ${most}`,
    (value) => Number.isSafeInteger(value) && value >= least && value <= most,
  )

/** The number of a row that others call it by. */
export const rowId = whole(1, Number.MAX_SAFE_INTEGER)

/** A size over 0, mm where it is a length. */
export const size = numberOf('a number over 0, up to 1000000', (value) => value > 0 && value <= 1_000_000)

/** 0 or more. */
export const allowance = numberOf('a number from 0 to 1000000', (value) => value >= 0 && value <= 1_000_000)

export const quantity = numberOf('a number from -1000000 to 1000000', (value) => Math.abs(value) <= 1_000_000)

export const flag: Column = { kind: 'flag', shape: v.boolean('true or false') }

/** Anything with parts of its own: a gate, what was put for an estimate, what a paper froze. */
export const tree = (shape: v.GenericSchema, rule?: Column['rule']): Column => ({
  kind: 'tree',
  shape,
  ...(rule && { rule }),
})

/** The same column where nothing may stand in it. */
export const orNothing = (column: Column): Column => ({
  ...column,
  shape: v.nullable(column.shape),
  optional: true,
})
