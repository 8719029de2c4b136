import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { faultWords } from './discreet.ts'

/** The clock: this moment as ISO text. */
export const now = (): string => new Date().toISOString()

/** Writes what went wrong to standard error, with the time; the person at the bench never sees it. */
export const logLine = (line: string): void => {
  process.stderr.write(`${now()} ${line}\n`)
}

/** Past this the log starts anew, keeping one older file: nobody reads further back. Bytes. */
const mostLog = 1_000_000

const isLong = (path: string): boolean => (statSync(path, { throwIfNoEntry: false })?.size ?? 0) > mostLog

/**
 * Writes the log to a file as well, for a window that was opened without a terminal, and to the terminal (alsoTo). Faults come
 * in faultWords, which leave out what anybody typed. A disk that takes no log is no
 * reason to stop work: then standard error is all there is.
 */
export const logInto = (
  folder: string,
  alsoTo: (line: string) => void = logLine,
): ((line: string) => void) => {
  const path = join(folder, 'bracework.log')
  return (line) => {
    alsoTo(line)
    try {
      mkdirSync(folder, { recursive: true })
      if (isLong(path)) renameSync(path, `${path}.old`)
      appendFileSync(path, `${now()} ${line}\n`)
    } catch (error) {
      alsoTo(`the log can't be written: ${faultWords(error)}`)
    }
  }
}
