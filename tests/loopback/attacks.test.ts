import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { startHost, type Host } from '../../electron/loopback/host.ts'
import { call, enter, ownHeaders, rawCall, type Call } from './caller.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-attacks-'))
const screens = join(folder, 'screens')
const asked: string[] = []
const log: string[] = []
const running: { host?: Host; cookie: string; usedKey: string } = { cookie: '', usedKey: '' }
const port = (): number => running.host?.port ?? 0

beforeAll(async () => {
  const { mkdirSync } = await import('node:fs')
  mkdirSync(screens)
  writeFileSync(join(screens, 'index.html'), '<!doctype html><title>the book</title>')
  writeFileSync(join(folder, 'secret.js'), 'the book')
  symlinkSync(join(folder, 'secret.js'), join(screens, 'link.js'))
  running.host = await startHost({
    rendererFolder: screens,
    log: (line) => void log.push(line),
    timeoutMs: 500,
    answer: async (name) => {
      asked.push(name)
      return { ok: true, value: 'the book' }
    },
  })
  const address = running.host.newAddress()
  running.usedKey = new URL(address).pathname
  running.cookie = await enter(port(), address)
})

afterAll(async () => {
  await running.host?.close()
  rmSync(folder, { recursive: true, force: true })
})

const own = () => ownHeaders(port(), running.cookie)

/** A request as our own page sends it, but for what an attack changes; undefined takes a header away. */
const asPage = (changes: Record<string, string | undefined>, more: Partial<Call> = {}) => {
  const headers = Object.entries({ ...own(), ...changes }).filter(([, value]) => value !== undefined)
  const whole = { port: port(), path: '/request/sample.remove', method: 'POST', body: '{}' }
  return call({ ...whole, headers: Object.fromEntries(headers), ...more })
}

/** A request written out by hand, for what Node's own client would never send. */
const byHand = async (lines: readonly string[], body = '') => {
  const [status = '0'] = (await rawCall(port(), `${lines.join('\r\n')}\r\n\r\n${body}`)).split('\r\n')
  return { status: Number(status.split(' ')[1] ?? 0), body: '', headers: {} }
}

const head = (...more: string[]): string[] => [
  'POST /request/sample.remove HTTP/1.1',
  `Host: 127.0.0.1:${port()}`,
  `Origin: http://127.0.0.1:${port()}`,
  `Cookie: ${running.cookie}`,
  'Content-Type: application/json',
  'Connection: close',
  ...more,
]

type Outcome = { status: number; body: string; headers: Record<string, unknown> }

