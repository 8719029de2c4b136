import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { handedFiles } from '../../electron/handedFile.ts'
import { jobFileEnding } from '../../shared/jobFileEnding.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-handed-'))
const named = (name: string): string => join(folder, name)

beforeAll(() => {
  writeFileSync(named('one.gate-job'), 'the first')
  writeFileSync(named('Two.GATE-JOB'), 'the second')
  writeFileSync(named('bytes.gate-job'), Buffer.from([0x80, 0xff]))
  writeFileSync(named('heavy.gate-job'), '')
  truncateSync(named('heavy.gate-job'), 48 * 1024 * 1024 + 1)
  mkdirSync(named('folder.gate-job'))
})
afterAll(() => rmSync(folder, { recursive: true }))

const handed = () => {
  const log: string[] = []
  return { ...handedFiles(jobFileEnding, (line) => void log.push(line)), log }
}

test('a job’s file is given once, by its name and its text, wherever the start stood', () => {
  const files = handed()
  files.note(['bracework', named('one.gate-job')], '/')
  expect(files.take()).toEqual({ name: 'one.gate-job', text: 'the first' })
  expect(files.take()).toBeNull()
  files.note(['Two.GATE-JOB'], folder)
  expect(files.take()).toEqual({ name: 'Two.GATE-JOB', text: 'the second' })
})

test('of several the last counts, and nothing else that a program is started with', () => {
  const files = handed()
  files.note(['--open=x.gate-job', named('one.gate-job'), named('Two.GATE-JOB'), '--flag', 'notes.txt'], '/')
  files.note(['--x.gate-job', 'job', named('gate-job')], '/')
  expect(files.take()?.text).toBe('the second')
})

test.each(['missing', 'bytes', 'heavy', 'folder'])(
  'a file that can’t be read as a job (%s) is told in the log, without its name, and given to nobody',
  (name) => {
    const files = handed()
    files.note([named(`${name}.gate-job`)], '/')
    expect(files.take()).toBeNull()
    expect(files.log).toHaveLength(1)
    expect(files.log[0]).toMatch(/^a file handed over can’t be read: /)
    expect(files.log[0]?.split('\n')[0]).not.toContain('gate-job')
  },
)
