import type { CustomScheme, Protocol } from 'electron'
import { rendererFile } from './rendererFile.ts'
import { securityHeaders } from './securityHeaders.ts'

/** The screens' address in the window. */
export const appAddress = 'app://bracework/'

/** Whether an address is one of our own pages. */
export const isAppAddress = (address: string): boolean => {
  const url = URL.parse(address)
  return (
    url !== null &&
    url.protocol === 'app:' &&
    url.host === 'bracework' &&
    url.username === '' &&
    url.password === ''
  )
}

/** Whether an address is a paper's bytes that one of our own pages made. */
export const isPaperAddress = (address: string): boolean =>
  address.startsWith('blob:') && isAppAddress(address.slice('blob:'.length))

/** What must be said about the scheme before the program is ready: it has an origin, and counts as safe. */
export const appScheme: CustomScheme = {
  scheme: 'app',
  privileges: { standard: true, secure: true, supportFetchAPI: true },
}

const refusal = (status: number): Response => new Response('', { status, headers: securityHeaders })

/** What is served: the screens' folder, and the papers shown lately, by the mark of their bytes. */
export type Served = {
  rendererFolder: string
  paperOf: (sha256: string) => { bytes: Uint8Array } | undefined
}

/** A paper for the built-in viewer, which takes its place; the policy of the screens would keep that viewer out. */
const paperReply = (bytes: Uint8Array): Response =>
  new Response(new Uint8Array(bytes), {
    headers: {
      'Content-Type': 'application/pdf',
      'X-Content-Type-Options': 'nosniff',
      'X-Frame-Options': 'DENY',
      'Cache-Control': 'no-store',
    },
  })

/** Answers one request under app://bracework/: a paper by its mark, else from the screens' folder; anything else with a refusal. */
export const answerApp = async (request: Request, { rendererFolder, paperOf }: Served): Promise<Response> => {
  if (!isAppAddress(request.url)) return refusal(403)
  if (request.method !== 'GET') return refusal(405)
  const [, sha256] = /^\/paper\/([0-9a-f]{64})\.pdf$/.exec(new URL(request.url).pathname) ?? []
  if (sha256 !== undefined) {
    const paper = paperOf(sha256)
    return paper ? paperReply(paper.bytes) : refusal(404)
  }
  const file = await rendererFile(rendererFolder, new URL(request.url).pathname)
  if (!file) return refusal(404)
  return new Response(new Uint8Array(file.bytes), {
    headers: { ...securityHeaders, 'Content-Type': file.type },
  })
}

/** Serves the screens. Call it once the program is ready. */
export const serveApp = (protocol: Pick<Protocol, 'handle'>, served: Served): void =>
  protocol.handle('app', (request) => answerApp(request, served))
