import { mkdirSync, readdirSync } from 'node:fs'
import { join, resolve, sep } from 'node:path'
import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { isSafePlace, safeName } from '../../shared/openBook/safeName.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'
import { seed } from '../fixtures/sample.ts'
import { opened, wanted } from '../handlers/opened.ts'
import { broughtIn, filesIn, freshBook } from './carried.ts'
import { everyRow } from './everyRow.ts'
import { anyWords } from './seededBook.ts'
import { badNames, scriptWords } from './hostileWords.ts'

/** What no file's name may hold on any machine (Windows' own list is the longest: Microsoft, Naming Files, Paths, and Namespaces; from memory). */
const forbidden = /[<>:"/\\|?*\u0000-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/u
const windowsOwn = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i

describe('a name made from words', () => {
  it.each(badNames)('holds nothing that leads elsewhere or isn’t seen: %j', (words) => {
    const name = safeName(words)
    expect(name).not.toMatch(forbidden)
    expect(name).not.toMatch(windowsOwn)
    expect(name).not.toMatch(/^[. ]|[. ]$/)
    expect(Buffer.byteLength(name)).toBeLessThanOrEqual(121)
    expect(Buffer.from(name).toString()).toBe(name)
  })

  it('is the words themselves where they are plain', () => {
    expect(safeName('Isolde Hartwhistle')).toBe('Isolde Hartwhistle')
    expect(safeName('Ångström & Søn, 5th')).toBe('Ångström & Søn, 5th')
    expect(safeName('..\\CON')).toBe('CON_')
    expect(safeName('nul.txt')).toBe('nul_.txt')
    expect(safeName('Hart/whistle ')).toBe('Hart-whistle')
  })

  it('is safe for any words, and the same when made once more', () => {
    fc.assert(
      fc.property(anyWords, (words) => {
        const name = safeName(words)
        expect(name).not.toMatch(forbidden)
        expect(name).not.toMatch(windowsOwn)
        expect(name === '' || isSafePlace(name)).toBe(true)
        expect(safeName(name)).toBe(name)
      }),
      { seed, numRuns: 3000 },
    )
  })
})

it.each([
  '../book.json',
  '/etc/passwd',
  'jobs/../../x.json',
  'jobs//x.json',
  'C:/x.json',
  'jobs\\x.json',
  './x.json',
  'jobs/x.json.',
  'jobs/ x.json',
  'jobs/con.json',
  'jobs/\u202ex.json',
  'jobs/x\0.json',
  '',
])('a place is no place inside a folder: %j', (place) => {
  expect(isSafePlace(place)).toBe(false)
})

describe('a book whose names are bad', () => {
  it('goes out wholly inside the chosen folder, and comes in with its names as they were', async () => {
    const from = opened()
    const words = [...badNames, ...scriptWords]
      .filter((one) => !one.includes('\0'))
      .map((one) => one.slice(0, 300))
    for (const word of words)
      await from.ask('jobs.create', { customerName: word, town: word, phone: word, title: word, due: null })
    const outer = temporaryFolder()
    const parent = join(outer, 'chosen')
    mkdirSync(parent)
    const out = await from.ask('book.takeOut', { folder: parent })
    expect(readdirSync(outer)).toEqual(['chosen'])
    const folder = out?.folder ?? ''
    const places = [...filesIn(folder).keys()]
    expect(places.filter((place) => place.startsWith(`jobs${sep}2026${sep}`))).toHaveLength(words.length)
    for (const place of places) {
      expect(resolve(folder, place).startsWith(folder + sep)).toBe(true)
      for (const part of place.split(sep)) {
        expect(part).not.toMatch(forbidden)
        expect(Buffer.byteLength(part)).toBeLessThan(200)
      }
    }
    const to = freshBook()
    await broughtIn(to, folder)
    expect(everyRow(to.book.path)).toEqual(everyRow(from.book.path))
  })

  it('takes none in that nothing is written with, and says so', async () => {
    const { book, refused } = opened()
    const unwritten = badNames.filter((one) => one.includes('\0'))
    expect(unwritten).not.toHaveLength(0)
    for (const word of unwritten)
      expect(await refused('jobs.create', { ...wanted, customerName: word })).toEqual([
        'refused customerName',
      ])
    expect(book.jobs.list('', null).rows).toHaveLength(0)
  })
})
