import { spawn } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The project's own folder. */
export const project = fileURLToPath(new URL('../../', import.meta.url))

const specFolder = join(project, 'db/demo/specs')

/** The example specs beside the demo data: what each is called, where it is, what it holds. */
export const exampleSpecs = readdirSync(specFolder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => ({ name: name.replace('.json', ''), path: join(specFolder, name) }))

/** A spec file's text as the value it holds. */
export const readJson = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'))

export type Ended = { code: number | null; out: string; errors: string[] }

/** Runs one of the program's commands in a process of its own, with neither display nor book. */
export function runCommand(name: 'card' | 'buy', args: string[]): Promise<Ended> {
  return new Promise((done, failed) => {
    const child = spawn(process.execPath, [join(project, `electron/commands/${name}.ts`), ...args], {
      cwd: project,
      env: { PATH: process.env['PATH'] ?? '' },
    })
    let out = ''
    let said = ''
    child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text))
    child.stderr.setEncoding('utf8').on('data', (text: string) => (said += text))
    child.once('error', failed)
    child.once('close', (code) => done({ code, out, errors: said.split('\n').filter((line) => line !== '') }))
  })
}

/** Does something in a folder of its own, which is gone afterwards. */
export async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-'))
  try {
    return await work(folder)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
