import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it, onTestFinished } from 'vitest'
import { copiesFolder } from '../../db/keeping/copyNames.ts'
import { hosted } from '../../build/hosted.ts'
import type { RequestName } from '../../shared/contract.ts'
import type { KeepingState } from '../../shared/keeping/keepingModel.ts'
import type { Problem, Result } from '../../shared/problem.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'
import { sampleSize } from '../fixtures/sample.ts'
import { asker, valueOf, type Ask } from './asker.ts'
import { twinLookedAt } from './bookDigest.ts'
import { breakDisk, type DiskFault } from './brokenDisk.ts'
import { tracer } from './record.ts'
import { prepare } from './workshopBook.ts'

type Ground = { path: string; stick: string; copy: string; ask: Ask; pid: number; job: number; edits: number }
type Way = { name: RequestName; payload: (ground: Ground) => object; faults: Omit<DiskFault, 'files'>[] }

const forcing = (from: number) => ({ call: 'fsync', error: 'EIO', from }) as const
const naming = { call: 'rename', error: 'EIO', from: 1 } as const
const full = (from: number) => ({ call: 'pwrite64', error: 'ENOSPC', from }) as const
// Another error than want of room the system's library gets round, by carrying the bytes itself.
const carrying = { call: 'copy_file_range', error: 'ENOSPC', from: 1 } as const
const making = { call: 'mkdir', error: 'ENOSPC', from: 1 } as const

/** The ways in which files are written beside the book or in a folder, each with how the disk fails it. */
const ways: Way[] = [
  {
    name: 'book.takeOut',
    payload: ({ stick }) => ({ folder: stick }),
    faults: [forcing(1), making, naming, forcing(3)],
  },
  { name: 'keeping.copy', payload: () => ({}), faults: [naming, forcing(1), full(2), full(30)] },
  {
    name: 'keeping.backUp',
    payload: ({ stick }) => ({ folder: stick }),
    faults: [carrying, naming, forcing(1), full(12)],
  },
  {
    name: 'keeping.restore',
    payload: ({ copy }) => ({ name: copy }),
    faults: [
      carrying,
      forcing(2),
      forcing(1),
      naming,
      forcing(3),
      forcing(4),
      forcing(5),
      forcing(6),
      forcing(7),
    ],
  },
]

const trials = Array.from({ length: 9 }, (_, turn) => turn).flatMap((turn) =>
  ways.map((way) => ({ ...way, fault: way.faults[turn % way.faults.length] ?? naming })),
)

/** Every file below a folder, by its name from there on, with its size. */
const filesBelow = (folder: string): [string, number][] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => [name, statSync(join(folder, name)).size])

/** What lies about that is empty, half made or, under a book's name, no whole book. */
function lyingFaults(folder: string): string[] {
  const files = filesBelow(folder)
  const halfMade = files.filter(
    ([name, size]) => /unfinished|coming/.test(name) || (size === 0 && !/-wal$|-shm$/.test(name)),
  )
  const broken = files.filter(
    ([name]) => name.endsWith('.book') && twinLookedAt(join(folder, name)).faults.length > 0,
  )
  return [...halfMade, ...broken].map(([name, size]) => `${name} lies there, ${size} bytes`)
}

/** A book that was put in place and couldn't be opened on the failing disk is told by its state. */
const troubleIn = (value: unknown): Pick<Problem, 'code' | 'message'> | undefined =>
  typeof value === 'object' && value && 'trouble' in value
    ? ((value as KeepingState).trouble ?? undefined)
    : undefined

/** All that is wrong with an answer: it must be one plain sentence that names the drive. */
function answerFaults(reply: Result<unknown>): string[] {
  const [problem, ...more] = reply.ok ? [troubleIn(reply.value)] : reply.problems
  if (!problem) return ['said to be done']
  const message = problem.message
  return [
    ...(more.length > 0 ? ['more than one sentence'] : []),
    ...(['full', 'disk', 'not-written', 'not-writable'].includes(problem.code)
      ? []
      : [`${problem.code}: ${message}`]),
    ...(/this computer’s disk/i.test(message) ? [] : [`names no drive: ${message}`]),
    ...(/SQLITE|Error|ENOSPC|EIO|\.ts/.test(message) ? [`not for the person: ${message}`] : []),
  ]
}

