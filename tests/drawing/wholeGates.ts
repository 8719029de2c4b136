import { readdirSync, readFileSync } from 'node:fs'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'

const folder = new URL('../fixtures/whole/', import.meta.url)

/** The example gates, each in a file of its own, by the file's name. Throws where one can't be read. */
export const wholeGates: { name: string; spec: GateSpec }[] = readdirSync(folder)
  .sort()
  .map((file) => {
    const read = parseSpec(JSON.parse(readFileSync(new URL(file, folder), 'utf8')))
    if (!read.ok) throw new Error(`${file}: ${JSON.stringify(read.problems)}`)
    return { name: file.replace('.json', ''), spec: read.value }
  })
