import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'

const folder = join(process.cwd(), 'tests/fixtures/whole')

/** The example gates of every kind, by their file's name. Throws where one can't be read. */
export const wholeSpecs: { name: string; spec: GateSpec }[] = readdirSync(folder)
  .sort()
  .map((file) => {
    const read = parseSpec(JSON.parse(readFileSync(join(folder, file), 'utf8')))
    if (!read.ok) throw new Error(`${file}: ${JSON.stringify(read.problems)}`)
    return { name: file.replace('.json', ''), spec: read.value }
  })