/** 0 stands for a line that was cut without an answer. */
const attacks: readonly (readonly [title: string, attack: () => Promise<Outcome>, status: number])[] = [
  ['no cookie', () => asPage({ cookie: undefined }), 403],
  ['a guessed cookie', () => asPage({ cookie: `bracework-${port()}=${'A'.repeat(32)}` }), 403],
  ['an empty cookie', () => asPage({ cookie: `bracework-${port()}=` }), 403],
  ['a cookie that begins like ours', () => asPage({ cookie: running.cookie.slice(0, -1) }), 403],
  [
    'our cookie under another port’s name',
    () => asPage({ cookie: running.cookie.replace(String(port()), '80') }),
    403,
  ],
  ['a key that was used', () => call({ port: port(), path: running.usedKey }), 403],
  ['a guessed key', () => call({ port: port(), path: `/open/${'A'.repeat(32)}` }), 403],
  ['an empty key', () => call({ port: port(), path: '/open/' }), 403],
  ['a rebound host name', () => asPage({ host: 'gates.example' }), 421],
  ['a rebound host name with our port', () => asPage({ host: `gates.example:${port()}` }), 421],
  ['a host name that ends like ours', () => asPage({ host: `x.127.0.0.1:${port()}` }), 421],
  ['localhost for a host', () => asPage({ host: `localhost:${port()}` }), 421],
  ['the other loopback address for a host', () => asPage({ host: `[::1]:${port()}` }), 421],
  ['our host without its port', () => asPage({ host: '127.0.0.1' }), 421],
  [
    'a foreign host that says it was passed on',
    () => asPage({ host: 'gates.example', 'x-forwarded-host': `127.0.0.1:${port()}` }),
    421,
  ],
  ['two hosts', () => byHand([...head('Content-Length: 2'), 'Host: gates.example'], '{}'), 400],
  ['two origins', () => byHand([...head('Content-Length: 2'), 'Origin: https://example.org'], '{}'), 400],
  ['two cookies', () => byHand([...head('Content-Length: 2'), 'Cookie: theme=dark'], '{}'), 400],
  [
    'no host',
    () =>
      byHand(
        head('Content-Length: 2').filter((line) => !line.startsWith('Host')),
        '{}',
      ),
    400,
  ],
  ['another site’s origin', () => asPage({ origin: 'https://example.org' }), 403],
  ['another port’s origin', () => asPage({ origin: 'http://127.0.0.1:1' }), 403],
  ['our origin by another scheme', () => asPage({ origin: `https://127.0.0.1:${port()}` }), 403],
  [
    'an origin that begins like ours',
    () => asPage({ origin: `http://127.0.0.1:${port()}.example.org` }),
    403,
  ],
  ['no origin’s name', () => asPage({ origin: 'null' }), 403],
  ['no origin', () => asPage({ origin: undefined }), 403],
  ['a page of another site', () => asPage({ 'sec-fetch-site': 'cross-site' }), 403],
  ['a page of another port', () => asPage({ 'sec-fetch-site': 'same-site' }), 403],
  ['an address typed by hand', () => asPage({ 'sec-fetch-site': 'none' }), 403],
  ['a kind of page nobody knows', () => asPage({ 'sec-fetch-site': 'same-origin, cross-site' }), 403],
  ['a form', () => asPage({ 'content-type': 'application/x-www-form-urlencoded' }), 415],
  ['a form of several parts', () => asPage({ 'content-type': 'multipart/form-data; boundary=x' }), 415],
  ['plain text', () => asPage({ 'content-type': 'text/plain' }), 415],
  ['plain text that speaks of ours', () => asPage({ 'content-type': 'text/plain; application/json' }), 415],
  ['no kind', () => asPage({ 'content-type': undefined }), 415],
  ['a packed body', () => asPage({ 'content-encoding': 'gzip' }), 415],
  [
    'asking leave first',
    () => asPage({ 'access-control-request-method': 'POST' }, { method: 'OPTIONS', body: '' }),
    405,
  ],
  ['another method', () => asPage({}, { method: 'DELETE' }), 405],
  [
    'another method that says it is ours',
    () => asPage({ 'x-http-method-override': 'POST' }, { method: 'GET', body: '' }),
    405,
  ],
  [
    'a request that is only looked at',
    () => asPage({}, { method: 'GET', path: '/request/sample.remove?x={}', body: '' }),
    405,
  ],
  ['an echo', () => asPage({}, { method: 'TRACE', body: '' }), 405],
  ['a tunnel', () => byHand(['CONNECT example.org:443 HTTP/1.1', 'Host: example.org:443', '']), 0],
  [
    'a socket',
    () => byHand(['GET / HTTP/1.1', 'Host: gates.example', 'Upgrade: websocket', 'Connection: Upgrade', '']),
    421,
  ],
  [
    'another host in the address line',
    () => byHand(['GET http://gates.example/ HTTP/1.1', 'Host: gates.example', 'Connection: close']),
    421,
  ],
  ['a name from an object’s own parts', () => asPage({}, { path: '/request/constructor' }), 404],
  ['a name that isn’t there', () => asPage({}, { path: '/request/book.everything' }), 404],
  ['a path upwards', () => asPage({}, { method: 'GET', path: '/../secret.js', body: '' }), 404],
  [
    'a path upwards, in other letters',
    () => asPage({}, { method: 'GET', path: '/%2e%2e%2fsecret.js', body: '' }),
    404,
  ],
  ['a link out of the folder', () => asPage({}, { method: 'GET', path: '/link.js', body: '' }), 404],
  [
    'a name cut off in its middle',
    () => asPage({}, { method: 'GET', path: '/index.html%00.js', body: '' }),
    404,
  ],
  ['two lengths', () => byHand([...head('Content-Length: 2', 'Content-Length: 60')], '{}'), 400],
  [
    'a length and pieces as well',
    () => byHand([...head('Content-Length: 2', 'Transfer-Encoding: chunked')], '0\r\n\r\n{}'),
    400,
  ],
  ['a length below nothing', () => byHand([...head('Content-Length: -1')], '{}'), 400],
  ['a header over two lines', () => byHand([...head('X-A: b', ' c\u0001d', 'Content-Length: 2')], '{}'), 400],
  ['headers without end', () => byHand([...head(`X-A: ${'a'.repeat(40_000)}`)]), 431],
  [
    'a body without end',
    () => asPage({ 'content-length': String(1024 * 1024 + 1) }, { body: Buffer.alloc(1024 * 1024 + 1, 32) }),
    413,
  ],
  ['a body 400,000 deep', () => asPage({}, { body: '['.repeat(400_000) }), 400],
  ['half a body', () => asPage({}, { body: '{"a":' }), 400],
  ['a body that never comes', () => byHand([...head('Content-Length: 60')], '{'), 408],
  [
    'a page that only says it is open, from elsewhere',
    () => asPage({ origin: 'https://example.org' }, { path: '/still-open' }),
    403,
  ],
]

