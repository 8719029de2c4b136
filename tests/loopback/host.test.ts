import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { startHost, type Host } from '../../electron/loopback/host.ts'
import { call, enter, ownHeaders, rawCall } from './caller.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-host-'))
const screens = join(folder, 'screens')
const asked: { name: string; payload: unknown }[] = []
const log: string[] = []
const running: { host?: Host; cookie: string } = { cookie: '' }

const host = (): Host => {
  if (!running.host) throw new Error('the host is not running')
  return running.host
}

const post = (path: string, body: string | Buffer, headers = {}) =>
  call({
    port: host().port,
    path,
    method: 'POST',
    body,
    headers: { ...ownHeaders(host().port, running.cookie), ...headers },
  })

const get = (path: string, headers = {}) =>
  call({ port: host().port, path, headers: { cookie: running.cookie, ...headers } })

beforeAll(async () => {
  mkdirSync(join(screens, 'assets'), { recursive: true })
  writeFileSync(join(screens, 'index.html'), '<!doctype html><title>Bracework</title>')
  writeFileSync(join(screens, 'assets', 'screen.js'), 'export {}')
  writeFileSync(join(screens, 'notes.txt'), 'not a kind of file the screens have')
  writeFileSync(join(folder, 'secret.js'), 'a file beside the screens')
  mkdirSync(join(folder, 'screens-old'))
  writeFileSync(join(folder, 'screens-old', 'secret.js'), 'a folder that begins with the same letters')
  symlinkSync(join(folder, 'secret.js'), join(screens, 'assets', 'link.js'))
  running.host = await startHost({
    rendererFolder: screens,
    log: (line) => void log.push(line),
    timeoutMs: 400,
    answer: async (name, payload) => {
      asked.push({ name, payload })
      if (name === 'sample.remove') throw new Error('something nobody foresaw')
      return { ok: true, value: { heard: payload } }
    },
  })
  running.cookie = await enter(host().port, host().newAddress())
})

afterAll(async () => {
  await host().close()
  rmSync(folder, { recursive: true })
})

test('a page that came in by the address gets the screens and its answers', async () => {
  const page = await get('/')
  expect(page.status).toBe(200)
  expect(page.headers['content-type']).toBe('text/html; charset=utf-8')
  expect((await get('/assets/screen.js')).headers['content-type']).toBe('text/javascript; charset=utf-8')
  const answer = await post('/request/jobs.open', '{"id":7}')
  expect(answer.status).toBe(200)
  expect(JSON.parse(answer.body)).toEqual({ ok: true, value: { heard: { id: 7 } } })
  expect(asked.at(-1)).toEqual({ name: 'jobs.open', payload: { id: 7 } })
})

test('a key holds 192 bits, opens once, and is swapped for a cookie no script and no other site can use', async () => {
  const address = host().newAddress()
  const key = address.split('/').at(-1) ?? ''
  expect(Buffer.from(key, 'base64url')).toHaveLength(24)
  const first = await call({ port: host().port, path: `/open/${key}` })
  expect(first.status).toBe(303)
  expect(first.headers['location']).toBe('/')
  const [cookie = ''] = first.headers['set-cookie'] ?? []
  expect(cookie).toContain('; HttpOnly')
  expect(cookie).toContain('; SameSite=Strict')
  expect(Buffer.from(cookie.split(';')[0]?.split('=')[1] ?? '', 'base64url')).toHaveLength(24)
  const again = await call({ port: host().port, path: `/open/${key}` })
  expect(again.status).toBe(403)
  expect(again.headers['set-cookie']).toBeUndefined()
  expect((await call({ port: host().port, path: '/open/' })).status).toBe(403)
  expect((await call({ port: host().port, path: '/open/undefined' })).status).toBe(403)
})

test('a second window of the same browser comes in by its cookie, even by an address that was used', async () => {
  const address = new URL(host().newAddress()).pathname
  await call({ port: host().port, path: address })
  const second = await get(address)
  expect(second.status).toBe(303)
  expect(second.headers['set-cookie']).toBeUndefined()
})

test('nothing is given without the cookie, or with a wrong one', async () => {
  const port = host().port
  const before = asked.length
  expect((await call({ port, path: '/' })).status).toBe(403)
  expect((await call({ port, path: '/assets/screen.js' })).status).toBe(403)
  const none = { ...ownHeaders(port, ''), cookie: 'theme=dark' }
  const wrong = ownHeaders(port, `bracework-${port}=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA`)
  for (const headers of [none, wrong]) {
    expect(
      (await call({ port, path: '/request/jobs.open', method: 'POST', headers, body: '{}' })).status,
    ).toBe(403)
  }
  expect(asked).toHaveLength(before)
})

