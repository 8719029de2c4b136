import { expect, test } from 'vitest'
import { listenForRequests } from '../../electron/ipc.ts'
import { requestNames } from '../../shared/contract.ts'
import { carriedNames } from '../../shared/requestNames.ts'
import { makeRecorder } from './recorder.ts'

const windowId = 41

const listening = () => {
  const ipcMain = makeRecorder()
  const asked: unknown[] = []
  const log: string[] = []
  listenForRequests({
    ipcMain: ipcMain.object,
    windowId: () => windowId,
    log: (line) => void log.push(line),
    answer: async (name, payload) => {
      asked.push([name, payload])
      return { ok: true, value: 1310 }
    },
  })
  return { ipcMain, asked, log }
}

const frame = (url: string, parent: unknown = null) => ({ url, parent })
const from = (senderFrame: unknown, id = windowId) => ({ senderFrame, sender: { id } })

test('each request of the contract is listened for exactly once, and nothing else is', () => {
  const { ipcMain } = listening()
  const names = ipcMain.calls.map(({ name, args }) => [name, args[0]])
  expect(names).toEqual(requestNames.map((name) => ['handle', name]))
  expect(new Set(requestNames).size).toBe(requestNames.length)
})

test('the bridge carries the contract’s names, all of them and in its order', () => {
  expect(carriedNames).toEqual(requestNames)
})

test('our own page is answered with what the program says', async () => {
  const { ipcMain, asked } = listening()
  const event = from(frame('app://bracework/index.html'))
  expect(await ipcMain.handler('handle', 'jobs.open')(event, { id: 7 })).toEqual({ ok: true, value: 1310 })
  expect(asked).toEqual([['jobs.open', { id: 7 }]])
})

test.each([
  ['a page of another address', from(frame('https://example.org/'))],
  ['a page of another host of the scheme', from(frame('app://elsewhere/'))],
  ['a page whose address only begins like ours', from(frame('app://bracework.example.org/'))],
  ['a paper’s own page', from(frame('blob:app://bracework/0b0c1ad2'))],
  ['a frame inside our page', from(frame('app://bracework/', frame('app://bracework/')))],
  ['another window', from(frame('app://bracework/'), 42)],
  ['a frame that is gone', from(null)],
  ['a page without an address', from(frame(''))],
])('%s is refused and never answered', async (_title, event) => {
  const { ipcMain, asked, log } = listening()
  for (const name of requestNames) {
    const answer = await ipcMain.handler('handle', name)(event, { id: 7 })
    expect(answer).toMatchObject({ ok: false, problems: [{ code: 'refused' }] })
  }
  expect(asked).toEqual([])
  expect(log).toHaveLength(requestNames.length)
})
