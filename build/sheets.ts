import { nodeFault, provideTestPrograms } from './machine.ts'
import { runVitest } from './runVitest.ts'

/** `npm run sheets`: takes the pictures of every page of every sheet anew, to be looked at and kept. */
const sheets = (): number => {
  const fault = nodeFault() ?? provideTestPrograms()
  if (fault !== undefined) {
    process.stderr.write(`${fault}\n`)
    return 1
  }
  return runVitest(['tests/sheets/contactSheet.test.ts'], { BRACEWORK_SHEETS: '1' })
}

process.exitCode = sheets()
