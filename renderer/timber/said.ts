import type { Result } from '../../shared/problem.ts'
import { capital } from '../format.ts'

/** What is wrong, as whole sentences; '' for nothing. The book tells each as a clause: 'order 2026-T01 was cancelled'. */
export const said = (result: Result<unknown>): string =>
  result.ok
    ? ''
    : result.problems
        .map(({ message }) => `${capital(message)}${/[.?!]$/.test(message) ? '' : '.'}`)
        .join(' ')
