import type { LengthUnit } from '../job/job.ts'

/** One thing a text can mean: its length in mm, and how that is said in both units. */
export type Meaning = { mm: number; said: string }

/**
 * What became of a text typed into a length field.
 * length: understood; echo says it in both units, the job's first.
 * ask: it could mean more than one thing; the person picks one of options (at least one). Nothing is guessed.
 * problem: not a length that the field takes; message is a whole sentence with the way out.
 * empty: nothing typed.
 */
export type Reading =
  | { kind: 'length'; mm: number; echo: string }
  | { kind: 'ask'; question: string; options: Meaning[] }
  | { kind: 'problem'; message: string }
  | { kind: 'empty' }

/** What a field takes: allowZero lets 0 through (insets, gaps); max in mm, 10000 unless given. */
export type LengthLimits = { allowZero?: boolean; max?: number }

/** One reader for every length field. */
export function readLength(text: string, _unit: LengthUnit, _limits: LengthLimits = {}): Reading {
  const typed = text.trim()
  if (typed === '') return { kind: 'empty' }
  return { kind: 'problem', message: `‘${typed}’ was not understood. Type a length such as 1830 mm.` }
}
