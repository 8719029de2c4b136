import type { Problem, Result } from '../../shared/problem.ts'
import { bad, good } from '../../shared/problem.ts'

/** What a request names isn't in the book: taken out in another window, or a window left open too long. */
export const missing = (field: string, what: string): Problem => ({
  code: 'not-found',
  field,
  message: `this ${what} is no longer in the book`,
})

/** What was found, or the problem that it wasn't. */
export const foundOr = <T>(found: T | undefined, field: string, what: string): Result<T> =>
  found === undefined ? bad(missing(field, what)) : good(found)
