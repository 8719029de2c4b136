/** Writes what went wrong where whoever looks after the machine can read it, with the time; the person never sees it. */
export const logLine = (line: string): void => {
  process.stderr.write(`${new Date().toISOString()} ${line}\n`)
}

/** The clock: this moment as ISO text. */
export const now = (): string => new Date().toISOString()
