import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { watchItem, watchKeeping } from '../../electron/unkept.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'

type Done = (event: object, state: string) => void

/** A file on its way to a folder: so many bytes of it have come. */
function onItsWay({ path, received, total }: { path: string; received: number; total: number }) {
  const told: string[] = []
  const heard: Done[] = []
  const item = {
    getSavePath: () => path,
    getReceivedBytes: () => received,
    getTotalBytes: () => total,
    getFilename: () => 'care note.pdf',
    once: (_name: string, listener: Done) => void heard.push(listener),
  }
  const telling = { tell: (sentence: string) => void told.push(sentence), log: () => {} }
  return {
    item: item as never,
    told,
    telling,
    end: (state: string) => heard.forEach((one) => one({}, state)),
  }
}

test('a file that broke off is cleared away and told with its drive', () => {
  const path = join(temporaryFolder(), 'care note.pdf')
  for (const [received, words] of [
    [0, ''],
    [7, '%PDF-1.'],
  ] as const) {
    writeFileSync(path, words)
    const { item, told, telling, end } = onItsWay({ path, received, total: 9000 })
    watchKeeping(
      { on: (_name: string, take: (event: object, item: never) => void) => take({}, item) } as never,
      telling,
    )
    end('interrupted')
    expect(existsSync(path)).toBe(false)
    expect(told).toEqual([
      '“care note.pdf” couldn’t be written on this computer’s disk, so it wasn’t kept. Check the drive, or keep it somewhere else.',
    ])
  }
})

test('one for which there is no room is told so', () => {
  const path = join(temporaryFolder(), 'care note.pdf')
  const { item, told, telling, end } = onItsWay({ path, received: 0, total: 1e18 })
  watchItem(item, telling)
  end('interrupted')
  expect(told).toEqual([
    'There is no room left on this computer’s disk, so “care note.pdf” wasn’t kept. Make room, or keep it somewhere else.',
  ])
})

test('an older file that lies there whole stays, and one that was kept or put away is no matter', () => {
  const path = join(temporaryFolder(), 'care note.pdf')
  writeFileSync(path, 'an older paper')
  for (const [state, sentences] of [
    ['interrupted', 1],
    ['completed', 0],
    ['cancelled', 0],
  ] as const) {
    const { item, told, telling, end } = onItsWay({ path, received: 5, total: 9000 })
    watchItem(item, telling)
    end(state)
    expect(told).toHaveLength(sentences)
    expect(readFileSync(path, 'utf8')).toBe('an older paper')
  }
})
