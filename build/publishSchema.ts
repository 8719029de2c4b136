import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { toJsonSchema } from '@valibot/to-json-schema'
import { specShape } from '../shared/gate/spec.ts'
import { outFolder } from './paths.ts'

/**
 * The JSON Schema of a gate's file, made from the same definition that checks it. Rules that look at two fields
 * together (a pair needs a meeting gap) can't be said in a schema and stay with the reader, so a file that passes
 * the schema can still be refused; one that fails it always is.
 */
export const gateSpecSchema = (): object => ({
  title: 'Bracework gate',
  ...toJsonSchema(specShape, { ignoreActions: ['finite'], target: 'draft-2020-12' }),
})

/** Writes build/out/gateSpec.schema.json. */
export const publishSchema = (): void => {
  mkdirSync(outFolder, { recursive: true })
  writeFileSync(join(outFolder, 'gateSpec.schema.json'), `${JSON.stringify(gateSpecSchema(), null, 2)}\n`)
}
