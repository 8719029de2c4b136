import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { inProject } from './paths.ts'

/** How long fetching Electron may take before the browser is used instead, milliseconds. */
const patience = 120_000

/** The Electron program's path, or undefined where it isn't on the machine. Looks only; nothing is fetched. */
export const electronBinary = (folder = inProject('node_modules/electron')): string | undefined => {
  const note = join(folder, 'path.txt')
  if (!existsSync(note)) return undefined
  const program = join(folder, 'dist', readFileSync(note, 'utf8').trim())
  return existsSync(program) ? program : undefined
}

/** Lets the electron package fetch its program, in a process of its own so that a dead network can be given up on. */
export const fetchElectron = (): void => {
  const script = inProject('node_modules/electron/install.js')
  if (existsSync(script)) spawnSync(process.execPath, [script], { stdio: 'ignore', timeout: patience })
}
