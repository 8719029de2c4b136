import { request, type OutgoingHttpHeaders } from 'node:http'
import { connect } from 'node:net'

/** What a call sends; everything a browser would add can be left out or forged. */
export type Call = {
  port: number
  path: string
  method?: string
  headers?: OutgoingHttpHeaders
  body?: string | Buffer
}

/** What came back. */
export type Reply = { status: number; headers: Record<string, string | string[] | undefined>; body: string }

/** Sends exactly what it is given: unlike fetch, Node's http lets Host, Origin and Sec-Fetch-Site be forged. */
export const call = ({ port, path, method = 'GET', headers = {}, body }: Call): Promise<Reply> =>
  new Promise((done, fail) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers, agent: false }, (reply) => {
      const chunks: Buffer[] = []
      reply.on('data', (chunk: Buffer) => chunks.push(chunk))
      reply.on('error', fail)
      reply.on('end', () =>
        done({
          status: reply.statusCode ?? 0,
          headers: reply.headers,
          body: Buffer.concat(chunks).toString('utf8'),
        }),
      )
    })
    sent.on('error', fail)
    sent.end(body)
  })

/** Writes raw bytes to the port and gives everything that comes back until the host hangs up. */
export const rawCall = (port: number, text: string): Promise<string> =>
  new Promise((done, fail) => {
    const chunks: Buffer[] = []
    const socket = connect(port, '127.0.0.1', () => socket.write(text))
    socket.on('data', (chunk: Buffer) => chunks.push(chunk))
    socket.on('error', fail)
    socket.on('close', () => done(Buffer.concat(chunks).toString('utf8')))
  })

/** Opens an address as a browser would, and gives the cookie pair it got. */
export const enter = async (port: number, address: string): Promise<string> => {
  const reply = await call({ port, path: new URL(address).pathname })
  const [cookie = ''] = reply.headers['set-cookie'] ?? []
  return cookie.split(';')[0] ?? ''
}

/** The headers of a page of ours: its cookie, its origin, its kind. */
export const ownHeaders = (port: number, cookie: string): OutgoingHttpHeaders => ({
  cookie,
  origin: `http://127.0.0.1:${port}`,
  'sec-fetch-site': 'same-origin',
  'content-type': 'application/json',
})
