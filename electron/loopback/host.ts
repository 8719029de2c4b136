import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { isRequestName, type RequestName } from '../../shared/contract.ts'
import { bad, good, type Result } from '../../shared/problem.ts'
import { faultWords } from '../discreet.ts'
import { rendererFile } from '../rendererFile.ts'
import { securityHeaders } from '../securityHeaders.ts'
import { makeDoor, type Door } from './door.ts'
import {
  limitsOfJobFile,
  limitsOfPhotograph,
  limitsOfPlan,
  limitsOfPrices,
  readBody,
  type BodyLimits,
} from './readBody.ts'
import { closedPage, send, sendResult } from './reply.ts'
import { requestRefusal, strangerRefusal, twiceRefusal, type Refusal } from './refusals.ts'

/**
 * What the host needs. answer is the program's own, the same the window uses. rendererFolder holds the built screens.
 * timeoutMs is how long a request may take to arrive whole (10 s unless given). fixedKey is for tests only.
 */
export type HostOptions = {
  rendererFolder: string
  answer: (name: string, payload: unknown) => Promise<Result<unknown>>
  log: (line: string) => void
  /** Told whenever a page of ours asks for something, or only says that it is still open. */
  heard?: () => void
  port?: number
  fixedKey?: string
  timeoutMs?: number
}

/** A running host. newAddress gives an address that opens the book once, in one browser. */
export type Host = { port: number; newAddress: () => string; close: () => Promise<void> }

type Exchange = {
  request: IncomingMessage
  response: ServerResponse
  port: number
  door: Door
  options: HostOptions
}

const refuse = ({ request, response, options }: Exchange, { status, reason }: Refusal): void => {
  options.log(`refused ${request.method} (${status}): ${reason}`)
  if (!request.complete) {
    response.setHeader('Connection', 'close')
    response.once('finish', () => request.destroy())
  }
  if (status === 405) response.setHeader('Allow', 'GET, HEAD, POST')
  if (request.method === 'GET') return send(response, { ...closedPage, status })
  sendResult(response, status, bad({ code: 'refused', field: '', message: 'Bracework refused this' }))
}

const openDoor = (exchange: Exchange, key: string): void => {
  const { request, response, port, door } = exchange
  if (!door.knows(request.headers.cookie, port)) {
    if (!door.useKey(key)) return refuse(exchange, { status: 403, reason: 'a key that is wrong or was used' })
    response.setHeader('Set-Cookie', door.setCookie(port))
  }
  response.writeHead(303, { ...securityHeaders, Location: '/' })
  response.end()
}

/** The requests that bring a merchant's whole list, or a plan with its proof; no other may weigh as much or go as deep. */
const limits: Partial<Record<RequestName, BodyLimits>> = {
  'prices.preview': limitsOfPrices,
  'prices.apply': limitsOfPrices,
  'orders.place': limitsOfPlan,
  'photographs.add': limitsOfPhotograph,
  'job.lookInto': limitsOfJobFile,
  'job.bringIn': limitsOfJobFile,
}

const answerRequest = async (exchange: Exchange, name: string): Promise<void> => {
  const { request, response, options } = exchange
  const refusal = requestRefusal({ method: request.method ?? '', headers: request.headers })
  if (refusal) return refuse(exchange, refusal)
  if (!isRequestName(name)) return refuse(exchange, { status: 404, reason: 'no such request' })
  const body = await readBody(request, limits[name])
  if ('refusal' in body) return refuse(exchange, body.refusal)
  sendResult(response, 200, await options.answer(name, body.value))
}

const answerFile = async (exchange: Exchange, path: string): Promise<void> => {
  const { request, response, options } = exchange
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return refuse(exchange, { status: 405, reason: 'method' })
  const file = await rendererFile(options.rendererFolder, path)
  if (!file) return refuse(exchange, { status: 404, reason: 'no such file' })
  send(response, { status: 200, type: file.type, body: file.bytes })
}

/** A page that lies open says so now and then, so that the book isn't closed under it. It is told nothing. */
const hearPage = (exchange: Exchange): void => {
  const { request, response, options } = exchange
  const refusal = requestRefusal({ method: request.method ?? '', headers: request.headers })
  if (refusal) return refuse(exchange, refusal)
  request.resume()
  options.heard?.()
  sendResult(response, 200, good(null))
}

const answerAny = async (exchange: Exchange): Promise<void> => {
  const { request, port, door, options } = exchange
  const stranger =
    twiceRefusal(request.rawHeaders) ??
    strangerRefusal({ method: request.method ?? '', headers: request.headers }, port)
  if (stranger) return refuse(exchange, stranger)
  const [path = ''] = (request.url ?? '').split('?')
  if (path.startsWith('/open/') && request.method === 'GET')
    return openDoor(exchange, path.slice('/open/'.length))
  if (!door.knows(request.headers.cookie, port))
    return refuse(exchange, { status: 403, reason: 'no cookie of ours' })
  if (path === '/still-open') return hearPage(exchange)
  options.heard?.()
  if (path.startsWith('/request/')) return answerRequest(exchange, path.slice('/request/'.length))
  return answerFile(exchange, path)
}

const listen = (server: Server, port: number): Promise<number> =>
  new Promise((done, fail) => {
    server.once('error', fail)
    server.listen(port, '127.0.0.1', () => done((server.address() as AddressInfo).port))
  })

/**
 * Serves the screens and the requests on 127.0.0.1, to browsers that came in by an address of newAddress.
 * Rejects when the port is taken. An error nobody foresaw goes to the log and answers 500.
 */
export const startHost = async (options: HostOptions): Promise<Host> => {
  const timeout = options.timeoutMs ?? 10_000
  const door = makeDoor(options.fixedKey)
  const server = createServer({
    requestTimeout: timeout,
    headersTimeout: timeout,
    connectionsCheckingInterval: Math.min(1000, timeout / 2),
    keepAliveTimeout: 5000,
  })
  const port = await listen(server, options.port ?? 0)
  server.on('request', (request, response) => {
    const exchange = { request, response, port, door, options }
    answerAny(exchange).catch((error: unknown) => {
      options.log(faultWords(error))
      if (response.headersSent) response.destroy()
      else refuse(exchange, { status: 500, reason: 'an error' })
    })
  })
  return {
    port,
    newAddress: () => `http://127.0.0.1:${port}/open/${options.fixedKey ?? door.newKey()}`,
    close: () =>
      new Promise((done) => {
        server.close(() => done())
        server.closeAllConnections()
      }),
  }
}
