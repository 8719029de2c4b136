import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { inProject } from '../../build/paths.ts'
import { call } from '../loopback/caller.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-start-'))

afterAll(() => rmSync(folder, { recursive: true, force: true }))

const withoutScreen = (): NodeJS.ProcessEnv => {
  const { DISPLAY: _display, WAYLAND_DISPLAY: _wayland, ...env } = process.env
  return { ...env, BRACEWORK_BOOK: join(folder, 'first.book') }
}

test('on a machine without a screen, the start says so in one line, makes the book, gives an address and stops when told', async () => {
  const child = spawn(process.execPath, [inProject('build/start.ts')], { env: withoutScreen() })
  const said = { out: '' }
  const ended = new Promise<number | null>((done) => child.once('exit', done))
  const address = await new Promise<string>((done, fail) => {
    child.stdout.on('data', (chunk) => {
      said.out += String(chunk)
      const found = /Bracework is open at (\S+)/.exec(said.out)
      if (found?.[1]) done(found[1])
    })
    void ended.then(() => fail(new Error(said.out)))
  })
  const lines = said.out.trim().split('\n')
  expect(lines.at(-2)).toBe('No screen for a window here, so Bracework opens in a browser.')
  expect(existsSync(join(folder, 'first.book'))).toBe(true)
  const { port, pathname } = new URL(address)
  expect((await call({ port: Number(port), path: pathname })).status).toBe(303)
  child.kill('SIGTERM')
  expect(await ended).toBe(0)
  await expect(call({ port: Number(port), path: '/' })).rejects.toThrow('ECONNREFUSED')
})
