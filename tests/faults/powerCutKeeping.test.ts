import { copyFileSync, existsSync, mkdirSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { hashOfFile } from '../../db/keeping/awayCopy.ts'
import { readMigrations } from '../../db/migrate.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'
import { soak } from '../fixtures/sample.ts'
import { lookedAt, twinLookedAt } from './bookDigest.ts'
import { overCuts, type Cut } from './cuts.ts'
import { layouts } from './earlierBook.ts'
import { record } from './record.ts'
import { weakened, type DiskEvent, type Recording } from './recording.ts'
import { carried, prepare } from './workshopBook.ts'

const cuts = soak ? { kept: 210, held: 210, weak: 70 } : { kept: 14, held: 7, weak: 28 }
const worker = fileURLToPath(new URL('./bookWork.ts', import.meta.url))
const folders = ['jobs-copies', 'stick'] as const

/** A book, a copy of it from an earlier day, one from before the layout was what it is, and a folder to carry copies to. Gives the recording of what is done with them. */
async function recorded(how: 'keep' | 'held'): Promise<Ground> {
  const folder = temporaryFolder()
  const path = join(folder, 'jobs.book')
  const elsewhere = temporaryFolder()
  const prepared = await prepare(join(elsewhere, 'jobs.book'))
  const earlier = layouts(join(elsewhere, 'earlier.book'), readMigrations().length - 1)
  copyFileSync(join(elsewhere, 'jobs.book'), path)
  for (const one of folders) mkdirSync(join(folder, one))
  copyFileSync(path, join(folder, 'jobs-copies', '2026-02-28 17.00.00 closing.book'))
  copyFileSync(
    join(elsewhere, 'earlier.book'),
    join(folder, 'jobs-copies', '2026-02-27 17.00.00 closing.book'),
  )
  const copies = [lookedAt(path).digest, ...earlier]
  const recording = record(folder, worker, [how, path, soak ? '2' : '1', JSON.stringify(prepared)])
  return { recording, copies, steps: stepsOf(recording) }
}

type Line = { kept?: true; holds?: string; copy?: string; replaced?: true }
/** One step: what the book held after it, and what the program gave its word for. The first is what stood at the beginning. */
type Step = { holds: string; copy?: string | undefined; replaced?: true | undefined }
type Ground = { recording: Recording; copies: string[]; steps: Step[] }

const linesOf = (words: string): Line[] =>
  words
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Line)

function stepsOf({ events }: Recording): Step[] {
  const lines = linesOf(events.map((event) => (event.kind === 'said' ? event.words : '')).join(''))
  return lines.flatMap(({ holds }, place): Step[] => {
    if (holds === undefined) return []
    const { copy, replaced } = lines[place - 1] ?? {}
    return [{ holds, copy, replaced }]
  })
}

const looks = new Map<string, ReturnType<typeof twinLookedAt>>()
/** A file like one that was looked at before holds what that one did: most copies are the same in every cut. */
function lookedAtOnce(path: string): ReturnType<typeof twinLookedAt> {
  const parts = ['', '-wal'].map((part) => (existsSync(`${path}${part}`) ? hashOfFile(`${path}${part}`) : ''))
  const seen = looks.get(parts.join()) ?? twinLookedAt(path)
  looks.set(parts.join(), seen)
  return seen
}

/** Every file under a book's name among the copies and on the stick, with what it holds. */
const booksIn = (folder: string) =>
  folders
    .filter((one) => existsSync(join(folder, one)))
    .flatMap((one) =>
      readdirSync(join(folder, one))
        .filter((name) => name.endsWith('.book'))
        .map((name) => ({ name: `${one}/${name}`, ...lookedAtOnce(join(folder, one, name)) })),
    )

/** A book's name among the copies leads to a whole book, one that stood at some time. */
function notWhole({ copies, steps }: Ground, folder: string): string[] {
  const known = new Set([...copies, ...steps.map(({ holds }) => holds)])
  return booksIn(folder)
    .filter(({ digest, faults }) => faults.length > 0 || !known.has(digest))
    .map(
      ({ name, faults }) => `${name} is no whole book: ${faults.join('; ') || 'it holds what never stood'}`,
    )
}

const keptBy = (said: string): number => linesOf(said).filter((line) => line.kept).length

