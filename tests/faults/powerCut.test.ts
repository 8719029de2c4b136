import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { readMigrations } from '../../db/migrate.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'
import { lookedAt } from './bookDigest.ts'
import { overCuts, type Cut } from './cuts.ts'
import { record } from './record.ts'
import type { Recording } from './recording.ts'
import { layouts } from './earlierBook.ts'
import { carried, prepare } from './workshopBook.ts'
import { everySo, soak } from '../fixtures/sample.ts'

const cuts = soak
  ? { work: 700, steps: 120, making: 80, loose: 200 }
  : { work: 42, steps: 7, making: 14, loose: 21 }
const worker = fileURLToPath(new URL('./bookWork.ts', import.meta.url))

type Said = { kept?: true; holds?: string }

/** What the program had given its word for when it had said so much, and what else may stand: the work it was in the middle of. */
function mayHold(recording: Recording, said: string): string[] {
  const whole = recording.events.map((event) => (event.kind === 'said' ? event.words : '')).join('')
  const linesOf = (words: string): Said[] =>
    words
      .split('\n')
      .slice(0, -1)
      .map((line) => JSON.parse(line) as Said)
  const states = linesOf(whole).flatMap(({ holds }) => holds ?? [])
  const kept = linesOf(said).filter((line) => line.kept).length
  return states.slice(kept, kept + 2)
}

/** Opens what a cut left as the program does, and gives all that is wrong with it. */
async function opened({ folder }: Cut): Promise<{ digest: string; faults: string[] }> {
  const path = join(folder, 'jobs.book')
  await (await carried(path)).close()
  return lookedAt(path)
}

const told = ({ after, manner }: Cut, what: string): string => `after event ${after}, ${manner}: ${what}`

/** A copy that has its name is a whole book of the layout it is called after, whatever the moment of the cut. */
const copyFaults = (folder: string, from: number, states: string[]): string[] =>
  readdirSync(folder)
    .map((name) => ({ name, next: Number(/-before-(\d+).*\.book$/.exec(name)?.[1]) }))
    .filter(({ next }) => next > 0)
    .map(({ name, next }) => ({ name, wanted: states[next - 1 - from], ...lookedAt(join(folder, name)) }))
    .filter(({ digest, wanted, faults }) => digest !== wanted || faults.length > 0)
    .map(({ name, faults }) => `${name} is not what the book was: ${faults.join('; ')}`)

describe('powerCut: the writes the program made, as a cut may leave them', () => {
  it(`keeps all it said was kept, each piece of work whole or not at all (${cuts.work} cuts)`, async () => {
    const folder = temporaryFolder()
    const prepared = await prepare(join(folder, 'jobs.book'))
    const turns = soak ? '4' : '2'
    const recording = record(folder, worker, [
      'work',
      join(folder, 'jobs.book'),
      turns,
      JSON.stringify(prepared),
    ])
    const wrong: string[] = []
    await overCuts(recording, { count: cuts.work, seed: 71, within: temporaryFolder() }, async (cut) => {
      const { digest, faults } = await opened(cut)
      wrong.push(...faults.map((fault) => told(cut, fault)))
      if (!mayHold(recording, cut.said).includes(digest)) wrong.push(told(cut, 'holds something else'))
    })
    const forced = recording.events.filter(({ kind }) => kind === 'forced').length
    process.stdout.write(
      `powerCut: ${recording.events.length} recorded events, ${forced} forced, ${cuts.work} cuts, ${wrong.length} wrong\n`,
    )
    expect(wrong).toEqual([])
    expect(recording.events.filter(({ kind }) => kind === 'wrote').length).toBeGreaterThan(1000)
  })

  it.each(
    everySo(
      2,
      readMigrations()
        .slice(0, -1)
        .map(({ number }) => number),
    ),
  )(
    `of a book at layout %i being brought up to date leaves every step old or new and ends in the same book (${cuts.steps} cuts)`,
    async (from) => {
      const folder = temporaryFolder()
      const path = join(folder, 'jobs.book')
      const migrations = readMigrations()
      const states = layouts(path, from)
      const recording = record(folder, worker, ['open', path])
      const wrong: string[] = []
      await overCuts(
        recording,
        { count: cuts.steps, seed: 72 + from, within: temporaryFolder() },
        async (cut) => {
          const before = lookedAt(join(cut.folder, 'jobs.book'))
          if (!states.includes(before.digest)) wrong.push(told(cut, 'a step is there in part'))
          wrong.push(
            ...[...before.faults, ...copyFaults(cut.folder, from, states)].map((fault) => told(cut, fault)),
          )
          const after = await opened(cut)
          if (after.digest !== states.at(-1)) wrong.push(told(cut, 'is not brought up to date'))
          wrong.push(
            ...[...after.faults, ...copyFaults(cut.folder, from, states)].map((fault) => told(cut, fault)),
          )
        },
      )
      process.stdout.write(
        `powerCut: from layout ${from} to ${migrations.length}, ${cuts.steps} cuts, ${wrong.length} wrong\n`,
      )
      expect(wrong).toEqual([])
    },
  )

  it(`while a book is made leaves none or a whole one (${cuts.making} cuts)`, async () => {
    const folder = temporaryFolder()
    const recording = record(folder, worker, ['open', join(folder, 'jobs.book')])
    const whole = lookedAt(join(folder, 'jobs.book')).digest
    const found = { none: 0, whole: 0 }
    await overCuts(recording, { count: cuts.making, seed: 75, within: temporaryFolder() }, async (cut) => {
      found[existsSync(join(cut.folder, 'jobs.book')) ? 'whole' : 'none'] += 1
      expect(await opened(cut), told(cut, 'is opened')).toEqual({ digest: whole, faults: [] })
    })
    process.stdout.write(
      `powerCut: while a book is made, ${cuts.making} cuts: ${found.none} left none, ${found.whole} a whole one\n`,
    )
    expect(found.none).toBeGreaterThan(0)
    expect(found.whole).toBeGreaterThan(0)
  })

  it(`would be found out by these cuts if a commit weren’t forced to the disk (${cuts.loose} cuts at NORMAL)`, async () => {
    const folder = temporaryFolder()
    const path = join(folder, 'jobs.book')
    const prepared = await prepare(path)
    const recording = record(folder, worker, ['loose', path, '60', JSON.stringify(prepared)])
    const found = { lost: 0 }
    await overCuts(recording, { count: cuts.loose, seed: 76, within: temporaryFolder() }, async (cut) => {
      const { digest } = await opened(cut)
      if (!mayHold(recording, cut.said).includes(digest)) found.lost += 1
    })
    process.stdout.write(
      `powerCut: at synchronous = NORMAL ${found.lost} of ${cuts.loose} cuts lost what was said to be kept\n`,
    )
    expect(found.lost).toBeGreaterThan(cuts.loose / 10)
  })
})