async function groundFor(): Promise<Ground> {
  const folder = temporaryFolder()
  const [path, stick] = [join(folder, 'jobs.book'), join(folder, 'stick')]
  mkdirSync(stick)
  const { jobs } = await prepare(path)
  const host = await hosted(path)
  onTestFinished(host.stop)
  const ask = await asker(host.address)
  const copy = (await valueOf(ask('keeping.copy', {}))).name
  const [id = 0] = jobs
  const version = (await valueOf(ask('jobs.open', { id }))).version
  await valueOf(ask('papers.issue', { jobId: id, format: 'a4', version }))
  return { path, stick, copy, ask, pid: host.pid, job: id, edits: 0 }
}

/** What stands once the disk is mended: the book as it was, or, where it was to be replaced, the copy with the book that was kept beside it. */
async function standingFaults(
  { path, copy, ask }: Ground,
  before: string,
  replacing: boolean,
): Promise<string[]> {
  const { trouble } = await valueOf(ask('keeping.again', {}))
  if (trouble) return [`the book doesn’t open once mended: ${trouble.message}`]
  const { digest, faults } = twinLookedAt(path)
  const copies = copiesFolder(path)
  const kept = () => readdirSync(copies).some((name) => twinLookedAt(join(copies, name)).digest === before)
  const replaced = replacing && digest === twinLookedAt(join(copies, copy)).digest && kept()
  return [...faults, ...(digest === before || replaced ? [] : ['the book isn’t what it was'])]
}

/** One way of writing files while the disk fails it. Gives all that is wrong. */
async function triedOn(ground: Ground, { name, payload, fault }: (typeof trials)[number]): Promise<string[]> {
  const { path, ask, pid } = ground
  ground.edits += 1
  const changes = [{ path: 'notes', value: `edit ${ground.edits}` }]
  await valueOf(ask('jobs.change', { id: ground.job, changes }))
  const before = twinLookedAt(path).digest
  const disk = await breakDisk(pid, { ...fault, files: [] })
  const reply = await ask(name, payload(ground))
  await disk.mend()
  const wrong = [
    ...answerFaults(reply),
    ...lyingFaults(join(path, '..')),
    ...(await standingFaults(ground, before, name === 'keeping.restore')),
  ]
  return wrong.map((what) => `${name}, ${fault.error} at ${fault.call} ${fault.from}: ${what}`)
}

describe('a disk that fails while files are written', () => {
  const count = sampleSize('disk faults of files', { usual: 5, long: trials.length, of: 'faults' })
  it(`leaves nothing empty or half made, says so in one sentence with the drive, and does it all once mended (${count} faults)`, async () => {
    const ground = await groundFor()
    const wrong: string[] = []
    for (const trial of trials.slice(0, count)) wrong.push(...(await triedOn(ground, trial)))
    for (const { name, payload } of ways)
      if (!(await ground.ask(name, payload(ground))).ok) wrong.push(`${name}: not done once mended`)
    process.stdout.write(
      `disk faults of files: ${count} over ${ways.length} ways of writing them, ${wrong.length} wrong\n`,
    )
    expect(wrong).toEqual([])
    expect(readdirSync(ground.stick)).toHaveLength(2)
  })

  it('while the copy of the day is made: none lies there, it is told with the drive, work goes on', async () => {
    const path = join(temporaryFolder(), 'jobs.book')
    const { jobs } = await prepare(path)
    const rule = ['-e', 'trace=rename', '-e', 'inject=rename:error=EIO:when=1+']
    for (const name of readdirSync(join(path, '..', 'jobs-copies')))
      rmSync(join(path, '..', 'jobs-copies', name))
    const host = await hosted(path, { under: [tracer(), '-f', ...rule, '-o', '/dev/null'] })
    onTestFinished(host.stop)
    const ask = await asker(host.address)
    await expect
      .poll(async () => (await valueOf(ask('keeping.state', {}))).fault, { timeout: 15_000 })
      .toMatch(/^This computer’s disk/)
    const changes = [{ path: 'title', value: 'Yard gate' }]
    expect((await ask('jobs.change', { id: jobs[0], changes })).ok).toBe(true)
    await host.stop()
    expect(filesBelow(join(path, '..', 'jobs-copies'))).toEqual([])
  })
})
