import { expect, test } from 'vitest'
import { makeWindow, showWindow, windowOptions } from '../../electron/window.ts'
import { makeEvent, makeRecorder } from './recorder.ts'

test('the window is isolated, sandboxed and without Node, and loads nothing but its own preload', () => {
  const preferences = windowOptions('/program/preload.cjs').webPreferences
  expect(preferences).toMatchObject({
    preload: '/program/preload.cjs',
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    spellcheck: false,
  })
  expect(preferences).not.toHaveProperty('enableBlinkFeatures')
  expect(preferences).not.toHaveProperty('devTools')
})

test('the window has a name, a least size, and is shown only once its first picture is ready', () => {
  const options = windowOptions('/program/preload.cjs')
  expect(options.title).toBe('Bracework')
  expect(options.show).toBe(false)
  expect([options.minWidth, options.minHeight]).toEqual([900, 560])
  const recorder = makeRecorder()
  class Window {
    constructor() {
      return recorder.object
    }
  }
  makeWindow(Window as never, '/program/preload.cjs')
  expect(recorder.calls.map(({ name }) => name)).not.toContain('show')
  recorder.handler('once', 'ready-to-show')()
  expect(recorder.calls.map(({ name }) => name)).toContain('show')
})

test('a page can’t rename the window', () => {
  const recorder = makeRecorder()
  class Window {
    constructor() {
      return recorder.object
    }
  }
  makeWindow(Window as never, '/program/preload.cjs')
  const event = makeEvent()
  recorder.handler('on', 'page-title-updated')(event, 'Something else')
  expect(event.prevented).toBe(true)
})

test('a window that was put away comes back to the front', () => {
  const recorder = makeRecorder({ isMinimized: () => true })
  showWindow(recorder.object)
  expect(recorder.calls.map(({ name }) => name)).toEqual(['restore', 'show', 'focus'])
})
