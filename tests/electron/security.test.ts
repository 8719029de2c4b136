import { expect, test } from 'vitest'
import { guardPages, guardSession, mayLoad } from '../../electron/security.ts'
import { makeEvent, makeRecorder } from './recorder.ts'

const guardedSession = () => {
  const webRequest = makeRecorder()
  const session = makeRecorder({ webRequest: webRequest.object })
  guardSession(session.object)
  return { session, webRequest }
}

const guardedPage = () => {
  const app = makeRecorder()
  const contents = makeRecorder()
  guardPages(app.object)
  app.handler('on', 'web-contents-created')({}, contents.object)
  return contents
}

test.each([
  'media',
  'geolocation',
  'notifications',
  'clipboard-read',
  'fullscreen',
  'openExternal',
  'fileSystem',
])('the permission %s is denied when it is asked for and when it is checked', (permission) => {
  const { session } = guardedSession()
  const answers: unknown[] = []
  session.handler('setPermissionRequestHandler')({}, permission, (answer: unknown) => answers.push(answer))
  expect(answers).toEqual([false])
  expect(session.handler('setPermissionCheckHandler')({}, permission)).toBe(false)
})

test('no device and no picture of the screen is given away', () => {
  const { session } = guardedSession()
  expect(session.handler('setDevicePermissionHandler')({ deviceType: 'usb' })).toBe(false)
  expect(session.calls.map(({ name }) => name)).not.toContain('setDisplayMediaRequestHandler')
})

const ownAddresses = [
  'app://bracework/',
  'app://bracework/assets/index.js',
  'blob:app://bracework/0b0c1ad2-7d6f-4c3c-9f0e-2f1f6f0b6a55',
  'chrome-extension://mhjfbmdgcfjbbpaeojofohoefgiehjai/index.html',
]

const foreignAddresses = [
  'https://example.org/',
  'http://127.0.0.1:8080/',
  'ws://example.org/',
  'ftp://example.org/',
  'file:///etc/passwd',
  'app://elsewhere/',
  'app://bracework.example.org/',
  'app://bracework:81/',
  'app://user@elsewhere/',
  'blob:https://example.org/0b0c1ad2',
  'chrome-extension://aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa/index.html',
  'javascript:alert(1)',
  'about:blank',
  '',
]

test.each(ownAddresses)('the window may load %s', (url) => {
  const { webRequest } = guardedSession()
  const answers: unknown[] = []
  webRequest.handler('onBeforeRequest')({ url }, (answer: unknown) => answers.push(answer))
  expect(answers).toEqual([{ cancel: false }])
})

test.each(foreignAddresses)('the window may not load "%s"', (url) => {
  const { webRequest } = guardedSession()
  const answers: unknown[] = []
  webRequest.handler('onBeforeRequest')({ url }, (answer: unknown) => answers.push(answer))
  expect(answers).toEqual([{ cancel: true }])
  expect(mayLoad(url)).toBe(false)
})

test.each(foreignAddresses)(
  'no page goes to "%s", in itself or in a frame, or opens a window there',
  (url) => {
    const contents = guardedPage()
    for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate']) {
      const event = makeEvent({ url })
      contents.handler('on', name)(event, url)
      expect(event.prevented, name).toBe(true)
    }
    expect(contents.handler('setWindowOpenHandler')({ url })).toEqual({ action: 'deny' })
  },
)

test('no page leaves even for another page of ours, and none holds a foreign page', () => {
  const contents = guardedPage()
  for (const name of ['will-navigate', 'will-attach-webview']) {
    const event = makeEvent({ url: 'app://bracework/index.html' })
    contents.handler('on', name)(event, 'app://bracework/index.html')
    expect(event.prevented, name).toBe(true)
  }
  expect(contents.handler('setWindowOpenHandler')({ url: 'app://bracework/' })).toEqual({ action: 'deny' })
})

test('a frame may show a paper, and a paper may have a window of its own without the bridge', () => {
  const contents = guardedPage()
  const url = 'blob:app://bracework/0b0c1ad2-7d6f-4c3c-9f0e-2f1f6f0b6a55'
  const event = makeEvent({ url })
  contents.handler('on', 'will-frame-navigate')(event, url)
  expect(event.prevented).toBe(false)
  const opened = contents.handler('setWindowOpenHandler')({ url })
  expect(opened).toMatchObject({
    action: 'allow',
    overrideBrowserWindowOptions: {
      webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, webSecurity: true },
    },
  })
  expect(JSON.stringify(opened)).not.toContain('preload')
})

test('only a paper may be downloaded', () => {
  const { session } = guardedSession()
  const attempts = [
    ['blob:app://bracework/0b0c1ad2', false],
    ['https://example.org/gate.exe', true],
  ] as const
  for (const [url, prevented] of attempts) {
    const event = makeEvent()
    session.handler('on', 'will-download')(event, { getURL: () => url })
    expect(event.prevented).toBe(prevented)
  }
})
