import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { inProject } from '../../build/paths.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'

/** A program that logs one fault to a terminal, and counts how often it came to log anything. */
const program = (counted: string): string => `
  import { writeFileSync } from 'node:fs'
  import { catchFaults } from ${JSON.stringify(inProject('electron/catchFaults.ts'))}
  import { logLine } from ${JSON.stringify(inProject('electron/log.ts'))}
  let told = 0
  catchFaults(process, (line) => {
    told += 1
    logLine(line)
  })
  process.stdin.once('end', () => {
    setTimeout(() => { throw new Error('a fault') }, 0)
    setTimeout(() => { writeFileSync(${JSON.stringify(counted)}, String(told)); process.exit(0) }, 400)
  }).resume()
`

it('a fault is told once, though the terminal it is told to was closed', async () => {
  const counted = join(temporaryFolder(), 'counted')
  const child = spawn(process.execPath, ['--no-warnings', '--input-type=module', '-e', program(counted)], {
    stdio: ['pipe', 'pipe', 'pipe'],
  })
  child.stderr.destroy()
  child.stdout.destroy()
  await once(child.stderr, 'close')
  child.stdin.end()
  const [code] = (await once(child, 'exit')) as [number]
  expect({ code, told: readFileSync(counted, 'utf8') }).toEqual({ code: 0, told: '1' })
})
