import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { electronBinary } from '../../build/electronBinary.ts'
import { bundleIsStale } from '../../build/newest.ts'
import { chooseStart, type Machine } from '../../build/startChoice.ts'
import { nodeFault } from '../../build/machine.ts'
import { browserCommand } from '../../electron/loopback/openBrowser.ts'

const laptop: Machine = { platform: 'linux', env: { DISPLAY: ':0' }, napi: 10, electron: '/electron' }

test('with a screen and Electron the window opens', () => {
  expect(chooseStart(laptop, true)).toEqual({ show: 'window', electron: '/electron' })
  expect(chooseStart({ ...laptop, env: { WAYLAND_DISPLAY: 'wayland-0' } }, true).show).toBe('window')
  expect(chooseStart({ ...laptop, platform: 'darwin', env: {} }, true).show).toBe('window')
  expect(chooseStart({ ...laptop, platform: 'win32', env: {} }, true).show).toBe('window')
})

test('with a screen but no Electron it is fetched once, then the browser is used', () => {
  const without = { ...laptop, electron: undefined }
  expect(chooseStart(without, true).show).toBe('fetch')
  expect(chooseStart(without, false).show).toBe('browser')
})

test('without a screen nothing is fetched and the browser is used, Electron or not', () => {
  expect(chooseStart({ ...laptop, env: {} }, true).show).toBe('browser')
  expect(chooseStart({ ...laptop, env: {}, electron: undefined }, true).show).toBe('browser')
})

test('an older Node is refused before anything else, with what to do', () => {
  const choice = chooseStart({ ...laptop, napi: 9 }, true)
  expect(choice).toMatchObject({ show: 'refuse' })
  expect('say' in choice && choice.say).toContain('npm install')
  expect(nodeFault(9)).toContain('Node 22.14')
  expect(nodeFault(10)).toBeUndefined()
})

test('what is said on the way is one line', () => {
  for (const machine of [
    laptop,
    { ...laptop, env: {} },
    { ...laptop, napi: 8 },
    { ...laptop, electron: undefined },
  ]) {
    for (const mayFetch of [true, false]) {
      const choice = chooseStart(machine, mayFetch)
      if ('say' in choice) expect(choice.say).not.toContain('\n')
    }
  }
})

test('a half-fetched Electron counts as none', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-electron-'))
  expect(electronBinary(folder)).toBeUndefined()
  writeFileSync(join(folder, 'path.txt'), 'electron\n')
  expect(electronBinary(folder)).toBeUndefined()
  mkdirSync(join(folder, 'dist'))
  writeFileSync(join(folder, 'dist', 'electron'), '')
  expect(electronBinary(folder)).toBe(join(folder, 'dist', 'electron'))
  rmSync(folder, { recursive: true })
})

test('the bundle is built again when it is missing or a source is newer, and only then', () => {
  expect(bundleIsStale(0, 1700)).toBe(true)
  expect(bundleIsStale(1700, 1800)).toBe(true)
  expect(bundleIsStale(1800, 1700)).toBe(false)
})

test('a browser is opened only where there is a screen', () => {
  expect(browserCommand('linux', {})).toBeUndefined()
  expect(browserCommand('linux', { DISPLAY: ':0' })).toEqual(['xdg-open'])
  expect(browserCommand('darwin', {})).toEqual(['open'])
  expect(browserCommand('win32', {})?.[0]).toBe('cmd')
})
