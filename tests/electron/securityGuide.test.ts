import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { packagingFor } from '../../build/packaging.ts'
import { inProject } from '../../build/paths.ts'
import { appScheme } from '../../electron/appProtocol.ts'
import { menuFor } from '../../electron/menu.ts'
import { offlineSwitches, quietSession, stayOffline } from '../../electron/offline.ts'
import { guardPages, guardSession, mayLoad } from '../../electron/security.ts'
import { contentPolicy } from '../../electron/securityHeaders.ts'
import { windowOptions } from '../../electron/window.ts'
import { makeEvent, makeRecorder } from './recorder.ts'

/** Everything the shell is made of, as text. */
const sources = readdirSync(inProject('electron'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => ({ name, text: readFileSync(join(inProject('electron'), name), 'utf8') }))

const preferences = windowOptions('/program/preload.cjs').webPreferences ?? {}

const naming = (pattern: RegExp): string[] =>
  sources.filter(({ text }) => pattern.test(text)).map(({ name }) => name)

const guarded = () => {
  const app = makeRecorder()
  const contents = makeRecorder()
  guardPages(app.object)
  app.handler('on', 'web-contents-created')({}, contents.object)
  return contents
}

const guardedSession = () => {
  const webRequest = makeRecorder()
  const session = makeRecorder({ webRequest: webRequest.object })
  guardSession(session.object)
  return { session, webRequest }
}

/** The twenty points of Electron's own security guide ("Security", its checklist), in its order. */
describe('Electron’s security guide', () => {
  test('1, only secure content is loaded: our own scheme and papers, nothing by http', () => {
    for (const address of ['http://example.org/', 'ws://example.org/', 'ftp://example.org/'])
      expect(mayLoad(address)).toBe(false)
    expect(appScheme.privileges?.secure).toBe(true)
  })

  test('2, no page has Node', () => {
    expect(preferences).toMatchObject({
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
    })
    expect(naming(/nodeIntegration\w*: true/)).toEqual([])
  })

  test('3, every page is isolated from the preload', () => {
    expect(preferences.contextIsolation).toBe(true)
    expect(naming(/contextIsolation: false/)).toEqual([])
  })

  test('4, every process is sandboxed', () => {
    expect(preferences.sandbox).toBe(true)
    expect(naming(/sandbox: false|no-sandbox/)).toEqual([])
    expect(naming(/app\.enableSandbox\(\)/)).toEqual(['main.ts'])
  })

  test('5, permissions are answered, all of them with no', () => {
    const { session } = guardedSession()
    const answers: unknown[] = []
    session.handler('setPermissionRequestHandler')({}, 'media', (given: unknown) => answers.push(given))
    expect(answers).toEqual([false])
    expect(session.handler('setPermissionCheckHandler')({}, 'media')).toBe(false)
    expect(session.handler('setDevicePermissionHandler')({})).toBe(false)
  })

  test('6, the browser’s own rules of origin stand', () => {
    expect(preferences.webSecurity).toBe(true)
    expect(naming(/webSecurity: false|bypassCSP|corsEnabled/)).toEqual([])
  })

  test('7, a content policy names what may be loaded, beginning with nothing', () => {
    expect(contentPolicy).toMatch(/^default-src 'none'; script-src 'self'; /)
    expect(contentPolicy).not.toMatch(/unsafe|\*|https?:/)
  })

  test('8, no insecure content in a secure page', () => {
    expect(preferences.allowRunningInsecureContent).toBe(false)
  })

  test('9, none of Chromium’s trials', () => {
    expect(preferences.experimentalFeatures).toBe(false)
    expect(naming(/enable-features|experimentalFeatures: true/)).toEqual([])
  })

  test('10, no part of Blink is switched on by name', () => {
    expect(preferences).not.toHaveProperty('enableBlinkFeatures')
    expect(naming(/enableBlinkFeatures|enable-blink-features/)).toEqual([])
  })

  test('11, no foreign page inside a page, so none that may open windows', () => {
    expect(preferences.webviewTag).toBe(false)
    expect(naming(/allowpopups/)).toEqual([])
  })

  test('12, a foreign page that is put in all the same is refused before it is made', () => {
    const event = makeEvent()
    guarded().handler('on', 'will-attach-webview')(event, { preload: '/x' }, {})
    expect(event.prevented).toBe(true)
  })

  test('13, no page goes to another address', () => {
    const contents = guarded()
    for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate']) {
      const event = makeEvent({ url: 'https://example.org/' })
      contents.handler('on', name)(event, 'https://example.org/')
      expect(event.prevented, name).toBe(true)
    }
  })

  test('14, no page opens a window but for a paper', () => {
    const open = guarded().handler('setWindowOpenHandler')
    expect(open({ url: 'https://example.org/' })).toEqual({ action: 'deny' })
    expect(open({ url: 'app://bracework/' })).toEqual({ action: 'deny' })
  })

  test('15, nothing is ever given to another program to open', () => {
    expect(naming(/openExternal|openPath/)).toEqual([])
  })

  test('16, Electron is pinned to one version, the one that is installed', () => {
    const { devDependencies } = JSON.parse(readFileSync(inProject('package.json'), 'utf8'))
    const { version } = JSON.parse(readFileSync(inProject('node_modules/electron/package.json'), 'utf8'))
    expect(devDependencies.electron).toMatch(/^\d+\.\d+\.\d+$/)
    expect(version).toBe(devDependencies.electron)
    expect(Number(version.split('.')[0])).toBeGreaterThanOrEqual(45)
  })

  test('17, every request’s sender is looked at in the one place that listens', () => {
    expect(naming(/\bipcMain\.(handle|on|once|handleOnce)\(/)).toEqual(['ipc.ts'])
    const gate = sources.find(({ name }) => name === 'ipc.ts')?.text ?? ''
    expect(gate).toMatch(/if \(fault === undefined\) return answer\(name, payload\)/)
    expect(gate.match(/answer\(name, payload\)/g)).toHaveLength(1)
    expect(naming(/ipcRenderer/)).toEqual(['preload.ts'])
  })

  test('18, the screens come by a scheme of our own, never as files', () => {
    expect(naming(/loadFile\(|['"`]file:/)).toEqual([])
    expect(naming(/\.loadURL\(/).sort()).toEqual([
      'main.ts',
      'menuActions.ts',
      'printing/printPaper.ts',
      'revive.ts',
    ])
    expect(mayLoad('file:///etc/passwd')).toBe(false)
  })

  test('19, Electron’s switches are set, each of them by name', () => {
    expect(packagingFor('linux').electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    })
  })

  test('20, the page is given functions of its own and nothing of Electron’s', () => {
    const preload = sources.find(({ name }) => name === 'preload.ts')?.text ?? ''
    expect(preload.match(/exposeInMainWorld\(/g)).toHaveLength(1)
    expect(preload).not.toMatch(/exposeInMainWorld\([^)]*ipcRenderer/)
    expect(preload).not.toMatch(/\.(on|send|sendSync|postMessage)\(/)
  })
})

describe('beyond the guide', () => {
  test('the program is told to keep off the network before it is ready', () => {
    const given: [string, string | undefined][] = []
    stayOffline({
      commandLine: {
        appendSwitch: (name: string, value?: string) => void given.push([name, value]),
      } as never,
    })
    expect(given.map(([name]) => name)).toEqual(offlineSwitches.map(([name]) => name))
    expect(Object.fromEntries(given)).toMatchObject({ 'host-resolver-rules': 'MAP * ~NOTFOUND' })
    const main = sources.find(({ name }) => name === 'main.ts')?.text ?? ''
    expect(main.indexOf('stayOffline(app)')).toBeGreaterThan(0)
    expect(main.indexOf('stayOffline(app)')).toBeLessThan(main.indexOf('open().catch'))
  })

  test('no spelling is checked, so no word lists are fetched', () => {
    const session = makeRecorder()
    quietSession(session.object)
    expect(session.calls).toEqual([{ name: 'setSpellCheckerEnabled', args: [false] }])
    expect(preferences.spellcheck).toBe(false)
  })

  test('nothing in the shell fetches, updates itself, reports a crash or reaches another program’s objects', () => {
    expect(
      naming(/\bfetch\(|autoUpdater|crashReporter|@electron\/remote|net\.request|https\.(get|request)/),
    ).toEqual([])
  })

  test('no menu opens the tools of a programmer', () => {
    const actions = { go: () => {}, press: () => {}, copyDetails: () => {}, showFaultNotes: () => {} }
    for (const platform of ['darwin', 'win32', 'linux'] as const)
      expect(JSON.stringify(menuFor(platform, actions))).not.toMatch(/dev-?tools/i)
    expect(naming(/openDevTools/)).toEqual([])
  })
})
