import { existsSync, readdirSync } from 'node:fs'
import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { bringNear } from '../../db/keeping/bringNear.ts'
import { carryAway } from '../../db/keeping/awayCopy.ts'
import { copiesFolder } from '../../db/keeping/copyNames.ts'
import { goOverPapers } from '../../db/keeping/goOver.ts'
import { makeCopy } from '../../db/keeping/makeCopy.ts'
import { askToStop, standIn, standMemory, standOf, type WorkStand } from '../../db/keeping/workStand.ts'
import type { RequestName, Takes } from '../../shared/contract.ts'
import type { WorkStands } from '../../shared/keeping/workStands.ts'
import { stageLeft, stageWords } from '../../renderer/keeping/stageWords.ts'
import { bookPath, temporaryFolder } from '../db/temporaryBook.ts'
import { filledBook, started, type KeptBook } from './keptBook.ts'

/** A layout above any there is: these books are as new as can be. */
const latest = 99

/** A stand that writes down every stage with how far it came. */
function watchedStand(): { stand: WorkStand; seen: WorkStands[] } {
  const seen: WorkStands[] = []
  const stand: WorkStand = {
    begin: (what, of = 0) => void seen.push({ what, done: 0, of }),
    reach: (done) => {
      const last = seen.at(-1)
      if (last) last.done = done
    },
  }
  return { stand, seen }
}

/** Presses Stop as soon as the work is there to be stopped. */
async function stopped<N extends RequestName>(book: KeptBook, name: N, payload: Takes<N>) {
  const refused = book.refused(name, payload)
  for (const going = { yet: true }; going.yet;) {
    going.yet = !(await book.ask('keeping.stopWork', {})).stopped
    await new Promise((turn) => setTimeout(turn, 1))
  }
  return refused
}

describe('long work on the book’s files', () => {
  it('tells a stage at a time how far it is, to the last byte or paper', () => {
    const path = filledBook({ jobs: 30, papers: 12 })
    const away = temporaryFolder()
    const copy = watchedStand()
    const source = makeCopy({ bookPath: path, folder: copiesFolder(path), fileName: 'one.book' }, copy.stand)
    expect(copy.seen.map(({ what }) => what)).toEqual(['looking through', 'copying', 'reading back'])
    expect(copy.seen[1]?.of).toBeGreaterThan(12 * 9000)
    const task = { source, bookPath: path, folder: away, awayName: 'Bracework 2026-03-02 09.00.book' }
    const carried = watchedStand()
    const { bytes } = carryAway(task, carried.stand)
    expect(carried.seen).toEqual([
      { what: 'carrying', done: bytes, of: bytes },
      { what: 'reading back', done: bytes, of: bytes },
      { what: 'reading back', done: bytes, of: bytes },
    ])
    const gone = watchedStand()
    goOverPapers({ bookPath: path, latest }, gone.stand)
    expect(gone.seen).toEqual([{ what: 'going over', done: 11, of: 12 }])
    const near = watchedStand()
    bringNear({ comes: source, bookPath: path }, near.stand)
    expect(near.seen.map(({ what, done, of }) => [what, done === of])).toEqual([
      ['copying', true],
      ['reading back', true],
      ['reading back', true],
    ])
  })

  it('is seen from the window’s end of the memory both share, and heeds it there', () => {
    const memory = standMemory()
    expect(standOf(memory)).toBeNull()
    const stand = standIn(memory)
    stand.begin('going over', 900)
    stand.reach(40)
    expect(standOf(memory)).toEqual({ what: 'going over', done: 40, of: 900 })
    askToStop(memory)
    expect(() => stand.reach(41)).toThrow('Nothing was changed')
    expect(() => stand.begin('copying')).toThrow('Nothing was changed')
  })

  it('stopped on its way leaves the book as it is, and nothing half done', async () => {
    const path = filledBook({ jobs: 30, papers: 12 })
    const book = await started(path)
    const first = await book.ask('keeping.copy', {})
    const away = temporaryFolder()
    for (const ask of [
      () => stopped(book, 'keeping.copy', {}),
      () => stopped(book, 'keeping.backUp', { folder: away }),
      () => stopped(book, 'keeping.goOver', {}),
      () => stopped(book, 'keeping.restore', { name: first.name }),
    ])
      expect((await ask()).code).toBe('stopped')
    expect(await book.ask('keeping.inHand', {})).toBeNull()
    expect((await book.ask('keeping.stopWork', {})).stopped).toBe(false)
    const { copies, papers, outcome } = await book.ask('keeping.state', {})
    expect({ copies: copies.map(({ name }) => name), papers, outcome }).toEqual({
      copies: [first.name],
      papers: null,
      outcome: null,
    })
    expect(readdirSync(away)).toEqual([])
    expect(readdirSync(copiesFolder(path)).filter((file) => file.includes('unfinished'))).toEqual([])
    expect(existsSync(`${path}.coming`)).toBe(false)
    expect((await book.ask('jobs.list', { search: '', stage: null })).rows).toHaveLength(30)
    expect(book.logged).toEqual([])
  })

  it('stopped while papers are gone over keeps none of it', () => {
    const path = filledBook({ jobs: 8, papers: 8, path: bookPath() })
    const memory = standMemory()
    const own = standIn(memory)
    const reached: number[] = []
    const stand: WorkStand = {
      begin: own.begin,
      reach: (done) => {
        reached.push(done)
        if (done === 3) askToStop(memory)
        own.reach(done)
      },
    }
    expect(() => goOverPapers({ bookPath: path, latest }, stand)).toThrow('It was stopped')
    expect(reached).toEqual([0, 1, 2, 3])
    const db = new Sqlite(path, { readonly: true })
    expect(db.pragma('quick_check', { simple: true })).toBe('ok')
    db.close()
  })

  it('is told in words with what it counts, and guesses the time left only once there is something to guess by', () => {
    expect(stageWords({ what: 'copying', done: 120e6, of: 840e6 })).toBe('Copying: 120 of 840 MB')
    expect(stageWords({ what: 'going over', done: 80, of: 912 })).toBe('Going over the papers: 80 of 912')
    expect(stageWords({ what: 'looking through', done: 0, of: 0 })).toBe(
      'Looking the book through for damage',
    )
    expect(stageLeft({ what: 'copying', done: 200, of: 800 }, 4000)).toBe(12_000)
    expect(stageLeft({ what: 'copying', done: 200, of: 800 }, 500)).toBeUndefined()
    expect(stageLeft({ what: 'copying', done: 1, of: 800 }, 4000)).toBeUndefined()
  })
})
