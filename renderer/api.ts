import type { Gives, RequestName, Takes } from '../shared/contract.ts'
import type { Result } from '../shared/problem.ts'
import { spoken } from './language/said.ts'
import { faultTold, type Fault } from './stores/faults.ts'

type Carried = { [N in RequestName]: (payload: Takes<N>) => Promise<Result<Gives<N>>> }

declare global {
  interface Window {
    /** The named functions the desktop window's preload hands over; absent where the screens are served on loopback. */
    bracework?: Carried
  }
}

/** The code of the problem given when the book could not be reached at all, so that a caller can try again. */
export const unreachable = 'unreachable'

const noAnswer = <T>(): Result<T> => ({
  ok: false,
  problems: [
    {
      code: unreachable,
      field: '',
      message: 'The job book isn’t answering. What you have entered stays on this screen and is tried again.',
    },
  ],
})

async function overLoopback<N extends RequestName>(name: N, payload: Takes<N>): Promise<Result<Gives<N>>> {
  const reply = await fetch(`/request/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(payload),
    // An edit sent as the window closes must still arrive.
    keepalive: name === 'jobs.change' || name === 'options.change' || name === 'options.add',
  })
  const answer: unknown = await reply.json()
  return isResult<Gives<N>>(answer) ? answer : noAnswer()
}

const isResult = <T>(answer: unknown): answer is Result<T> =>
  typeof answer === 'object' && answer !== null && 'ok' in answer && typeof answer.ok === 'boolean'

/** Faults of the program, about which the person can do nothing but ask for help. A disk's trouble and damage are told where they are met. */
const needHelp = new Set(['unexpected'])

/** Lets the top of the screen say that the program failed, whichever screen asked. */
function tellFault<T>(asked: string, result: Result<T>): Result<T> {
  const problem = result.ok ? undefined : result.problems.find(({ code }) => needHelp.has(code))
  if (problem?.fault !== undefined) {
    const detail: Fault = { mark: problem.fault, asked, at: new Date().toISOString() }
    window.dispatchEvent(new CustomEvent(faultTold, { detail }))
  }
  return result
}

/**
 * Asks the book for one thing, over whichever carrier there is. Always answers a Result: a carrier that fails gives one
 * problem with the code `unreachable`.
 */
export async function request<N extends RequestName>(name: N, payload: Takes<N>): Promise<Result<Gives<N>>> {
  try {
    const carried = window.bracework?.[name]
    // The desktop carrier copies what it is given and can't copy a screen's watched objects: hand it plain ones.
    const answer = carried
      ? await carried(JSON.parse(JSON.stringify(payload)))
      : await overLoopback(name, payload)
    if (answer.ok) spoken.listen?.(answer.value)
    return tellFault(name, answer)
  } catch {
    return noAnswer()
  }
}

/** Whether the screens stand in the program's own window, which prints by itself; otherwise the browser does. */
export const inOwnWindow = (): boolean => window.bracework !== undefined

/** Troubles that pass: the book couldn't be reached, or its disk takes nothing just now. What was entered is right and is sent again. */
const passing = new Set([unreachable, 'locked', 'full', 'not-writable', 'disk'])

/** True when a result failed only because the book could not be reached or written in. */
export const wasUnreachable = (result: Result<unknown>): boolean =>
  !result.ok && result.problems.some((problem) => passing.has(problem.code))

/** The sentences of a failed result, one a line; empty for a good one. */
export const sentences = (result: Result<unknown>): string =>
  result.ok ? '' : result.problems.map((problem) => problem.message).join(' ')
