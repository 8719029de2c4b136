import { createServer, type Server } from 'node:http'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, BrowserContext, Page } from '@playwright/test'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { fontFiles } from '../../build/copyAssets.ts'
import { inProject } from '../../build/paths.ts'
import { startHost, type Host } from '../../electron/loopback/host.ts'
import { browserAttacks } from './browserAttacks.ts'
import { foreignLoads } from './foreignLoads.ts'
import { startChromium } from '../../build/chromium.ts'

const screens = mkdtempSync(join(tmpdir(), 'bracework-screens-'))
const asked: string[] = []
/** Everything that was ever asked, so that an attack that comes late is seen too. */
const everAsked: string[] = []

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
  writeFileSync(join(screens, 'icon.svg'), readFileSync(inProject('build/icons/icon.svg')))
  writeFileSync(join(screens, 'letters.ttf'), readFileSync(inProject(`node_modules/${fontFiles[0]}`)))
  writeFileSync(join(screens, 'own.js'), 'document.title = "Bracework, open"')
  scene.host = await startHost({
    rendererFolder: screens,
    log: () => undefined,
    answer: async (name) => {
      asked.push(name)
      everAsked.push(name)
      return { ok: true, value: 'the book' }
    },
  })
  const stranger = createServer((_request, response) => {
    response.setHeader('Content-Type', 'text/html')
    response.end(strangerPage)
  })
  await new Promise<void>((done) => stranger.listen(0, '127.0.0.1', done))
  scene.stranger = stranger
  scene.browser = await startChromium(['--host-resolver-rules=MAP gates.example 127.0.0.1'])
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
afterEach(async () => {
  expect(await part('page').title()).toBe('Bracework, open')
})

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

test.each([...browserAttacks, ...foreignLoads])(
  'a page on another port gets nothing by %s',
  async (_title, attack) => {
    expect(await asStranger(otherPort(), attack)).toBe('refused')
    expect(asked).toEqual([])
  },
)

test.each([...browserAttacks, ...foreignLoads])(
  'a page of another site gets nothing by %s',
  async (_title, attack) => {
    expect(await asStranger(otherSite(), attack)).toBe('refused')
    expect(asked).toEqual([])
  },
)

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

test('a page on another port that leaves cookies of the same name doesn’t lock ours out', async () => {
  const { port } = part('host')
  const page = await part('context').newPage()
  await page.goto(otherPort())
  const left = await page.evaluate((name) => {
    document.cookie = `${name}=forged`
    document.cookie = `${name}=forged; path=/request`
    document.cookie = `${name}=forged; path=/request/book.summary`
    return document.cookie
  }, `bracework-${port}`)
  expect(left).not.toContain('forged')
  const answer = await part('page').evaluate(async () => {
    const headers = { 'content-type': 'application/json' }
    return (await fetch('/request/book.summary', { method: 'POST', headers, body: '{}' })).json()
  })
  expect(answer).toEqual({ ok: true, value: 'the book' })
  await page.close()
})

test('after all of it the page that came in first is still answered, and it alone', async () => {
  const answer = await part('page').evaluate(async () => {
    const headers = { 'content-type': 'application/json' }
    return (await fetch('/request/book.summary', { method: 'POST', headers, body: '{}' })).json()
  })
  expect(answer).toEqual({ ok: true, value: 'the book' })
  expect(new Set(everAsked)).toEqual(new Set(['book.summary']))
  const count = browserAttacks.length + foreignLoads.length
  expect(count).toBeGreaterThanOrEqual(25)
  process.stdout.write(`the browser: ${count} attacks from two places each, and 3 more, all refused\n`)
})
