import { nodeFault, provideTestPrograms } from './machine.ts'
import { runVitest } from './runVitest.ts'

/** The tests whose long form takes more than a minute; each keeps a fixed, seeded sample for `npm test`. */
const longOnes = [
  'tests/property',
  'tests/geometry',
  'tests/reference',
  'tests/db',
  'tests/faults',
  'tests/e2e/scriptWords.test.ts',
  'tests/e2e/sweep.test.ts',
  'tests/keeping',
  'tests/units',
  'tests/buyingPlan',
  'tests/openBook',
  'tests/sheets',
]

/** `npm run soak`: the long forms in full, some of them at the screens, so that the program is built first. A test asks for its long form by BRACEWORK_SOAK=1. */
const soak = async (): Promise<number> => {
  const fault = nodeFault() ?? provideTestPrograms()
  if (fault !== undefined) {
    process.stderr.write(`${fault}\n`)
    return 1
  }
  const { bundleIfStale } = await import('./bundle.ts')
  await bundleIfStale()
  const named = process.argv.slice(2)
  return runVitest(named.length > 0 ? named : longOnes, { BRACEWORK_SOAK: '1' })
}

process.exitCode = await soak()
