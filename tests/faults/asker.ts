import type { Gives, RequestName } from '../../shared/contract.ts'
import type { Result } from '../../shared/problem.ts'
import { call, enter, ownHeaders } from '../loopback/caller.ts'

/** Asks for something and gives the answer as the window has it. */
export type Ask = <N extends RequestName>(name: N, payload: unknown) => Promise<Result<Gives<N>>>

/** The value that an answer gives; a refusal is a fault of the test. */
export async function valueOf<T>(asked: Promise<Result<T>>): Promise<T> {
  const result = await asked
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

/** Asks a running host as a page of its own does. */
export async function asker(address: string): Promise<Ask> {
  const port = Number(new URL(address).port)
  const headers = ownHeaders(port, await enter(port, address))
  return async (name, payload) => {
    const body = JSON.stringify(payload)
    const reply = await call({ port, path: `/request/${name}`, method: 'POST', headers, body })
    return JSON.parse(reply.body)
  }
}
