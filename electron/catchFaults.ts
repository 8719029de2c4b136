import { faultWords } from './discreet.ts'

/** What of the process is listened to. */
type Watched = {
  on: (event: 'uncaughtException' | 'unhandledRejection', told: (error: unknown) => void) => unknown
}

/**
 * A fault that nothing caught goes to the log and the program goes on: the book keeps each entry as it is made, so there
 * is nothing to rescue by stopping, and no page of code is ever put before the person.
 */
export const catchFaults = (process: Watched, log: (line: string) => void): void => {
  process.on('uncaughtException', (error) => log(`nothing caught: ${faultWords(error)}`))
  process.on('unhandledRejection', (error) => log(`nothing waited for: ${faultWords(error)}`))
}
