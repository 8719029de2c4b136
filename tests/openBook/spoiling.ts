import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** Rows by the list they stand in, as a file holds them. */
export type Rows = Record<string, Record<string, unknown>[]>

/** Changes the rows of a file. */
export const rewrite = (folder: string, place: string, change: (rows: Rows) => void): void => {
  const rows = JSON.parse(readFileSync(join(folder, place), 'utf8')) as Rows
  change(rows)
  writeFileSync(join(folder, place), JSON.stringify(rows))
}

/** Changes a file's text; it must be there to be changed. */
export const inText = (folder: string, place: string, from: string | RegExp, to: string): void => {
  const text = readFileSync(join(folder, place), 'utf8')
  const spoilt = text.replace(from, to)
  if (spoilt === text) throw new Error(`nothing to spoil in ${place}`)
  writeFileSync(join(folder, place), spoilt)
}

/** The first row of a list. */
export const first = (rows: Rows, table: string): Record<string, unknown> => rows[table]?.[0] ?? {}
