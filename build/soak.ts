import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { nodeFault, provideTestPrograms } from './machine.ts'
import { inProject } from './paths.ts'
import { runVitest } from './runVitest.ts'

/** What a test with a long form says somewhere in its source: it asks for that form itself, or takes its sample's size from the one place for sizes. */
const asksForLongForm = /BRACEWORK_SOAK|fixtures\/sample\.ts/

/** The tests that have a long form; each keeps a fixed, seeded sample for `npm test`. Found by what they say, so that none is forgotten. */
const longOnes = (): string[] =>
  readdirSync(inProject('tests'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join('tests', name))
    .filter((path) => asksForLongForm.test(readFileSync(inProject(path), 'utf8')))
    .sort()

/**
 * `npm run soak`: the long forms in full, some of them at the screens, so that the program is built first. A test asks for its long form by
 * BRACEWORK_SOAK=1 and says how large its sample was; what was run and how it ended comes last. Arguments name a part of them.
 */
const soak = async (): Promise<number> => {
  const fault = nodeFault() ?? provideTestPrograms()
  if (fault !== undefined) {
    process.stderr.write(`${fault}\n`)
    return 1
  }
  const { bundleIfStale } = await import('./bundle.ts')
  await bundleIfStale()
  const named = process.argv.slice(2)
  const run = named.length > 0 ? named : longOnes()
  const began = performance.now()
  const code = runVitest(run, { BRACEWORK_SOAK: '1' })
  const minutes = ((performance.now() - began) / 60_000).toFixed(1)
  const what = named.length > 0 ? named.join(', ') : `all ${run.length} files with a long form`
  process.stdout.write(`soak: ${what}, ${minutes} minutes, ${code === 0 ? 'all held' : 'NOT all held'}\n`)
  return code
}

process.exitCode = await soak()
