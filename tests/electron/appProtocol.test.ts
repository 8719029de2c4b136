import { mkdtempSync, rmSync, symlinkSync, writeFileSync, mkdirSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { answerApp, appScheme, serveApp } from '../../electron/appProtocol.ts'
import { contentPolicy } from '../../electron/securityHeaders.ts'
import { makeRecorder } from './recorder.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-app-'))
const screens = join(folder, 'renderer')

beforeAll(() => {
  mkdirSync(join(screens, 'assets'), { recursive: true })
  mkdirSync(join(folder, 'main'))
  writeFileSync(join(screens, 'index.html'), '<!doctype html><title>Bracework</title>')
  writeFileSync(join(screens, 'assets', 'screen.css'), 'body { margin: 0 }')
  writeFileSync(join(folder, 'main', 'secret.js'), 'not the screens')
  symlinkSync(join(folder, 'main'), join(screens, 'linked'))
})

afterAll(() => rmSync(folder, { recursive: true }))

const mark = 'ab'.repeat(32)
const paper = new TextEncoder().encode('%PDF-1.7 a paper of the shelf')
const served = {
  rendererFolder: screens,
  paperOf: (sha256: string) => (sha256 === mark ? { bytes: paper } : undefined),
}

const answer = (url: string, method = 'GET') => answerApp(new Request(url, { method }), served)

test('the screens come with the content policy, at the scheme’s own address', async () => {
  const page = await answer('app://bracework/')
  expect(page.status).toBe(200)
  expect(page.headers.get('content-type')).toBe('text/html; charset=utf-8')
  expect(page.headers.get('content-security-policy')).toBe(contentPolicy)
  expect(await page.text()).toContain('<title>Bracework</title>')
  expect((await answer('app://bracework/assets/screen.css')).headers.get('content-type')).toBe(
    'text/css; charset=utf-8',
  )
})

test.each([
  'app://bracework/../main/secret.js',
  'app://bracework/%2e%2e/main/secret.js',
  'app://bracework/..%2fmain%2fsecret.js',
  'app://bracework/..%5cmain%5csecret.js',
  'app://bracework/linked/secret.js',
  'app://bracework/%00index.html',
  'app://bracework/missing.js',
])('nothing outside the screens is given for %s', async (url) => {
  const reply = await answer(url)
  expect(reply.status).toBe(404)
  expect(await reply.text()).toBe('')
})

test('a paper shown lately comes by its mark, for the built-in viewer and never in a frame; no other does', async () => {
  const reply = await answer(`app://bracework/paper/${mark}.pdf`)
  expect(reply.status).toBe(200)
  expect(reply.headers.get('content-type')).toBe('application/pdf')
  expect(reply.headers.get('x-frame-options')).toBe('DENY')
  expect(reply.headers.get('cache-control')).toBe('no-store')
  expect(new Uint8Array(await reply.arrayBuffer())).toEqual(paper)
  expect((await answer(`app://bracework/paper/${'cd'.repeat(32)}.pdf`)).status).toBe(404)
  expect((await answer(`app://bracework/paper/${mark.toUpperCase()}.pdf`)).status).toBe(404)
  expect((await answer(`app://elsewhere/paper/${mark}.pdf`)).status).toBe(403)
})

test('another host of the scheme and any other method are refused, under the same policy', async () => {
  expect((await answer('app://elsewhere/index.html')).status).toBe(403)
  const posted = await answer('app://bracework/', 'POST')
  expect(posted.status).toBe(405)
  expect(posted.headers.get('content-security-policy')).toBe(contentPolicy)
})

test('the policy lets in nothing inline, nothing from elsewhere, and blob: only for a paper and a picture', () => {
  const parts = new Map(
    contentPolicy.split('; ').map((part) => [part.split(' ')[0] ?? '', part.split(' ').slice(1).join(' ')]),
  )
  expect(parts.get('default-src')).toBe("'none'")
  expect(parts.get('script-src')).toBe("'self'")
  expect(parts.get('style-src')).toBe("'self'")
  expect(parts.get('connect-src')).toBe("'self'")
  expect(parts.get('frame-ancestors')).toBe("'none'")
  expect(contentPolicy).not.toMatch(/unsafe|\*|https?:|data:/)
})

test('the scheme is handled once, and has an origin without leave to reach others', () => {
  const protocol = makeRecorder()
  serveApp(protocol.object, served)
  expect(protocol.calls.map(({ name, args }) => [name, args[0]])).toEqual([['handle', 'app']])
  expect(appScheme).toEqual({
    scheme: 'app',
    privileges: { standard: true, secure: true, supportFetchAPI: true },
  })
})
