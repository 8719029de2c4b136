import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { holdBook } from '../../electron/bookLock.ts'
import { bookPlace } from '../../electron/bookPlace.ts'

test.each([
  ['linux', {}, '/home/shop', '/home/shop/.local/share/Bracework/bracework.book'],
  ['linux', { XDG_DATA_HOME: '/kept' }, '/home/shop', '/kept/Bracework/bracework.book'],
  ['linux', { XDG_DATA_HOME: 'not/whole' }, '/home/shop', '/home/shop/.local/share/Bracework/bracework.book'],
  ['darwin', {}, '/Users/shop', '/Users/shop/Library/Application Support/Bracework/bracework.book'],
  ['win32', { APPDATA: 'C:\\Shop\\Roaming' }, 'C:\\Shop', 'C:\\Shop\\Roaming\\Bracework\\bracework.book'],
  ['win32', {}, 'C:\\Shop', 'C:\\Shop\\AppData\\Roaming\\Bracework\\bracework.book'],
  ['linux', { BRACEWORK_BOOK: '/stick/other.book' }, '/home/shop', '/stick/other.book'],
] as const)('on %s with %j and home %s the book lies at %s', (platform, env, home, place) => {
  expect(bookPlace({ platform, env, home })).toBe(place)
})

test.each(['linux', 'darwin'] as const)(
  'a book can be held once at a time (the way of %s), and again once it is let go',
  async (platform) => {
    const folder = mkdtempSync(join(tmpdir(), 'bracework-lock-'))
    const book = join(folder, 'one.book')
    writeFileSync(book, '')
    symlinkSync(book, join(folder, 'same.book'))
    const held = await holdBook(book, platform)
    expect(held).toBeDefined()
    expect(await holdBook(book, platform)).toBeUndefined()
    expect(await holdBook(join(folder, 'same.book'), platform)).toBeUndefined()
    const other = await holdBook(join(folder, 'other.book'), platform)
    expect(other).toBeDefined()
    await other?.release()
    await held?.release()
    const again = await holdBook(book, platform)
    expect(again).toBeDefined()
    await again?.release()
    rmSync(folder, { recursive: true })
  },
)
