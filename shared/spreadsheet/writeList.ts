import Papa from 'papaparse'
import type { Delimiter } from './delimiter.ts'
import { guard } from './guard.ts'

/**
 * Writes rows as a list that any spreadsheet opens: the mark for UTF-8 first, cells guarded against being worked out, each row ended
 * as spreadsheets end it. `readRows` and `unguard` give the cells back.
 */
export const writeList = (rows: readonly (readonly string[])[], delimiter: Delimiter = ','): string =>
  `\ufeff${Papa.unparse(
    rows.map((row) => row.map(guard)),
    { delimiter, newline: '\r\n' },
  )}\r\n`

/** Pence as a list has them, with a point and two places: 1250 is '12.50'. */
export const plainSum = (pence: number): string =>
  `${pence < 0 ? '-' : ''}${Math.floor(Math.abs(pence) / 100)}.${String(Math.abs(pence) % 100).padStart(2, '0')}`
