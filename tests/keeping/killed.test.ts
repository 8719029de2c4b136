import { spawn, type ChildProcess } from 'node:child_process'
import { copyFileSync, existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import Sqlite from 'better-sqlite3'
import { expect, it } from 'vitest'
import { seeded } from '../../build/bench/seeded.ts'
import { inProject } from '../../build/paths.ts'
import { copiesFolder } from '../../db/keeping/copyNames.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'
import { faultsOf } from '../faults/bookDigest.ts'
import { tracer } from '../faults/record.ts'
import { sampleSize, seed, soak } from '../fixtures/sample.ts'
import { filledBook, started } from './keptBook.ts'

type How = 'copy' | 'restore' | 'held'
const copyName = '2026-02-28 17.00.00 closing.book'
const sizes = { old: { jobs: 160, papers: 60 }, copy: { jobs: 70, papers: 30 } }

/** A folder of its own with a book, an earlier copy of another size, and a folder to carry copies to. */
type Ground = { folder: string; path: string; stick: string }
type Said = {
  begun?: number
  job?: string
  restored?: number
  away?: { name: string }
  copy?: { name: string }
}

function ready(kept: { old: string; copy: string }): Ground {
  const folder = temporaryFolder()
  const [path, stick] = [join(folder, 'jobs.book'), join(folder, 'stick')]
  for (const made of [stick, copiesFolder(path)]) mkdirSync(made)
  copyFileSync(kept.old, path)
  copyFileSync(kept.copy, join(copiesFolder(path), copyName))
  return { folder, path, stick }
}

const books = () => ({ old: filledBook(sizes.old), copy: filledBook(sizes.copy) })

type Run = {
  child: ChildProcess
  said: () => Said[]
  ended: Promise<NodeJS.Signals | null>
  words: () => string
}

/** Starts the writer; under: what runs it, where it isn't run bare. */
function begun(how: How, { path, stick }: Ground, under: string[] = []): Run {
  const run = [...under, process.execPath, '--no-warnings', inProject('tests/keeping/keepingWriter.ts')]
  const child = spawn(run[0] ?? '', [...run.slice(1), how, path, stick, copyName], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const heard = { out: '', words: '' }
  child.stdout.on('data', (piece: Buffer) => (heard.out += piece.toString()))
  child.stderr.on('data', (piece: Buffer) => (heard.words += piece.toString()))
  const said = () =>
    heard.out
      .split('\n')
      .slice(0, -1)
      .map((line) => JSON.parse(line) as Said)
  const ended = new Promise<NodeJS.Signals | null>((done) => child.once('close', (_, signal) => done(signal)))
  return { child, said, ended, words: () => heard.words }
}

async function roundBegun({ child, said, words }: Run, round: number): Promise<void> {
  while (!said().some((one) => one.begun === round)) {
    if (child.exitCode !== null) throw new Error(`it ended: ${words()}`)
    await wait(1)
  }
}

async function killed(run: Run): Promise<Said[]> {
  run.child.kill('SIGKILL')
  expect(await run.ended).toBe('SIGKILL')
  return run.said()
}

/** How long a round takes here and now, ms. */
async function roundTakes(how: How, ground: Ground): Promise<number> {
  const run = begun(how, ground)
  await roundBegun(run, 1)
  const from = performance.now()
  await roundBegun(run, 2)
  const took = performance.now() - from
  await killed(run)
  return took
}

type Holds = { name: string; jobs: number; papers: number; rounds: string[]; faults: string[] }

/** What a file holds, looked at in a twin of it so that it stays as it is. */
function holds(path: string, name: string): Holds {
  const twin = join(temporaryFolder(), 'twin.book')
  for (const part of ['', '-wal'])
    if (existsSync(`${path}${part}`)) copyFileSync(`${path}${part}`, `${twin}${part}`)
  const db = new Sqlite(twin)
  try {
    const titles = db.prepare<[], string>('SELECT title FROM jobs').pluck().all()
    const rounds = titles.filter((title) => title.startsWith('Round')).sort()
    const papers = Number(db.prepare('SELECT count(*) FROM papers').pluck().get())
    return { name, jobs: titles.length - rounds.length, papers, rounds, faults: faultsOf(db) }
  } catch (error) {
    return { name, jobs: 0, papers: 0, rounds: [], faults: [String(error)] }
  } finally {
    db.close()
  }
}

const booksIn = (folder: string): Holds[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.book'))
    .map((name) => holds(join(folder, name), name))

/** Every book is sound and is the old one or the copy, with rounds' jobs or without. */
function expectWhole(found: Holds[], at: string): void {
  const wrong = found.filter(
    ({ jobs, papers, faults }) =>
      faults.length > 0 || !Object.values(sizes).some((size) => size.jobs === jobs && size.papers === papers),
  )
  expect(wrong, at).toEqual([])
}

/** Looks at what a kill left, starts the program on it as the person would, and looks again. Gives whether the old book or the copy stands. */
async function lookAfter({ path, stick }: Ground, said: Said[], at: string): Promise<'old' | 'copy'> {
  const folder = copiesFolder(path)
  expectWhole([...booksIn(folder), ...booksIn(stick)], `${at}, before the start`)
  const book = await started(path)
  expect((await book.ask('keeping.state', {})).trouble, at).toBeNull()
  await book.close()
  const [stands, copies] = [holds(path, 'jobs.book'), booksIn(folder)]
  expectWhole([stands, ...copies], at)
  const inode = statSync(path).ino
  expect(
    readdirSync(folder).filter((name) => statSync(join(folder, name)).ino === inode),
    at,
  ).toEqual([])
  expect(
    readdirSync(folder).filter((name) => name.includes('unfinished')),
    at,
  ).toEqual([])
  expect(existsSync(`${path}.coming`), at).toBe(false)
  for (const { away } of said) if (away) expect(readdirSync(stick), at).toContain(away.name)
  for (const { copy } of said) if (copy) expect(readdirSync(folder), at).toContain(copy.name)
  const lost = said.filter(
    ({ job }) => job && ![stands, ...copies].some(({ rounds }) => rounds.includes(job)),
  )
  expect(lost, at).toEqual([])
  const which = stands.jobs === sizes.old.jobs ? 'old' : 'copy'
  const back = said.findLastIndex(({ restored }) => restored !== undefined)
  const since = said.slice(back + 1).flatMap(({ job }) => job ?? [])
  // A book that wasn't replaced since holds all it was given since; one that was is the copy as it was made.
  if (which === 'old' || stands.rounds.length > 0)
    expect(stands.rounds, at).toEqual(expect.arrayContaining(since))
  return which
}

const told = (found: Record<string, number>): string =>
  Object.entries(found)
    .map(([what, count]) => `${count} ${what}`)
    .join(', ')

const trials: [How, string][] = [
  ['copy', 'makes copies here and on a stick'],
  ['restore', 'opens a copy in the book’s place'],
]
it.each(trials)('%s: a program killed while it %s leaves only whole books and loses no job', async (how) => {
  const kills = sampleSize(`keeping, ${how}`, { usual: 3, long: 25, of: 'kills' })
  const kept = books()
  const draws = seeded(seed + how.length)
  const takes = await roundTakes(how, ready(kept))
  const found = { old: 0, copy: 0, halfMade: 0 }
  for (let kill = 0; kill < kills; kill += 1) {
    const ground = ready(kept)
    const run = begun(how, ground)
    await roundBegun(run, 1)
    const after = (takes * (kill + draws.between(0, 0.99, 0.01))) / kills
    await wait(after)
    const said = await killed(run)
    const lying = [ground.folder, ground.stick, copiesFolder(ground.path)].flatMap((one) => readdirSync(one))
    if (lying.some((name) => /unfinished|coming/.test(name))) found.halfMade += 1
    found[await lookAfter(ground, said, `${how}, ${after.toFixed(0)} ms`)] += 1
    rmSync(ground.folder, { recursive: true, force: true })
  }
  process.stdout.write(
    `keeping, ${how}: ${kills} kills over ${takes.toFixed(0)} ms: ${told(found)}; 0 in part\n`,
  )
})

/** A call of the system on one of the files, before which the program is killed; unlinked: the disk knows no second names. */
type Moment = { what: string; how: How; call: string; file: string; unlinked?: true; halfMade?: true }
const near = 'jobs.book.coming'
const onStick = 'stick/Bracework 2026-03-02 08.00.book.unfinished'
const here = 'jobs-copies/2026-03-02 08.00.00 asked.book.unfinished'
const moments: Moment[] = [
  { what: 'the last pages go', how: 'held', call: 'unlink,unlinkat', file: 'jobs.book-wal' },
  { what: 'the new book gets its name', how: 'held', call: 'rename', file: near },
  {
    what: 'the old book is copied aside',
    how: 'restore',
    call: 'copy_file_range',
    file: 'jobs.book',
    unlinked: true,
  },
  { what: 'the stick’s copy is forced', how: 'copy', call: 'fsync', file: onStick, halfMade: true },
  { what: 'the stick’s copy gets its name', how: 'copy', call: 'rename', file: onStick, halfMade: true },
  { what: 'the copy here is forced', how: 'copy', call: 'fsync', file: here, halfMade: true },
  { what: 'the copy here gets its name', how: 'copy', call: 'rename', file: here, halfMade: true },
  { what: 'the new book gets its name', how: 'restore', call: 'rename', file: near },
  { what: 'the new book is copied near', how: 'restore', call: 'write', file: near },
  { what: 'the new book is forced to disk', how: 'restore', call: 'fsync', file: near },
  { what: 'the old book gets its second name', how: 'restore', call: 'link', file: 'jobs.book' },
  { what: 'the last pages get theirs', how: 'held', call: 'link', file: 'jobs.book-wal' },
  { what: 'the old book gets its second name', how: 'held', call: 'link', file: 'jobs.book' },
  { what: 'the new book gets its name', how: 'held', call: 'rename', file: near, unlinked: true },
]

/** Runs the writer under the tracer, which kills it at the moment. */
async function killedAt(ground: Ground, { how, call, file, unlinked }: Moment, at: string): Promise<Said[]> {
  const places = [file, ...(unlinked ? ['jobs.book', 'jobs.book-wal'] : [])]
  const named = places.flatMap((one) => ['-P', join(ground.folder, one)])
  const refusing = unlinked ? ['-e', 'inject=link,linkat:error=EPERM'] : []
  const rule = ['-e', `trace=${call},link,linkat`, ...refusing, '-e', `inject=${call}:signal=SIGKILL:when=1`]
  const run = begun(how, ground, [tracer(), '-f', ...named, ...rule, '-o', '/dev/null'])
  const stop = setTimeout(() => run.child.kill('SIGTERM'), 20_000)
  expect(await run.ended, `${at}: ${run.words()}`).toBe('SIGKILL')
  clearTimeout(stop)
  return run.said()
}

const tried = soak ? moments : moments.slice(0, 4)
it(`one killed at a step of copying or restoring, by name, leaves the old book whole (${tried.length} steps)`, async () => {
  const kept = books()
  for (const moment of tried) {
    const ground = ready(kept)
    const at = `as ${moment.what}, ${moment.how}${moment.unlinked ? ', no second names' : ''}`
    const said = await killedAt(ground, moment, at)
    expect(
      said.some(({ restored }) => restored),
      at,
    ).toBe(false)
    if (moment.halfMade) expect(existsSync(join(ground.folder, moment.file)), at).toBe(true)
    expect(await lookAfter(ground, said, at), at).toBe('old')
  }
  process.stdout.write(`keeping: killed at ${tried.length} steps by name, 0 in part, 0 jobs lost\n`)
})
