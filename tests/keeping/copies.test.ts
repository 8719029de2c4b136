import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { describe, expect, it, onTestFinished } from 'vitest'
import { copiesFolder } from '../../db/keeping/copyNames.ts'
import { bookPath, tickingClock, temporaryFolder } from '../db/temporaryBook.ts'
import { filledBook, started } from './keptBook.ts'

const newJob = { customerName: 'Peg Sash', town: 'Nether Test', phone: '', title: 'Side gate', due: null }
const hash = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex')

/** A folder on another disk than the books of tests, as a memory stick is: the machine's own memory. */
function stick(): string {
  const folder = mkdtempSync('/dev/shm/bracework-stick-')
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** Waits until the work that was begun by itself (the copy of the day) has been done. */
const settled = async (look: () => Promise<boolean>): Promise<void> => {
  for (let turn = 0; turn < 200 && !(await look()); turn += 1)
    await new Promise((done) => setTimeout(done, 25))
}

describe('copies of the book', () => {
  it('are made on the first use of a day and at closing, sound, and once a day only', async () => {
    const path = filledBook()
    const first = await started(path)
    const copies = async () => (await first.ask('keeping.state', {})).copies
    await settled(async () => (await copies()).length > 0)
    expect((await copies()).map(({ why }) => why)).toEqual(['daily'])
    await first.ask('jobs.create', newJob)
    await first.close()
    const second = await started(path, { now: tickingClock('2026-03-02T18:00:00.000Z') })
    await second.close()
    // The closing copy is the day's last and takes the morning's place; the second start and an idle closing add none.
    expect(readdirSync(copiesFolder(path))).toEqual([expect.stringMatching(/^2026-03-02 .* closing\.book$/)])
    const copy = new Sqlite(join(copiesFolder(path), readdirSync(copiesFolder(path))[0] ?? ''), {
      readonly: true,
    })
    expect(copy.prepare('SELECT count(*) FROM jobs').pluck().get()).toBe(41)
    expect(copy.pragma('integrity_check', { simple: true })).toBe('ok')
    copy.close()
  })

  it('leave nothing half made behind, and clear what a cut off one left', async () => {
    const path = filledBook()
    mkdirSync(copiesFolder(path))
    writeFileSync(join(copiesFolder(path), '2026-03-01 08.00.00 daily.book.unfinished'), 'half a copy')
    writeFileSync(`${path}.coming`, 'half a book')
    const book = await started(path)
    await book.ask('keeping.copy', {})
    await book.close()
    const files = readdirSync(copiesFolder(path))
    expect(files.every((file) => /\.book$/.test(file))).toBe(true)
    expect(existsSync(`${path}.coming`)).toBe(false)
  })

  it('are not made of a book that is damaged inside, so that none pushes a good one out, and it is said', async () => {
    const path = filledBook()
    const db = new Sqlite(path)
    db.unsafeMode(true)
    db.pragma('writable_schema = ON')
    db.prepare(
      "UPDATE sqlite_schema SET sql = replace(sql, 'ON jobs (customer_id)', 'ON jobs (version)') WHERE name = 'jobs_by_customer'",
    ).run()
    db.close()
    const book = await started(path)
    await settled(async () => (await book.ask('keeping.state', {})).fault !== null)
    const state = await book.ask('keeping.state', {})
    expect(state.fault).toContain('damaged')
    expect(state.copies).toEqual([])
  })

  it('can be looked into: how many jobs, when last written in, which jobs', async () => {
    const path = filledBook({ jobs: 7, papers: 2 })
    const book = await started(path)
    const { name } = await book.ask('keeping.copy', {})
    const inside = await book.ask('keeping.inside', { name })
    expect([inside.jobs, inside.papers, inside.lastJobs.length]).toEqual([7, 2, 5])
    expect(inside.lastJobs[0]).toEqual({ number: '2026-007', customer: 'Peg 7', title: 'Gate number 7' })
    expect(inside.lastChange).toMatch(/^2026-02-02T08:/)
  })

  it('are found by their own name only: no other file can be asked for', async () => {
    const book = await started(filledBook())
    for (const name of ['jobs.book', '..', 'nothing.book'])
      expect((await book.refused('keeping.inside', { name })).code).toBe('refused')
    for (const name of ['../jobs.book', '/etc/passwd', 'a\\b', '']) {
      const reply = await book.answer('keeping.inside', { name })
      expect(reply).toMatchObject({ ok: false, problems: [{ field: 'name' }] })
    }
  })
})

describe('backing up to a folder', () => {
  it('writes a sound copy there, read back, and remembers that one has left the disk', async () => {
    const path = filledBook()
    const folder = stick()
    const book = await started(path)
    const done = await book.ask('keeping.backUp', { folder })
    expect(done).toMatchObject({ folder, drive: 'shm', away: true, name: 'Bracework 2026-03-02 08.00.book' })
    const copies = (await book.ask('keeping.state', {})).copies.filter(({ why }) => why === 'asked')
    expect(hash(join(folder, done.name))).toBe(hash(join(copiesFolder(path), copies[0]?.name ?? '')))
    expect((await book.ask('keeping.state', {})).away).toMatchObject({ drive: 'shm', folder })
    const again = await book.ask('keeping.backUp', { folder })
    expect(readdirSync(folder).sort()).toEqual([done.name, again.name].sort())
    expect(again.name).not.toBe(done.name)
  })

  it('says so when the folder is on the book’s own disk, and goes on reminding', async () => {
    const book = await started(filledBook())
    expect(await book.ask('keeping.backUp', { folder: temporaryFolder() })).toMatchObject({ away: false })
    expect((await book.ask('keeping.state', {})).away).toBeNull()
  })

  it('refuses what no copy can go into, in a sentence, and writes nothing', async () => {
    const path = filledBook()
    const book = await started(path)
    const file = join(temporaryFolder(), 'a file')
    writeFileSync(file, 'x')
    const tried: [string, string][] = [
      ['gates', 'whole way'],
      ['../..', 'whole way'],
      ['/no/such/folder', 'Is the stick plugged in?'],
      [file, 'is not a folder'],
    ]
    for (const [folder, words] of tried)
      expect((await book.refused('keeping.backUp', { folder })).message).toContain(words)
    await book.ask('keeping.copy', {})
    expect((await book.refused('keeping.backUp', { folder: copiesFolder(path) })).message).toContain(
      'own folder',
    )
  })

  it('where folders are chosen in the system’s window, writes only to one that was chosen there', async () => {
    const [chosen, other] = [stick(), stick()]
    const book = await started(filledBook(), { chooseFolder: async () => chosen })
    expect((await book.refused('keeping.backUp', { folder: other })).message).toContain('Choose the folder')
    expect(await book.ask('keeping.chooseFolder', {})).toEqual({ folder: chosen })
    expect(await book.ask('keeping.backUp', { folder: chosen })).toMatchObject({ away: true })
    expect(readdirSync(other)).toEqual([])
  })
})

describe('opening a copy in the book’s place', () => {
  it('brings back what the copy held, keeps the book that was there, and can be undone', async () => {
    const path = filledBook({ jobs: 4, papers: 0 })
    const book = await started(path)
    const { name } = await book.ask('keeping.copy', {})
    await book.ask('jobs.create', newJob)
    const state = await book.ask('keeping.restore', { name })
    expect((await book.ask('book.summary', {})).jobs).toBe(4)
    expect(state.outcome?.sentence).toContain('4 jobs')
    const replaced = state.copies.find(({ why }) => why === 'replaced')
    expect(state.outcome?.sentence).toContain(replaced?.name)
    expect((await book.ask('keeping.inside', { name: replaced?.name ?? '' })).jobs).toBe(5)
    await book.ask('keeping.restore', { name: replaced?.name ?? '' })
    expect(
      (await book.ask('jobs.list', { search: 'sash', stage: null })).rows.map(({ title }) => title),
    ).toEqual(['Side gate'])
  })

  it('is not undone by what was last written to the old book, which lies beside it in a file of its own', async () => {
    const path = filledBook({ jobs: 3, papers: 0 })
    const book = await started(path)
    const { name } = await book.ask('keeping.copy', {})
    // Another program holds the book open, so that its last writings stay in their own file over the restore.
    const other = new Sqlite(path)
    onTestFinished(() => void other.close())
    other.prepare('SELECT count(*) FROM jobs').get()
    await book.ask('jobs.create', newJob)
    expect(readFileSync(`${path}-wal`).length).toBeGreaterThan(0)
    const { copies } = await book.ask('keeping.restore', { name })
    expect((await book.ask('book.summary', {})).jobs).toBe(3)
    const replaced = copies.find(({ why }) => why === 'replaced')?.name ?? ''
    await book.ask('keeping.restore', { name: replaced })
    expect((await book.ask('book.summary', {})).jobs).toBe(4)
  })

  it('refuses a damaged copy and leaves the book as it is', async () => {
    const path = filledBook()
    const book = await started(path)
    const { name } = await book.ask('keeping.copy', {})
    const bytes = readFileSync(join(copiesFolder(path), name))
    bytes.fill(0x5a, 4096 * 2, 4096 * 4)
    writeFileSync(join(copiesFolder(path), name), bytes)
    expect(await book.refused('keeping.restore', { name })).toMatchObject({
      message: 'That copy is damaged. Choose another one.',
    })
    expect((await book.ask('book.summary', {})).jobs).toBe(40)
  })

  it('is remembered until it is put away, and what is remembered of copies goes over to the book that comes', async () => {
    const book = await started(filledBook())
    const { name } = await book.ask('keeping.copy', {})
    await book.ask('keeping.backUp', { folder: stick() })
    expect((await book.ask('keeping.restore', { name })).away).toMatchObject({ drive: 'shm' })
    expect((await book.ask('keeping.putAway', {})).outcome).toBeNull()
  })
})

describe('a book that isn’t there', () => {
  it('is never begun anew in silence where copies of it lie', async () => {
    const path = filledBook({ jobs: 6, papers: 0 })
    const first = await started(path)
    const { name } = await first.ask('keeping.copy', {})
    await first.close()
    rmSync(path)
    const book = await started(path)
    const { trouble } = await book.ask('keeping.state', {})
    expect(trouble).toMatchObject({ code: 'missing', ways: ['copy', 'fresh', 'again'] })
    expect(existsSync(path)).toBe(false)
    expect((await book.refused('jobs.list', { search: '', stage: null })).message).toContain(
      'isn’t in its folder',
    )
    await book.ask('keeping.restore', { name })
    expect((await book.ask('book.summary', {})).jobs).toBe(6)
  })

  it('is told when it is a bare one where its last copy has jobs', async () => {
    const path = filledBook({ jobs: 6, papers: 0 })
    const first = await started(path)
    await first.ask('keeping.copy', {})
    await first.close()
    const bare = bookPath()
    await (await started(bare)).close()
    writeFileSync(path, readFileSync(bare))
    const book = await started(path)
    expect((await book.ask('keeping.state', {})).fault).toContain('last copy has 6')
  })
})
