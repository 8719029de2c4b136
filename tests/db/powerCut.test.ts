import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { openBook } from '../../db/open.ts'
import { bookPath, tickingClock } from './temporaryBook.ts'

const soak = process.env['BRACEWORK_SOAK'] === '1'
const rounds = soak ? 40 : 6
/** How many jobs a round says are kept before it is killed; each is two commits, so that the long form makes over 20,000. */
const jobsOf = (round: number): number => (soak ? 252 : 0) + ((round * 7) % 23)
const writer = fileURLToPath(new URL('./powerCutWriter.ts', import.meta.url))

type Said = { id: number; title: string; width: number }

/** Starts a writer on the book, kills it outright once it has said so many jobs are kept, and gives what it said. */
function cutShort(path: string, round: number, after: number): Promise<Said[]> {
  const child = spawn(process.execPath, [writer, path, String(round)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let heard = ''
  return new Promise((done, fail) => {
    child.on('error', fail)
    child.stdout.on('data', (words: Buffer) => {
      heard += words.toString('utf8')
      if (heard.split('\n').length > after) child.kill('SIGKILL')
    })
    child.on('close', (code, signal) => {
      if (signal !== 'SIGKILL') return fail(new Error(`the writer ended by itself with ${code}`))
      const lines = heard.slice(0, heard.lastIndexOf('\n') + 1).split('\n')
      done(lines.filter((line) => line !== '').map((line) => JSON.parse(line) as Said))
    })
  })
}

describe(`powerCut (${rounds} kills)`, () => {
  it('keeps every job that was said to be kept, and the book stays sound', async () => {
    const path = bookPath()
    const said: Said[] = []
    for (let round = 1; round <= rounds; round += 1) {
      const kept = await cutShort(path, round, jobsOf(round))
      said.push(...kept)
      const book = openBook(path, { now: tickingClock() })
      for (const { id, title, width } of kept)
        expect(book.jobs.open(id)).toMatchObject({ title, entry: { spec: { size: { width } } } })
      book.close()
    }
    const db = new Sqlite(path, { readonly: true })
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok')
    const all = db.prepare<[], Said>('SELECT id, title, width_mm AS width FROM jobs').all()
    const numbers = db.prepare<[], string>('SELECT number FROM jobs ORDER BY id').pluck().all()
    db.close()
    expect(all).toEqual(expect.arrayContaining(said))
    expect(numbers.map((number) => Number(number.slice(5)))).toEqual(numbers.map((_, index) => index + 1))
    process.stdout.write(
      `powerCut: ${rounds} kills, ${said.length * 2} commits said to be kept, 0 lost or torn\n`,
    )
    expect(said.length * 2).toBeGreaterThan(soak ? 20_000 : rounds)
  })

  it('while the first book is being made leaves either no book or a whole one', async () => {
    for (let round = 1; round <= rounds; round += 1) {
      const path = bookPath()
      const child = spawn(process.execPath, [writer, path, '0'], { stdio: 'ignore' })
      await new Promise((done) => setTimeout(done, 120 + 12 * round))
      child.kill('SIGKILL')
      await new Promise((done) => child.on('close', done))
      const book = openBook(path, { now: tickingClock() })
      expect(book.sections.list()).toHaveLength(12)
      book.close()
    }
  })
})
