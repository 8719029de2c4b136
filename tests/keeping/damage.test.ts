import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { copiesFolder } from '../../db/keeping/copyNames.ts'
import { bookPath } from '../db/temporaryBook.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'
import { filledBook, paperBytes, started, type KeptBook } from './keptBook.ts'

const jobs = 40
const papers = 6
const page = 4096

const source = join(mkdtempSync(join(tmpdir(), 'bracework-sound-')), 'sound.book')
beforeAll(() => void filledBook({ jobs, papers, path: source }))
afterAll(() => rmSync(dirname(source), { recursive: true, force: true }))
const good = (): string => source

/** A filled book with a sound copy of it among its copies: each test spoils a twin of its own. */
function twin(source: string): string {
  const path = bookPath()
  copyFileSync(source, path)
  mkdirSync(copiesFolder(path))
  copyFileSync(source, join(copiesFolder(path), '2026-02-28 17.00.00 closing.book'))
  return path
}

/** Whether the window can be used: it shows the jobs. Gives how many. */
const jobsShown = async (book: KeptBook): Promise<number> =>
  (await book.ask('jobs.list', { search: '', stage: null })).rows.length

const spoil = (path: string, how: (bytes: Buffer) => Buffer | void): void => {
  const bytes = readFileSync(path)
  writeFileSync(path, how(bytes) ?? bytes)
}

const noise = (path: string): void => void spoil(path, (bytes) => void bytes.fill(0xa5, page * 3, page * 4))

/** Bad files a disk, a stick or a person can leave, each by what was done to a sound book. */
const crafted: [string, (path: string) => void][] = [
  ['an empty file', (path) => writeFileSync(path, '')],
  ['a text', (path) => writeFileSync(path, 'Dear customer, '.repeat(3000))],
  ['a folder in its place', (path) => (rmSync(path), mkdirSync(path))],
  [
    'another program’s book',
    (path) => {
      rmSync(path)
      const db = new Sqlite(path)
      db.exec('CREATE TABLE letters (id INTEGER PRIMARY KEY)')
      db.close()
    },
  ],
  ['garbage over its first 64 bytes', (path) => spoil(path, (bytes) => void bytes.fill(0x5a, 0, 64))],
  ['noughts over its first page', (path) => spoil(path, (bytes) => void bytes.fill(0, 0, page))],
  ['cut to nine tenths', (path) => truncateSync(path, Math.floor(readFileSync(path).length * 0.9))],
  ['cut in half', (path) => truncateSync(path, Math.floor(readFileSync(path).length / 2))],
  ['cut to its first 100 bytes', (path) => truncateSync(path, 100)],
  ['one page of noise', noise],
  [
    'noughts over its second half',
    (path) => spoil(path, (bytes) => void bytes.fill(0, Math.floor(bytes.length / 2))),
  ],
  [
    'a layout that isn’t what its number says',
    (path) => {
      const db = new Sqlite(path)
      db.exec('ALTER TABLE jobs RENAME COLUMN width_mm TO leaf_width_mm')
      db.close()
    },
  ],
  [
    'gone, with only its last writings left',
    (path) => (rmSync(path), writeFileSync(`${path}-wal`, 'x'.repeat(5000))),
  ],
]

