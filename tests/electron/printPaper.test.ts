import { expect, test } from 'vitest'
import { pageSizeOf, paperWindowOptions, printPaperWith } from '../../electron/printing/printPaper.ts'
import { makeRecorder } from './recorder.ts'

const mark = '0f'.repeat(32)
const a4 = { sha256: mark, copies: 2, width: 210.0001, height: 297 }

/** A window that notes what is done with it, and a printer that ends as told. */
function printer(success: boolean, reason = '') {
  const contents = makeRecorder({
    print: (options: unknown, ended: (success: boolean, reason: string) => void) => {
      contents.calls.push({ name: 'print', args: [options] })
      ended(success, reason)
    },
  })
  const window = makeRecorder({ webContents: contents.object })
  const made: unknown[] = []
  class Window {
    constructor(options: unknown) {
      made.push(options)
      return window.object
    }
  }
  return { contents, window, made, print: printPaperWith(Window as never, 1) }
}

test('a paper prints at actual size to the sheet’s edge, in the copies asked for, from its own bytes', async () => {
  const { contents, window, made, print } = printer(true)
  expect(await print(a4)).toEqual({ ended: 'printed' })
  expect(made).toEqual([paperWindowOptions])
  expect(window.calls[0]).toEqual({ name: 'loadURL', args: [`app://bracework/paper/${mark}.pdf`] })
  expect(contents.calls).toEqual([
    {
      name: 'print',
      args: [
        {
          silent: false,
          printBackground: true,
          margins: { marginType: 'none' },
          scaleFactor: 100,
          pagesPerSheet: 1,
          collate: true,
          copies: 2,
          pageSize: 'A4',
        },
      ],
    },
  ])
  expect(window.calls.at(-1)?.name).toBe('destroy')
})

test('the window that holds it is hidden, isolated, sandboxed, and has no preload', () => {
  expect(paperWindowOptions.show).toBe(false)
  expect(paperWindowOptions.webPreferences).toMatchObject({
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    webviewTag: false,
    spellcheck: false,
  })
  expect(paperWindowOptions.webPreferences).not.toHaveProperty('preload')
})

test('each sheet goes by its name, and a roll of labels by its size in thousandths of a millimetre', () => {
  expect(pageSizeOf({ width: 210, height: 297 })).toBe('A4')
  expect(pageSizeOf({ width: 215.9, height: 279.4 })).toBe('Letter')
  expect(pageSizeOf({ width: 62, height: 37.5 })).toEqual({ width: 62_000, height: 37_500 })
})

test('a person who leaves the print window has left it; a printer that fails is told; the window is gone either way', async () => {
  const left = printer(false, 'Print job canceled')
  expect(await left.print(a4)).toEqual({ ended: 'left' })
  const failed = printer(false, 'Invalid printer settings')
  expect(await failed.print(a4)).toEqual({ ended: 'failed', said: 'Invalid printer settings' })
  for (const { window } of [left, failed]) expect(window.calls.at(-1)?.name).toBe('destroy')
})
