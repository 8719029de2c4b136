import { nodeFault, provideTestPrograms } from './machine.ts'
import { runVitest } from './runVitest.ts'

/**
 * `npm test`: sees that the machine has what the tests drive, builds the program once, then runs everything, end to end
 * and packaging included. Arguments go to Vitest; its closing lines are the last.
 */
const test = async (): Promise<number> => {
  const fault = nodeFault() ?? provideTestPrograms()
  if (fault !== undefined) {
    process.stderr.write(`${fault}\n`)
    return 1
  }
  const { bundleIfStale } = await import('./bundle.ts')
  await bundleIfStale()
  return runVitest(process.argv.slice(2))
}

process.exitCode = await test()
