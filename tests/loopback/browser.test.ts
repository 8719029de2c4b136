import { createServer, type Server } from 'node:http'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Browser, type BrowserContext, type Page } from '@playwright/test'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { chromiumPath } from '../../build/machine.ts'
import { startHost, type Host } from '../../electron/loopback/host.ts'

const screens = mkdtempSync(join(tmpdir(), 'bracework-screens-'))
const asked: string[] = []

/** A page of another site, on this machine, that knows the port and lies in the browser that has the cookie. */
const strangerPage = '<!doctype html><title>stranger</title><body>elsewhere</body>'

type Scene = { host: Host; stranger: Server; browser: Browser; context: BrowserContext; page: Page }
const scene: Partial<Scene> = {}

const part = <K extends keyof Scene>(name: K): Scene[K] => {
  const found = scene[name]
  if (found === undefined) throw new Error(`there is no ${name} yet`)
  return found as Scene[K]
}

const own = (path: string): string => `http://127.0.0.1:${part('host').port}${path}`
const strangerPort = (): number => (part('stranger').address() as AddressInfo).port

beforeAll(async () => {
  writeFileSync(
    join(screens, 'index.html'),
    '<!doctype html><title>Bracework</title><script src="./own.js"></script>',
  )
  writeFileSync(join(screens, 'own.js'), 'document.title = "Bracework, open"')
  scene.host = await startHost({
    rendererFolder: screens,
    log: () => undefined,
    answer: async (name) => {
      asked.push(name)
      return { ok: true, value: 'the book' }
    },
  })
  const stranger = createServer((_request, response) => {
    response.setHeader('Content-Type', 'text/html')
    response.end(strangerPage)
  })
  await new Promise<void>((done) => stranger.listen(0, '127.0.0.1', done))
  scene.stranger = stranger
  scene.browser = await chromium.launch({
    executablePath: chromiumPath() ?? '',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--host-resolver-rules=MAP gates.example 127.0.0.1',
    ],
  })
  scene.context = await scene.browser.newContext()
  scene.page = await scene.context.newPage()
  await scene.page.goto(part('host').newAddress())
})

afterAll(async () => {
  await scene.browser?.close()
  await scene.host?.close()
  scene.stranger?.close()
  rmSync(screens, { recursive: true })
})

beforeEach(() => void asked.splice(0))

/** Opens the stranger's page under one of its names and runs its attack there. */
const asStranger = async (origin: string, attack: (target: string) => Promise<string>): Promise<string> => {
  const page = await part('context').newPage()
  await page.goto(origin)
  const outcome = await page.evaluate(attack, own(''))
  await page.close()
  return outcome
}

const otherPort = (): string => `http://127.0.0.1:${strangerPort()}/`
const otherSite = (): string => `http://gates.example:${strangerPort()}/`

test('the page that came in by the address asks and is answered', async () => {
  const answer = await part('page').evaluate(async () => {
    const headers = { 'content-type': 'application/json' }
    return (await fetch('/request/book.summary', { method: 'POST', headers, body: '{}' })).json()
  })
  expect(answer).toEqual({ ok: true, value: 'the book' })
  expect(asked).toEqual(['book.summary'])
  expect(await part('page').title()).toBe('Bracework, open')
})

test('no script of the page can read the cookie', async () => {
  expect(await part('page').evaluate(() => document.cookie)).toBe('')
})

const attacks: readonly (readonly [title: string, attack: (target: string) => Promise<string>])[] = [
  [
    'an ordinary request with its cookies',
    async (target) => {
      const headers = { 'content-type': 'application/json' }
      const options = { method: 'POST', headers, body: '{}', credentials: 'include' } as const
      return fetch(`${target}/request/sample.remove`, options).then(
        (reply) => reply.text(),
        () => 'refused',
      )
    },
  ],
  [
    'a request whose answer it may not read',
    async (target) => {
      const options = { method: 'POST', body: '{}', mode: 'no-cors', credentials: 'include' } as const
      return fetch(`${target}/request/sample.remove`, options).then(
        (reply) => (reply.type === 'opaque' ? 'refused' : reply.text()),
        () => 'refused',
      )
    },
  ],
  [
    'a parting message',
    async (target) => {
      navigator.sendBeacon(`${target}/request/sample.remove`, new Blob(['{}'], { type: 'text/plain' }))
      await new Promise((done) => setTimeout(done, 300))
      return 'refused'
    },
  ],
  [
    'a form that posts itself in a frame',
    async (target) => {
      document.body.innerHTML = `<iframe name="f"></iframe><form target="f" method="post" enctype="text/plain"
        action="${target}/request/sample.remove"><input name='{"a":"' value='"}'></form>`
      document.querySelector('form')?.submit()
      await new Promise((done) => setTimeout(done, 500))
      return 'refused'
    },
  ],
  [
    'a frame of our page',
    async (target) => {
      const frame = document.createElement('iframe')
      frame.src = `${target}/`
      document.body.append(frame)
      await new Promise((done) => (frame.onload = done))
      try {
        return frame.contentDocument?.title ?? 'refused'
      } catch {
        return 'refused'
      }
    },
  ],
  [
    'our script in its own page',
    async (target) => {
      const script = document.createElement('script')
      script.src = `${target}/own.js`
      document.head.append(script)
      await new Promise((done) => (script.onload = script.onerror = done))
      return document.title === 'stranger' ? 'refused' : document.title
    },
  ],
]

test.each(attacks)('a page on another port gets nothing by %s', async (_title, attack) => {
  expect(await asStranger(otherPort(), attack)).toBe('refused')
  expect(asked).toEqual([])
})

test.each(attacks)('a page of another site gets nothing by %s', async (_title, attack) => {
  expect(await asStranger(otherSite(), attack)).toBe('refused')
  expect(asked).toEqual([])
})

test('a host name that is turned to this machine reaches nothing', async () => {
  const page = await part('context').newPage()
  const reply = await page.goto(`http://gates.example:${part('host').port}/`)
  expect(reply?.status()).toBe(421)
  const answer = await page.evaluate(async () => {
    const headers = { 'content-type': 'application/json' }
    return (await fetch('/request/sample.remove', { method: 'POST', headers, body: '{}' })).status
  })
  expect(answer).toBe(421)
  expect(asked).toEqual([])
  await page.close()
})

test('a used address opens nothing in another browser, and a second window of the first is let in', async () => {
  const address = part('host').newAddress()
  const second = await part('context').newPage()
  await second.goto(address)
  expect(await second.title()).toBe('Bracework, open')
  const fresh = part('host').newAddress()
  const other = await part('browser').newContext()
  const page = await other.newPage()
  expect((await page.goto(fresh))?.status()).toBe(200)
  const third = await part('browser').newContext()
  const late = await third.newPage()
  expect((await late.goto(fresh))?.status()).toBe(403)
  expect(await late.textContent('h1')).toBe('The book is shut here')
  await Promise.all([second.close(), other.close(), third.close()])
})
