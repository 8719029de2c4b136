import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { homedir, tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { faultWords, withoutNames } from '../../electron/discreet.ts'
import { faultMark } from '../../electron/faultMark.ts'
import { logInto } from '../../electron/log.ts'

test.each([
  [`Unexpected token 'M', "Müller & d"... is not valid`, 'Unexpected token …, …... is not valid'],
  ['no job of “Ångström & Sons” is there', 'no job of … is there'],
  ['the card of job 7 is refused: [{"customer":"Peg Sash"}]', 'the card of job 7 is refused: …'],
  ['cannot send to peg@sash.example now', 'cannot send to … now'],
  ['call 01632 960001 or +44 1632 960 001', 'call … or …'],
  [
    `cannot read properties of undefined (reading 'spec')`,
    'cannot read properties of undefined (reading the field spec)',
  ],
  [`needs pieces of the leaf, got 'Mrs O’Dell'`, 'needs pieces of the leaf, got …'],
  [`it can't be read and won't be`, `it can't be read and won't be`],
  ['UNIQUE constraint failed: jobs.number', 'UNIQUE constraint failed: jobs.number'],
])('%j stands in the log as %j', (message, kept) => {
  expect(withoutNames(message)).toBe(kept)
})

test('a fault is told by its kind, its code, its place in the program and its cause, without the folders they lie in', () => {
  const cause = Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' })
  const words = faultWords(new RangeError('whole pence are accepted, got 12.5', { cause }))
  expect(words).toMatch(
    /^RangeError: whole pence are accepted, got 12\.5\n {2}at .*discreet\.test\.ts:\d+:\d+/,
  )
  expect(words).toContain('caused by Error SQLITE_FULL: database or disk is full')
  expect(words).not.toContain(homedir())
  expect(words).not.toContain(process.cwd())
})

test('a message of several lines can’t pass itself off as a stack', () => {
  const error = new Error('first\n    at Peg Sash, 4 Mill Lane (x.ts:1:1)')
  expect(faultWords(error).split('\n').slice(1).join('\n')).not.toContain('Peg Sash')
})

test('what is thrown and is no error is told too', () => {
  expect(faultWords('“Peg Sash” went wrong')).toBe('… went wrong')
})

test('marks are six signs, none taken for another, and differ', () => {
  const marks = Array.from({ length: 500 }, faultMark)
  for (const mark of marks) expect(mark).toMatch(/^[ABCDEFGHJKLMNPQRTUVWXY346789]{6}$/)
  expect(new Set(marks).size).toBe(500)
})

test('a log keeps two files of at most a megabyte and a line each, however much is written', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-log-'))
  const log = logInto(folder, () => undefined)
  const line = 'x'.repeat(100_000)
  for (let count = 0; count < 40; count += 1) log(`${count} ${line}`)
  const sizes = ['bracework.log', 'bracework.log.old'].map((name) => readFileSync(join(folder, name)).length)
  for (const size of sizes) expect(size).toBeLessThan(1_200_000)
  expect(readFileSync(join(folder, 'bracework.log'), 'utf8')).toContain(' 39 xxx')
  rmSync(folder, { recursive: true })
})
