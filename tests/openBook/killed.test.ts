import { spawn, type ChildProcess } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { expect, it } from 'vitest'
import { openBook } from '../../db/open.ts'
import { seeded } from '../../build/bench/seeded.ts'
import { inProject } from '../../build/paths.ts'
import { temporaryFolder, tickingClock } from '../db/temporaryBook.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'
import { makeableJob } from '../handlers/opened.ts'
import { broughtIn, filesIn, freshBook, takenOut } from './carried.ts'
import { everyRow } from './everyRow.ts'
import { seededBook } from './seededBook.ts'

const begun = (child: ChildProcess): Promise<void> =>
  new Promise((done, fail) => {
    let said = ''
    child.stderr?.on('data', (piece: Buffer) => (said += piece.toString()))
    child.stdout?.once('data', () => done())
    child.once('exit', (code) => fail(new Error(`it ended with ${code}: ${said}`)))
  })

/** Starts the writer, lets it go on for so many ms from its first round, and kills it without a word. */
async function killedAfter(ms: number, args: string[]): Promise<void> {
  const child = spawn(process.execPath, [inProject('tests/openBook/carryingWriter.ts'), ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  await begun(child)
  await wait(ms)
  const gone = new Promise((done) => child.once('exit', done))
  child.kill('SIGKILL')
  await gone
}

/** A book with enough in it that a kill falls in the middle of the work. */
async function largeBook() {
  const from = await seededBook(seed + 21)
  for (let count = 0; count < 30; count += 1) await makeableJob(from)
  return from
}

const kills = sampleSize('taking a book out', { usual: 5, long: 25, of: 'kills' })
it(`a program killed while it takes a book out leaves no part of one under the folder’s name: ${kills} kills`, async () => {
  const from = await largeBook()
  const places = [...filesIn(await takenOut(from)).keys()]
  const rows = everyRow(from.book.path)
  const draws = seeded(seed)
  const parent = temporaryFolder()
  const ended = { unfinished: 0, whole: 0 }
  for (let kill = 0; kill < kills; kill += 1) {
    await killedAfter(draws.between(1, 120), ['out', from.book.path, parent])
    const entries = readdirSync(parent)
    ended.unfinished = entries.filter((name) => /\.unfinished-[0-9a-f]{8}$/.test(name)).length
    const whole = entries.filter((name) => !name.includes('.unfinished-'))
    ended.whole = whole.length
    for (const name of whole) expect([...filesIn(join(parent, name)).keys()], name).toEqual(places)
  }
  expect(ended.unfinished).toBeGreaterThan(0)
  expect(everyRow(from.book.path)).toEqual(rows)
  for (const name of readdirSync(parent)
    .filter((one) => !one.includes('.unfinished-'))
    .slice(0, 1)) {
    const to = freshBook()
    await broughtIn(to, join(parent, name))
    expect(everyRow(to.book.path)).toEqual(rows)
  }
})

const cuts = sampleSize('bringing a book in', { usual: 3, long: 25, of: 'kills' })
it(`a program killed while it brings a book in leaves the old book or the new one, whole: ${cuts} kills`, async () => {
  const [from, to] = [await largeBook(), await seededBook(seed + 22)]
  const folder = await takenOut(from)
  const [coming, standing] = [everyRow(from.book.path), everyRow(to.book.path)]
  to.book.close()
  const draws = seeded(seed + 1)
  for (let kill = 0; kill < cuts; kill += 1) {
    await killedAfter(draws.between(1, 600), ['in', to.book.path, folder])
    openBook(to.book.path, { now: tickingClock() }).close()
    expect(readdirSync(join(to.book.path, '..')).filter((name) => name.includes('coming-in'))).toEqual([])
    const found = JSON.stringify(everyRow(to.book.path))
    expect([JSON.stringify(standing), JSON.stringify(coming)]).toContain(found)
  }
})
