import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { logInto } from '../../electron/log.ts'

test('what went wrong is written with its time, and a long log starts anew beside the older one', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-log-'))
  const log = logInto(join(folder, 'logs'))
  const path = join(folder, 'logs', 'bracework.log')
  log('the first fault')
  log('the second fault')
  const lines = readFileSync(path, 'utf8').trim().split('\n')
  expect(lines).toEqual([
    expect.stringMatching(/^\d{4}-\d\d-\d\dT\S+Z the first fault$/),
    expect.stringMatching(/ the second fault$/),
  ])
  writeFileSync(path, 'x'.repeat(1_000_001))
  log('after much else')
  expect(statSync(`${path}.old`).size).toBe(1_000_001)
  expect(readFileSync(path, 'utf8')).toMatch(/^\S+ after much else\n$/)
  rmSync(folder, { recursive: true })
})

test('a disk that takes no log stops nothing', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-log-'))
  writeFileSync(join(folder, 'logs'), 'a file where the folder should be')
  expect(() => logInto(join(folder, 'logs'))('a fault')).not.toThrow()
  rmSync(folder, { recursive: true })
})
