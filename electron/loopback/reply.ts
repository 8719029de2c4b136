import type { ServerResponse } from 'node:http'
import type { Result } from '../../shared/problem.ts'
import { securityHeaders } from '../securityHeaders.ts'

/** An answer of the host, whole. */
export type Reply = { status: number; type: string; body: string | Buffer }

/** Sends a reply under the security headers; a HEAD gets everything but the body. */
export const send = (response: ServerResponse, { status, type, body }: Reply): void => {
  response.writeHead(status, {
    ...securityHeaders,
    'Content-Type': type,
    'Content-Length': Buffer.byteLength(body),
  })
  response.end(response.req.method === 'HEAD' ? undefined : body)
}

/** Sends what a request of the program gave, good or bad. */
export const sendResult = (response: ServerResponse, status: number, result: Result<unknown>): void =>
  send(response, { status, type: 'application/json; charset=utf-8', body: JSON.stringify(result) })

/** What somebody sees who comes without a key that opens. */
export const closedPage = {
  type: 'text/html; charset=utf-8',
  body: `<!doctype html>
<html lang="en-GB">
  <head><meta charset="utf-8"><title>Bracework</title></head>
  <body>
    <h1>The book is shut here</h1>
    <p>Open the address that Bracework gave when it was started. Each address opens once; start Bracework again for a new one.</p>
  </body>
</html>
`,
}
