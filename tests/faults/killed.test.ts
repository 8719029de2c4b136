import { spawnSync } from 'node:child_process'
import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { readMigrations } from '../../db/migrate.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'
import { lookedAt } from './bookDigest.ts'
import { layouts } from './earlierBook.ts'
import { record, tracer } from './record.ts'
import type { DiskEvent, Recording } from './recording.ts'
import { carried } from './workshopBook.ts'
import { everySo, soak } from '../fixtures/sample.ts'

const kills = soak ? 20 : 3
const worker = fileURLToPath(new URL('./bookWork.ts', import.meta.url))

type Call = 'pwrite64' | 'ftruncate' | 'fsync' | 'rename' | 'link' | 'unlink'

/** The call of the system behind each kind of change. The tracer counts each call by itself. */
const callOf: Partial<Record<DiskEvent['kind'], Call>> = {
  wrote: 'pwrite64',
  cut: 'ftruncate',
  forced: 'fsync',
  renamed: 'rename',
  linked: 'link',
  removed: 'unlink',
}
type Moment = { call: Call; nth: number }

/** The book's own files: its copies are made in a thread of their own, which the tracer counts apart. */
const ofBook = (event: DiskEvent): boolean => 'name' in event && !event.name.includes('/')

/** Every change that a program was seen to make to files of a folder, as the moment at which it can be killed. */
function momentsOf({ events }: Recording): Moment[] {
  const counts = new Map<Call, number>()
  return events.filter(ofBook).flatMap(({ kind }) => {
    const call = callOf[kind]
    if (!call) return []
    const nth = (counts.get(call) ?? 0) + 1
    counts.set(call, nth)
    return [{ call, nth }]
  })
}

/** Opens a book as the program does and kills it outright as it is about to make a change. */
function killedAt(path: string, files: string[], { call, nth }: Moment): NodeJS.Signals | null {
  const named = files.flatMap((file) => ['-P', file])
  const rule = ['-e', `trace=${call}`, '-e', `inject=${call}:signal=SIGKILL:when=${nth}`]
  const run = [process.execPath, '--no-warnings', worker, 'open', path]
  return spawnSync(tracer(), ['-f', ...named, ...rule, '-o', '/dev/null', ...run]).signal
}

describe('powerCut: killed outright', () => {
  it.each(
    everySo(
      2,
      readMigrations()
        .slice(1)
        .map(({ number }) => number),
    ),
  )(
    `in the midst of step %i to today’s layout a book is all old or all new, and is brought up to date when it is opened again (${kills} kills)`,
    async (step) => {
      const kept = join(temporaryFolder(), 'jobs.book')
      const states = layouts(kept, step - 1)
      const first = temporaryFolder()
      copyFileSync(kept, join(first, 'jobs.book'))
      const recording = record(first, worker, ['open', join(first, 'jobs.book')])
      const names = [
        ...new Set(recording.events.filter(ofBook).flatMap((event) => ('name' in event ? event.name : []))),
      ]
      const moments = momentsOf(recording)
      const found = { old: 0, between: 0, new: 0 }
      for (let turn = 0; turn < kills; turn += 1) {
        const folder = temporaryFolder()
        const path = join(folder, 'jobs.book')
        copyFileSync(kept, path)
        const moment = moments[Math.floor((turn * (moments.length - 1)) / (kills - 1))] ?? moments[0]
        if (!moment) throw new Error('nothing was written')
        const files = names.map((name) => join(folder, name))
        const at = `${moment.call} ${moment.nth}`
        expect(killedAt(path, files, moment), at).toBe('SIGKILL')
        const { digest, faults } = lookedAt(path)
        expect(faults).toEqual([])
        const place = states.indexOf(digest)
        expect(place, `at ${at} a step is there in part`).toBeGreaterThanOrEqual(0)
        found[place === 0 ? 'old' : place === states.length - 1 ? 'new' : 'between'] += 1
        await (await carried(path)).close()
        expect(lookedAt(path)).toEqual({ digest: states.at(-1), faults: [] })
      }
      process.stdout.write(
        `powerCut: from step ${step} on, ${kills} kills over ${moments.length} calls: ${found.old} old, ${found.between} between two steps, ${found.new} new, 0 in part\n`,
      )
      expect(found.old).toBeGreaterThan(0)
      expect(found.new).toBeGreaterThan(0)
    },
  )
})