test.each([
  ['another site’s origin', { origin: 'https://example.org' }, 403],
  ['the same machine on another port', { origin: 'http://127.0.0.1:1' }, 403],
  ['localhost for an origin', { origin: 'http://localhost' }, 403],
  ['a sandboxed frame', { origin: 'null' }, 403],
  ['a page of another site', { 'sec-fetch-site': 'cross-site' }, 403],
  ['a page of another port', { 'sec-fetch-site': 'same-site' }, 403],
  ['an address typed by hand', { 'sec-fetch-site': 'none' }, 403],
  ['a host name that was rebound', { host: 'gates.example.org' }, 421],
  ['a host name that was rebound, with our port', { host: 'gates.example.org:80' }, 421],
  ['localhost for a host', { host: 'localhost' }, 421],
  ['a form', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
  ['plain text, which needs no leave', { 'content-type': 'text/plain' }, 415],
  ['plain text that speaks of json', { 'content-type': 'text/plain; application/json' }, 415],
  ['an encoded body', { 'content-encoding': 'gzip' }, 415],
])('%s is refused and never answered, though it has the cookie', async (_title, headers, status) => {
  const before = asked.length
  const reply = await post('/request/jobs.open', '{"id":7}', headers)
  expect(reply.status).toBe(status)
  expect(asked).toHaveLength(before)
  expect(JSON.parse(reply.body)).toMatchObject({ ok: false })
})

test('a request without an origin is refused', async () => {
  const { origin: _none, ...headers } = ownHeaders(host().port, running.cookie)
  const reply = await call({
    port: host().port,
    path: '/request/jobs.open',
    method: 'POST',
    headers,
    body: '{}',
  })
  expect(reply.status).toBe(403)
})

test('no answer, good or refused, carries a header that lets another origin in', async () => {
  const replies = [
    await get('/'),
    await post('/request/jobs.open', '{"id":7}'),
    await post('/request/jobs.open', '{}', { origin: 'https://example.org' }),
    await call({
      port: host().port,
      path: '/request/jobs.open',
      method: 'OPTIONS',
      headers: { origin: 'https://example.org', 'access-control-request-method': 'POST' },
    }),
  ]
  for (const { headers } of replies) {
    expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([])
    expect(headers['content-security-policy']).toContain("default-src 'none'")
    expect(headers['content-security-policy']).not.toContain('unsafe')
    expect(headers['x-content-type-options']).toBe('nosniff')
    expect(headers['cross-origin-resource-policy']).toBe('same-origin')
  }
})

test('only GET and HEAD of files and POST of requests are answered', async () => {
  for (const method of ['PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE']) {
    expect(
      (await call({ port: host().port, path: '/', method, headers: { cookie: running.cookie } })).status,
    ).toBe(405)
  }
  expect((await get('/request/jobs.open')).status).toBe(405)
  expect((await post('/index.html', '{}')).status).toBe(405)
  const head = await call({
    port: host().port,
    path: '/',
    method: 'HEAD',
    headers: { cookie: running.cookie },
  })
  expect([head.status, head.body]).toEqual([200, ''])
})

test.each(['', 'nothing.known', '__proto__', 'toString', 'constructor', 'jobs.open/../jobs.list'])(
  'a request called "%s" is not there',
  async (name) => {
    expect((await post(`/request/${name}`, '{}')).status).toBe(404)
  },
)

test.each([
  '/../secret.js',
  '/%2e%2e/secret.js',
  '/assets/../../secret.js',
  '/assets/%2e%2e%2f%2e%2e%2fsecret.js',
  '/..%5csecret.js',
  '/..\\secret.js',
  '/../screens-old/secret.js',
  '/assets/link.js',
  '//etc/passwd',
  '/etc/passwd',
  '/C:/secret.js',
  '/assets',
  '/assets/',
  '/notes.txt',
  '/index.html%00.js',
  '/%E0%A4%A',
  `/${'a'.repeat(5000)}.js`,
  '/missing.js',
])('no file is given for %s', async (path) => {
  const reply = await get(path)
  expect(reply.status).toBe(404)
  expect(reply.body).not.toContain('a file beside')
})

test('an absolute address in the request line reaches no other file or host', async () => {
  const reply = await rawCall(
    host().port,
    `GET http://127.0.0.1:${host().port}/../secret.js HTTP/1.1\r\nHost: 127.0.0.1:${host().port}\r\nCookie: ${running.cookie}\r\nConnection: close\r\n\r\n`,
  )
  expect(reply).toMatch(/^HTTP\/1\.1 404 /)
})

test('a body of exactly 1 MB is read, one byte more is refused, said or unsaid', async () => {
  const exactly = `"${'x'.repeat(1024 * 1024 - 2)}"`
  expect((await post('/request/jobs.open', exactly)).status).toBe(200)
  const over = Buffer.from(`${exactly} `)
  expect((await post('/request/jobs.open', over)).status).toBe(413)
  const unsaid = await post('/request/jobs.open', over, { 'transfer-encoding': 'chunked' })
  expect(unsaid.status).toBe(413)
})

test('a merchant’s whole list may weigh 16 MB, where prices are looked at or applied and nowhere else', async () => {
  const list = `"${'x'.repeat(16 * 1024 * 1024 - 2)}"`
  for (const name of ['prices.preview', 'prices.apply']) {
    expect((await post(`/request/${name}`, list)).status).toBe(200)
    expect((await post(`/request/${name}`, `${list} `)).status).toBe(413)
  }
  for (const name of ['prices.undo', 'options.change', 'jobs.change'])
    expect((await post(`/request/${name}`, list)).status).toBe(413)
})

test('a photograph may weigh 2 MB with its small picture, and nothing in it is nested', async () => {
  const photograph = `"${'x'.repeat(2 * 1024 * 1024 - 2)}"`
  expect((await post('/request/photographs.add', photograph)).status).toBe(200)
  expect((await post('/request/photographs.add', `${photograph} `)).status).toBe(413)
  expect((await post('/request/photographs.add', '[[]]')).status).toBe(400)
  for (const name of ['photographs.describe', 'notes.add'])
    expect((await post(`/request/${name}`, photograph)).status).toBe(413)
})

test('a body nested 20 deep is read, 21 deep is refused', async () => {
  const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth)
  expect((await post('/request/jobs.open', nested(20))).status).toBe(200)
  expect((await post('/request/jobs.open', nested(21))).status).toBe(400)
  expect((await post('/request/jobs.open', nested(400_000))).status).toBe(400)
  expect((await post('/request/jobs.open', '"a \\" [[[[[[[[[[[[[[[[[[[[[[[[[[ text"')).status).toBe(200)
})

