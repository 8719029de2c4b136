import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { inProject } from '../../build/paths.ts'
import { copiesFolder } from '../../db/keeping/copyNames.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'
import { filledBook } from './keptBook.ts'

type Reply = { ok: boolean; problems?: { code: string; message: string }[] }
type Report = {
  kept: number
  refused: Reply
  others: Record<string, Reply>
  stands: number
  room: Reply
  sound: string
  files: [string, number][]
}

/** A book with one copy, in a folder of its own. */
function bookIn(folder: string): string {
  const path = filledBook({ jobs: 12, papers: 2, path: join(folder, 'jobs.book') })
  mkdirSync(copiesFolder(path))
  copyFileSync(path, join(copiesFolder(path), '2026-02-28 17.00.00 closing.book'))
  return path
}

const job = inProject('tests/keeping/diskJob.ts')
const node = `'${process.execPath}' --no-warnings '${job}'`

function reportOf(command: string[], script: string): Report {
  const [program = 'sh', ...flags] = command
  const { status, stdout, stderr } = spawnSync(program, [...flags, script], {
    encoding: 'utf8',
    timeout: 120_000,
  })
  if (status !== 0 || stdout === '')
    throw new Error(`the program on the failing disk didn’t end well: ${stderr}`)
  return JSON.parse(stdout) as Report
}

/** What must hold of any disk that fails: nothing that was answered is lost, nothing half made lies about, each refusal is one plain sentence. */
function holds(report: Report, code: string, drive: string): void {
  expect(report.refused.problems).toHaveLength(1)
  expect(report.refused.problems?.[0]?.code).toBe(code)
  for (const [name, reply] of [['jobs.change', report.refused] as const, ...Object.entries(report.others)]) {
    if (reply.ok || name === 'papers.issue') continue
    const [problem] = reply.problems ?? []
    expect([name, problem?.message]).toEqual([name, expect.stringContaining(drive)])
    expect(problem?.message).not.toMatch(/SQLITE|Error|ENOSPC|EFBIG|\.ts/)
  }
  expect(report.stands).toBe(report.kept)
  expect(report.sound).toBe('ok')
  expect(report.files.filter(([, size]) => size === 0)).toEqual([])
  expect(report.files.filter(([name]) => /unfinished|coming/.test(name))).toEqual([])
  process.stdout.write(
    `${code}: ${report.kept} writings kept; refused: ${Object.entries(report.others)
      .filter(([, { ok }]) => !ok)
      .map(([name]) => name)
      .join(', ')}\n`,
  )
}

describe('a disk that is full', () => {
  it('loses nothing, leaves nothing half made, names the drive, and goes on when there is room again', () => {
    const folder = temporaryFolder()
    const [source, drive, stick] = ['source', 'WORKSHOP', 'STICK'].map((name) => join(folder, name))
    for (const one of [source, drive, stick]) mkdirSync(one ?? '')
    bookIn(source ?? '')
    // Small disks of the machine's memory, in a space of mounts of their own that goes with the program.
    const unshare = ['unshare', process.getuid?.() === 0 ? '-m' : '-rm', 'sh', '-ec']
    const report = reportOf(
      unshare,
      `mount -t tmpfs -o size=4m tmpfs '${drive}'; mount -t tmpfs -o size=8m tmpfs '${stick}';
       cp -r '${source}/.' '${drive}'; head -c 1000000 /dev/zero > '${drive}/ballast'; exec ${node} '${drive}/jobs.book' '${stick}'`,
    )
    holds(report, 'full', '“WORKSHOP”')
    expect(report.others['keeping.copy']?.problems?.[0]?.code).toBe('full')
    expect(report.others['keeping.restore']?.problems?.[0]?.code).toBe('full')
    expect(report.others['book.takeOut']?.problems?.[0]).toMatchObject({
      code: 'not-written',
      message: expect.stringMatching(
        /^There is no room left on the drive “WORKSHOP”, so the book wasn’t taken out/,
      ),
    })
    // One job goes out by way of the window, which needs no room on the book's drive.
    expect(report.others['job.takeOut']?.ok).toBe(true)
    // The way to make room again: a copy can still be taken away.
    expect(report.others['keeping.backUp']?.ok).toBe(true)
    expect(report.room.problems).toBeUndefined()
  })

  it('on the memory stick alone: the copy isn’t made there, the sentence names the stick, the book goes on', () => {
    const folder = temporaryFolder()
    const stick = join(folder, 'STICK')
    mkdirSync(stick)
    const path = bookIn(folder)
    const unshare = ['unshare', process.getuid?.() === 0 ? '-m' : '-rm', 'sh', '-ec']
    const script = `mount -t tmpfs -o size=64k tmpfs '${stick}'; exec ${node} '${path}' '${stick}' short`
    const report = reportOf(unshare, script)
    const [problem] = report.others['keeping.backUp']?.problems ?? []
    expect(problem).toMatchObject({ code: 'full', message: expect.stringContaining('“STICK”') })
    const [untaken] = report.others['book.takeOut']?.problems ?? []
    expect(untaken).toMatchObject({ code: 'not-written', message: expect.stringContaining('“STICK”') })
    expect(report.files.filter(([name]) => /Bracework/.test(name))).toEqual([])
    expect(report.room.problems).toBeUndefined()
  })
})

describe('a disk that answers with an error', () => {
  it('loses nothing, leaves nothing half made, and says so in one sentence', () => {
    const folder = temporaryFolder()
    const stick = join(folder, 'stick')
    mkdirSync(stick)
    const path = bookIn(folder)
    // Writing past a file's greatest size fails as a bad sector does; the signal that would end the program is put aside.
    const report = reportOf(['sh', '-ec'], `trap '' XFSZ; ulimit -f 1600; exec ${node} '${path}' '${stick}'`)
    holds(report, 'disk', 'disk')
  })
})
