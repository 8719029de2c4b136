import type { IncomingHttpHeaders } from 'node:http'

/** Why a request isn't answered: a status for the browser and a sentence for the log. */
export type Refusal = { status: number; reason: string }

/** What a request says about itself, before its body is read. */
export type Caller = { method: string; headers: IncomingHttpHeaders }

/** What says who is calling and with what; no browser says any of it twice. */
const saidOnce = new Set(['host', 'origin', 'sec-fetch-site', 'content-type', 'content-encoding', 'cookie'])

/** Refuses a request that says one of these twice: which of the two counts is not the same for everyone who reads it. */
export const twiceRefusal = (rawHeaders: readonly string[]): Refusal | undefined => {
  const names = rawHeaders.filter((_text, at) => at % 2 === 0).map((name) => name.toLowerCase())
  const twice = names.find((name, at) => saidOnce.has(name) && names.indexOf(name) !== at)
  return twice === undefined ? undefined : { status: 400, reason: `said twice: ${twice}` }
}

/**
 * Refuses what no page of ours would send: another name for this machine (a rebound host name reaches us with its own
 * Host), or a request that another site or another port's page started.
 */
export const strangerRefusal = ({ headers }: Caller, port: number): Refusal | undefined => {
  if (headers.host !== `127.0.0.1:${port}`) return { status: 421, reason: 'another host name' }
  const site = headers['sec-fetch-site']
  if (site !== undefined && site !== 'same-origin' && site !== 'none') {
    return { status: 403, reason: 'started by another site' }
  }
  const origin = headers.origin
  if (origin !== undefined && origin !== `http://127.0.0.1:${port}`)
    return { status: 403, reason: 'another origin' }
  return undefined
}

/**
 * Refuses a request of the program that isn't a same-origin POST of application/json. A page elsewhere can send neither
 * that type nor our Origin without asking first, and the asking is refused too. A browser too old to send
 * Sec-Fetch-Site still sends Origin with a POST, so Origin must be there.
 */
export const requestRefusal = ({ method, headers }: Caller): Refusal | undefined => {
  if (method !== 'POST') return { status: 405, reason: 'a request must be a POST' }
  if (headers.origin === undefined) return { status: 403, reason: 'no origin' }
  if (headers['sec-fetch-site'] === 'none') return { status: 403, reason: 'not sent by a page' }
  const [type = ''] = (headers['content-type'] ?? '').split(';')
  if (type.trim().toLowerCase() !== 'application/json') return { status: 415, reason: 'not application/json' }
  if (headers['content-encoding'] !== undefined) return { status: 415, reason: 'an encoded body' }
  return undefined
}