describe('starting on a bad book', () => {
  it('the sample of crafted files is whole', () => {
    process.stdout.write(`crafted bad books: ${crafted.length}\n`)
    expect(crafted).toHaveLength(13)
  })

  it.each(crafted)(
    '%s: a window within 5 s that says so in plain words, and the last copy opens',
    async (_, craft) => {
      const path = twin(good())
      craft(path)
      const before = snapshot(path)
      const begun = performance.now()
      const book = await started(path, { empty: false })
      const { trouble, copies } = await book.ask('keeping.state', {})
      expect(performance.now() - begun).toBeLessThan(5000)
      expect(trouble?.ways).toContain('copy')
      expect(trouble?.message).toMatch(/book|file/)
      expect(trouble?.message).not.toMatch(/SQLITE|Error|\.ts|database|undefined|null/)
      const refused = await book.refused('jobs.list', { search: '', stage: null })
      expect(refused.message).toBe(trouble?.message)
      expect(snapshot(path)).toEqual(before)
      const state = await book.ask('keeping.restore', { name: copies[0]?.name ?? '' })
      expect(state.trouble).toBeNull()
      expect(await jobsShown(book)).toBe(jobs)
      if (before) {
        const aside = state.copies.find(({ why }) => why === 'damaged')
        expect(snapshot(join(copiesFolder(path), aside?.name ?? ''))).toEqual(before)
      }
    },
  )

  it('reads out what can be read: every job where a page of an index or the beginning is gone, most where a page of jobs is', async () => {
    for (const [craft, least] of [
      [crafted[4]?.[1], jobs],
      [noise, jobs / 2],
    ] as const) {
      const path = twin(good())
      craft?.(path)
      const book = await started(path)
      const done = await book.ask('keeping.salvage', {})
      expect(done.jobs).toBeGreaterThanOrEqual(least)
      expect(await jobsShown(book)).toBe(done.jobs)
      const { rows: found } = await book.ask('jobs.list', { search: 'peg 40', stage: null })
      expect(found.length).toBeGreaterThanOrEqual(done.jobs === jobs ? 1 : 0)
      const { outcome, copies } = await book.ask('keeping.state', {})
      expect(outcome?.sentence).toContain(`${done.jobs} jobs`)
      expect(copies.map(({ why }) => why)).toContain('damaged')
      expect(outcome?.sentence).toContain(done.kept)
    }
  })

  it('says that nothing can be read out of what never was a book, and leaves all as it was', async () => {
    const path = twin(good())
    crafted[1]?.[1](path)
    const before = snapshot(path)
    const book = await started(path)
    expect((await book.refused('keeping.salvage', {})).message).toContain('Nothing could be read')
    expect(snapshot(path)).toEqual(before)
    expect(readdirSync(copiesFolder(path))).toEqual(['2026-02-28 17.00.00 closing.book'])
  })

  it('begins a fresh book only when asked, beside the bad one', async () => {
    const path = twin(good())
    writeFileSync(path, '')
    const book = await started(path)
    const state = await book.ask('keeping.fresh', {})
    expect(state.trouble).toBeNull()
    expect(state.outcome?.sentence).toContain('fresh, empty book')
    expect(await jobsShown(book)).toBe(0)
    expect(state.copies.map(({ why, bytes }) => [why, bytes])).toContainEqual(['damaged', 0])
    expect(await book.refused('keeping.fresh', {})).toMatchObject({ code: 'refused' })
  })

  it('tries again when asked, and opens the book that was brought back', async () => {
    const path = twin(good())
    noise(path)
    const book = await started(path)
    copyFileSync(good(), path)
    expect((await book.ask('keeping.again', {})).trouble).toBeNull()
    expect(await jobsShown(book)).toBe(jobs)
  })
})

describe('a book from a newer program', () => {
  it('is refused and stays as it is to the byte, an earlier copy is offered and opens', async () => {
    const path = twin(good())
    const db = new Sqlite(path)
    db.pragma('user_version = 999')
    db.close()
    const before = readFileSync(path)
    const book = await started(path)
    const { trouble, copies } = await book.ask('keeping.state', {})
    expect(trouble).toMatchObject({ code: 'newer', ways: ['again', 'copy', 'fresh'] })
    await book.refused('jobs.list', { search: '', stage: null })
    expect(readFileSync(path).equals(before)).toBe(true)
    const state = await book.ask('keeping.restore', { name: copies[0]?.name ?? '' })
    expect(await jobsShown(book)).toBe(jobs)
    const kept = state.copies.find(({ why }) => why === 'replaced')
    expect(readFileSync(join(copiesFolder(path), kept?.name ?? '')).equals(before)).toBe(true)
  })
})

/** Turns one bit over in a paper's bytes, wherever they lie in the file. */
function changePaper(path: string, number: number): void {
  spoil(path, (bytes) => {
    const at = bytes.indexOf(Buffer.from(paperBytes(number).slice(4800, 4830)))
    expect(at).toBeGreaterThan(0)
    bytes.writeUInt8((bytes[at] ?? 0) ^ 1, at)
  })
}