test('an order’s plan alone may go 400 deep, with its proof, and weigh more', async () => {
  const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth)
  expect((await post('/request/orders.place', nested(400))).status).toBe(200)
  expect((await post('/request/orders.place', nested(401))).status).toBe(400)
  expect((await post('/request/orders.task', nested(21))).status).toBe(400)
  const heavy = JSON.stringify({ plan: 'x'.repeat(2 * 1024 * 1024) })
  expect((await post('/request/orders.place', heavy)).status).toBe(200)
  expect((await post('/request/orders.task', heavy)).status).toBe(413)
})

test.each([
  ['nothing', ''],
  ['half of it', '{"id":'],
  ['two of it', '{}{}'],
  ['bytes that are no text', Buffer.from([0x22, 0xff, 0xfe, 0x22])],
])('a body that is %s is refused', async (_title, body) => {
  expect((await post('/request/jobs.open', body)).status).toBe(400)
})

test('a body that stays away is given up on', async () => {
  const before = asked.length
  const port = host().port
  const head = [
    'POST /request/jobs.open HTTP/1.1',
    `Host: 127.0.0.1:${port}`,
    `Origin: http://127.0.0.1:${port}`,
    `Cookie: ${running.cookie}`,
    'Content-Type: application/json',
    'Content-Length: 9',
  ]
  const reply = await rawCall(port, `${head.join('\r\n')}\r\n\r\n{"id"`)
  expect(reply).toMatch(/^HTTP\/1\.1 40[08] /)
  expect(asked).toHaveLength(before)
})

test('headers that stay away are given up on', async () => {
  expect(await rawCall(host().port, 'GET / HTTP/1.1\r\nHost: 127')).toMatch(/^(HTTP\/1\.1 408 |$)/)
})

test('an error nobody foresaw goes to the log and tells the page nothing', async () => {
  const reply = await post('/request/sample.remove', '{}')
  expect(reply.status).toBe(500)
  expect(reply.body).not.toContain('foresaw')
  expect(log.join('\n')).toContain('something nobody foresaw')
})

test('the host listens on 127.0.0.1 and nowhere else', async () => {
  const outside = call({ port: host().port, path: '/', headers: {} })
  expect((await outside).status).toBe(403)
  await expect(
    new Promise((done, fail) => {
      void import('node:net').then(({ connect }) =>
        connect(host().port, '127.0.0.2', () => done('open')).on('error', fail),
      )
    }),
  ).rejects.toThrow('ECONNREFUSED')
})