test.each(attacks)('%s is refused, and the book isn’t asked', async (_title, attack, status) => {
  asked.length = 0
  log.length = 0
  const reply = await attack()
  expect(reply.status).toBe(status)
  expect(reply.body).not.toContain('the book')
  expect(Object.keys(reply.headers).filter((name) => name.startsWith('access-control'))).toEqual([])
  expect(asked).toEqual([])
  // What Node itself turns away before it is a request has no line of ours; everything else has just one.
  expect(log.length).toBeLessThanOrEqual(1)
  for (const line of log) expect(line).toMatch(/^refused [A-Z]+ \(\d+\): [a-z ]/)
})

test('a second request behind a good one is looked at by itself', async () => {
  asked.length = 0
  const first = [...head('Content-Length: 2').filter((line) => line !== 'Connection: close'), '', '{}'].join(
    '\r\n',
  )
  const second = [
    'POST /request/sample.remove HTTP/1.1',
    `Host: 127.0.0.1:${port()}`,
    'Content-Length: 2',
    'Connection: close',
    '',
    '{}',
  ].join('\r\n')
  const reply = await rawCall(port(), first + second)
  expect([...reply.matchAll(/HTTP\/1\.1 (\d+)/g)].map(([, status]) => status)).toEqual(['200', '403'])
  expect(asked).toEqual(['sample.remove'])
})

test('two hundred callers that say nothing don’t keep our own page waiting', async () => {
  const silent = Array.from({ length: 200 }, () => connect(port(), '127.0.0.1').on('error', () => undefined))
  await Promise.all(silent.map((socket) => new Promise((done) => socket.once('connect', done))))
  const cut = silent.map((socket) => new Promise<void>((done) => socket.resume().once('close', () => done())))
  const answered = asPage({}).then(({ status }) => status)
  expect(
    await Promise.race([answered, ...cut.map((one) => one.then(() => 'one of them was cut first'))]),
  ).toBe(200)
  await Promise.all(cut)
})

test('nobody on the workshop’s own network reaches it', async () => {
  const others = Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ internal }) => !internal)
  const places = [...others.map(({ address }) => address), '127.0.0.2', '::1']
  for (const host of places) {
    const reached = await new Promise((done) => {
      connect({ host, port: port(), timeout: 500 }, () => done(host))
        .on('error', () => done('refused'))
        .on('timeout', () => done('refused'))
    })
    expect([host, reached]).toEqual([host, 'refused'])
  }
})

test('after all of it our own page is still answered', async () => {
  const reply = await asPage({})
  expect([reply.status, JSON.parse(reply.body)]).toEqual([200, { ok: true, value: 'the book' }])
  expect(attacks.length).toBeGreaterThanOrEqual(25)
  process.stdout.write(`the host: ${attacks.length + 3} attacks from Node, all refused\n`)
})
