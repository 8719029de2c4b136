import { readdirSync, readFileSync } from 'node:fs'
import { cycleFaults } from './layers/cycles.ts'
import type { SourceFile } from './layers/imports.ts'
import { barrelFaults, purityFaults } from './layers/purity.ts'
import { importFaults } from './layers/rooms.ts'
import { inProject } from './paths.ts'

const rooms = ['shared', 'db', 'electron', 'renderer', 'build', 'tests']

/** Every TypeScript and Vue file of the project's rooms. */
export const projectSources = (): SourceFile[] =>
  rooms.flatMap((room) =>
    readdirSync(inProject(room), { recursive: true, encoding: 'utf8' })
      .map((name) => `${room}/${name.replaceAll('\\', '/')}`)
      .filter((path) => /\.(ts|mts|vue)$/.test(path) && !path.startsWith('build/out/'))
      .map((path) => ({ path, text: readFileSync(inProject(path), 'utf8') })),
  )

/** Everything that breaks the rules on who may use whom, one line a fault. */
export const layerFaults = (files: readonly SourceFile[]): string[] => [
  ...files.flatMap((file) => [...importFaults(file), ...purityFaults(file), ...barrelFaults(file)]),
  ...cycleFaults(files),
]

if (import.meta.main) {
  const files = projectSources()
  const faults = layerFaults(files)
  for (const fault of faults) process.stderr.write(`${fault}\n`)
  process.stdout.write(`${files.length} files, ${faults.length} faults\n`)
  process.exitCode = faults.length > 0 ? 1 : 0
}