describe('an issued paper that was changed on the disk', () => {
  it('is named with its job on going over them, and put back from the copy that holds it', async () => {
    const path = twin(good())
    changePaper(path, 3)
    const book = await started(path)
    expect(await jobsShown(book)).toBe(jobs)
    const found = await book.ask('keeping.goOver', {})
    expect(found.papers).toBe(papers)
    expect(found.damaged).toEqual([
      {
        paperId: 3,
        name: 'card revision 1',
        job: '2026-003, Gate number 3',
        goodIn: expect.objectContaining({ name: '2026-02-28 17.00.00 closing.book' }),
      },
    ])
    expect((await book.refused('papers.bytes', { id: 3 })).message).toContain('Card revision 1 is damaged')
    expect((await book.ask('keeping.putBack', { paperId: 3 })).damaged).toEqual([])
    const { base64 } = await book.ask('papers.bytes', { id: 3 })
    expect(Buffer.from(base64, 'base64').equals(Buffer.from(paperBytes(3)))).toBe(true)
    const db = new Sqlite(path)
    expect(() => db.exec('UPDATE papers SET pages = 9')).toThrow('never altered')
    db.close()
  })

  it('is gone over by itself once a year', async () => {
    const path = twin(good())
    const day = (time: string) => ({ now: () => time })
    const first = await started(path, day('2026-03-02T09:00:00.000Z'))
    expect((await first.ask('keeping.state', {})).papers).toBeNull()
    await first.close()
    const second = await started(path, day('2027-03-03T09:00:00.000Z'))
    await expect
      .poll(async () => (await second.ask('keeping.state', {})).papers, { timeout: 10_000 })
      .toMatchObject({ papers, damaged: [] })
  })

  it('isn’t put back where no copy holds it', async () => {
    const path = twin(good())
    rmSync(copiesFolder(path), { recursive: true })
    changePaper(path, 2)
    const book = await started(path)
    expect((await book.refused('keeping.putBack', { paperId: 2 })).message).toContain('No copy holds')
  })
})

/** A small generator with a seed (mulberry32, a public-domain routine; from memory): the same changes each run. */
function randomFrom(start: number): () => number {
  let state = start
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** What became of one spoilt book. */
type Fate = 'open' | 'salvaged' | 'copy'

/** A spoilt book that opened must show what it holds or say what it can't: every job in its list, every paper as issued or refused. */
async function honest(book: KeptBook): Promise<void> {
  expect(await jobsShown(book)).toBe(jobs)
  const { damaged } = await book.ask('keeping.goOver', {})
  const told = new Set(damaged.map(({ paperId }) => paperId))
  for (let id = 1; id <= papers; id += 1) {
    const reply = await book.answer('papers.bytes', { id })
    expect(reply.ok).toBe(!told.has(id))
    if (!reply.ok) continue
    const { base64 } = reply.value as { base64: string }
    expect(Buffer.from(base64, 'base64').equals(Buffer.from(paperBytes(id)))).toBe(true)
  }
}

async function fateOf(path: string, turn: number): Promise<Fate> {
  const begun = performance.now()
  const book = await started(path, { empty: false })
  const { trouble, copies } = await book.ask('keeping.state', {})
  expect(performance.now() - begun).toBeLessThan(5000)
  if (!trouble) {
    await honest(book)
    await book.close()
    return 'open'
  }
  const salvaged = turn % 2 === 0 && (await book.answer('keeping.salvage', {})).ok
  if (!salvaged) await book.ask('keeping.restore', { name: copies[0]?.name ?? '' })
  const shown = await jobsShown(book)
  // What was read out may be less than there was, but is never silently so: it is counted and told.
  if (salvaged) {
    const { outcome } = await book.ask('keeping.state', {})
    expect(outcome?.sentence).toContain(`${shown} job`)
    if (shown < jobs) expect(outcome?.sentence).toContain('could not be read')
  } else expect(shown).toBe(jobs)
  expect(shown).toBeGreaterThan(0)
  await book.close()
  return salvaged ? 'salvaged' : 'copy'
}

describe('a book with eight random bytes changed', () => {
  it('always opens or says what is wrong and comes back: no silently empty book, every changed byte in a paper found', async () => {
    const count = sampleSize('spoilt books through the start', { usual: 8, long: 300, of: 'books' })
    const random = randomFrom(seed)
    const sound = good()
    const size = readFileSync(sound).length
    const fates: Record<Fate, number> = { open: 0, salvaged: 0, copy: 0 }
    for (let turn = 0; turn < count; turn += 1) {
      const path = twin(sound)
      spoil(path, (bytes) => {
        for (let byte = 0; byte < 8; byte += 1)
          bytes.writeUInt8(Math.floor(random() * 256), Math.floor(random() * size))
      })
      fates[await fateOf(path, turn)] += 1
    }
    process.stdout.write(`of ${count} spoilt books: ${JSON.stringify(fates)}\n`)
    expect(fates.open + fates.salvaged + fates.copy).toBe(count)
  })
})

/** What lies at a path, to be compared: a file's bytes, a folder's list. */
function snapshot(path: string): string | null {
  if (!existsSync(path)) return null
  try {
    return readFileSync(path).toString('base64')
  } catch {
    return readdirSync(path).join('\n')
  }
}
