import { faultWords } from './discreet.ts'

type Terminal = { on: (event: 'error', told: () => void) => unknown }

/** What of the process is listened to. */
type Watched = {
  on: (event: 'uncaughtException' | 'unhandledRejection', told: (error: unknown) => void) => unknown
  stdout: Terminal
  stderr: Terminal
}

/**
 * A fault that nothing caught goes to the log and the program goes on: the book keeps each entry as it is made, so there
 * is nothing to rescue by stopping, and no page of code is ever put before the person. A terminal that was closed meanwhile takes
 * no line any more: that isn't told, as there is nowhere to tell it, and telling it would fail again and again.
 */
export const catchFaults = (process: Watched, log: (line: string) => void): void => {
  for (const terminal of [process.stdout, process.stderr]) terminal.on('error', () => undefined)
  process.on('uncaughtException', (error) => log(`nothing caught: ${faultWords(error)}`))
  process.on('unhandledRejection', (error) => log(`nothing waited for: ${faultWords(error)}`))
}
