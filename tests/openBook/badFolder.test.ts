import { createHash } from 'node:crypto'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { answer } from '../../electron/handlers/answer.ts'
import { openBook } from '../../db/open.ts'
import { tickingClock } from '../db/temporaryBook.ts'
import { makeableJob, opened, type Opened } from '../handlers/opened.ts'
import { freshBook } from './carried.ts'
import { made, soundFolder, spoiltFolder } from './soundFolder.ts'
import { first, rewrite } from './spoiling.ts'
import { spoilings } from './spoilings.ts'

beforeEach(soundFolder)
const books: Opened[] = []
/** One book to bring everything into: nothing that is refused may leave a trace in it. */
async function sharedBook(): Promise<Opened> {
  const known = books[0]
  if (known) return known
  const path = join(made.holder, 'shared.book')
  const to = opened({ book: openBook(path, { now: tickingClock() }) })
  await makeableJob(to)
  books.push(to)
  return to
}
afterAll(() => books.forEach(({ book }) => book.close()))
afterAll(() => rmSync(made.holder, { recursive: true, force: true }))

/** What the person is told on looking in, as 'field: message'; the book and its file must be what they were, byte for byte. */
async function told(folder: string): Promise<string[]> {
  const to = await sharedBook()
  const hash = () => createHash('sha256').update(readFileSync(to.book.path)).update(wal()).digest('hex')
  const wal = () => (existsSync(`${to.book.path}-wal`) ? readFileSync(`${to.book.path}-wal`) : '')
  const before = hash()
  const look = await to.ask('book.lookInto', { folder })
  const brought = await answer(to, 'book.bringIn', { folder, replace: true })
  expect(brought.ok).toBe(false)
  expect(hash()).toBe(before)
  expect(existsSync(`${to.book.path}.coming-in`)).toBe(false)
  expect(to.logged).toEqual([])
  if (!brought.ok) expect(brought.problems).toEqual(look?.problems)
  return (look?.problems ?? []).map(({ field, message }) => `${field}: ${message}`)
}

describe('a folder that is wrong', () => {
  it.each(spoilings)(
    'is refused with file and field named, and the book stays byte for byte: %s',
    async (_title, spoil, message) => {
      const folder = spoiltFolder()
      spoil(folder)
      const [problem] = await told(folder)
      expect(problem).toMatch(message)
    },
  )

  it('is told all at once, over several files, fifty problems at most', async () => {
    const folder = spoiltFolder()
    for (const place of made.places.filter((one) => one.startsWith('jobs/')))
      rewrite(folder, place, (rows) => Object.assign(first(rows, 'jobs'), { stage: 'lost', unit: 'cubits' }))
    const problems = await told(folder)
    expect(problems.length).toBeGreaterThan(10)
    expect(problems.length).toBeLessThanOrEqual(60)
    expect(new Set(problems.map((problem) => problem.split(': ')[0])).size).toBeGreaterThan(5)
  })

  it('of the sound kind is taken: the spoilings above are what was refused', async () => {
    const to = freshBook()
    const folder = spoiltFolder()
    expect((await to.ask('book.lookInto', { folder }))?.problems).toEqual([])
    expect((await to.ask('book.bringIn', { folder, replace: false })).counts.jobs).toBeGreaterThan(5)
  })
})
