import { readdirSync, readFileSync } from 'node:fs'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { inProject } from '../paths.ts'

/** The example specs beside the demo data, in the order of their names. */
export function exampleSpecs(): GateSpec[] {
  const folder = inProject('db/demo/specs')
  return readdirSync(folder)
    .sort()
    .map((name) => {
      const read = parseSpec(JSON.parse(readFileSync(`${folder}/${name}`, 'utf8')))
      if (!read.ok) throw new Error(`${name} is no spec`)
      return read.value
    })
}