/** Copies that were said to be there and aren't. */
function copiesLost({ steps }: Ground, { folder, said }: Cut): string[] {
  const found = booksIn(folder)
  return steps
    .slice(1, keptBy(said) + 1)
    .filter(
      ({ copy, holds }) =>
        copy !== undefined && !found.some((one) => one.name === copy && one.digest === holds),
    )
    .map(({ copy }) => `${copy} is gone`)
}

/** What was said to be kept in the book, or was when another took its place, and isn't. */
function lost({ steps }: Ground, { folder, said }: Cut, digest: string): string[] {
  const kept = keptBy(said)
  const found = booksIn(folder)
  const stands = [kept, kept + 1].find((place) => steps[place]?.holds === digest)
  if (stands === undefined) return ['the book holds something else']
  return steps
    .slice(1, stands + 1)
    .filter(({ replaced }, place) => replaced && !found.some((one) => one.digest === steps[place]?.holds))
    .map(() => 'the book that was replaced isn’t kept')
}

/** What must hold of copies at any moment, also before the program is started again. */
const asItLies = async (ground: Ground, cut: Cut): Promise<string[]> => [
  ...notWhole(ground, cut.folder),
  ...copiesLost(ground, cut),
]

/** All that is wrong with what one cut left: before the program is started on it, and after. */
async function onceStarted(ground: Ground, cut: Cut): Promise<string[]> {
  const path = join(cut.folder, 'jobs.book')
  const wrong = await asItLies(ground, cut)
  await (await carried(path)).close()
  const { digest, faults } = twinLookedAt(path)
  wrong.push(...faults, ...(await asItLies(ground, cut)), ...lost(ground, cut, digest))
  if (existsSync(`${path}.coming`)) wrong.push('what was coming still lies there')
  return wrong.map((what) => `after event ${cut.after}, ${cut.manner}: ${what}`)
}

type Trial = { count: number; seed: number; look?: typeof onceStarted }
async function tried(
  ground: Ground,
  { count, seed, look = onceStarted }: Trial,
): Promise<{ wrong: string[]; found: string }> {
  const wrong: string[] = []
  await overCuts(ground.recording, { count, seed, within: temporaryFolder(), turns: true }, async (cut) => {
    wrong.push(...(await look(ground, cut)))
  })
  const { events } = ground.recording
  const names = events.filter(({ kind }) => kind === 'renamed' || kind === 'linked').length
  return {
    wrong,
    found: `${events.length} recorded events, ${names} new names, ${count} cuts, ${wrong.length} wrong`,
  }
}

type Forcing = Parameters<Parameters<typeof weakened>[1]>[0]
const weaknesses: [string, (event: Forcing) => boolean][] = [
  ['copies aren’t forced before they are named', ({ name }) => !/unfinished|coming/.test(name)],
  ['no folder is forced', ({ kind }) => kind !== 'forced folder'],
]

describe('powerCut: copies made here and on a stick, and brought back', () => {
  it(`leave only whole books under their names, the old one or the new one open, all that was kept still there (${cuts.kept} cuts)`, async () => {
    const ground = await recorded('keep')
    const { wrong, found } = await tried(ground, { count: cuts.kept, seed: 81 })
    process.stdout.write(`powerCut: keeping and bringing back, ${found}\n`)
    expect(wrong).toEqual([])
    expect(ground.recording.events.some(({ kind }: DiskEvent) => kind === 'copied')).toBe(true)
    for (const [weakness, forces] of weaknesses) {
      const weak = { ...ground, recording: weakened(ground.recording, forces) }
      const { wrong: lostBy } = await tried(weak, { count: cuts.weak, seed: 82, look: asItLies })
      process.stdout.write(`powerCut: where ${weakness}, ${lostBy.length} wrong in ${cuts.weak} cuts\n`)
      expect(lostBy.length, weakness).toBeGreaterThan(0)
    }
  })

  it(`do so while another program looks into the book, whose last pages then lie beside it (${cuts.held} cuts)`, async () => {
    const { wrong, found } = await tried(await recorded('held'), { count: cuts.held, seed: 83 })
    process.stdout.write(`powerCut: bringing back a book that is looked into, ${found}\n`)
    expect(wrong).toEqual([])
  })
})
