import { lengthTolerance } from '../geometry/point.ts'
import { readLength } from '../units/readLength.ts'
import { writeForField } from '../units/writeLength.ts'
import type { GateEntry, LengthUnit } from './job.ts'
import { valueAt } from './specPath.ts'

type Typed = GateEntry['typed']

/** The words without those at a path and below it: what was typed for a brace goes when the brace goes. */
export const wordsForgotten = (typed: Typed, path: string): Typed =>
  Object.fromEntries(Object.entries(typed).filter(([key]) => key !== path && !key.startsWith(`${path}.`)))

/** The words with these at the path; '' forgets what stood there. */
export const wordsKept = (typed: Typed, path: string, words: string): Typed =>
  words === '' ? wordsForgotten(typed, path) : { ...typed, [path]: words }

const means = (words: string, unit: LengthUnit, mm: number): boolean => {
  const reading = readLength(words, unit, { allowZero: true })
  return reading.kind === 'length' && Math.abs(reading.mm - mm) <= lengthTolerance
}

/** Words with no length standing by them, as they were meant: a length that waits for its fellow is written anew in the other unit. */
function meantBefore(words: string, from: LengthUnit, to: LengthUnit): string {
  const reading = readLength(words, from, { allowZero: true })
  return reading.kind === 'length' && !means(words, to, reading.mm) ? writeForField(reading.mm, to) : words
}

/**
 * The words that still hold once the job's unit changes. A bare `1830` typed in a job in mm would be read as 1830 inches in a job in
 * inches, so words that meant the kept length before and no longer do are let go; the length itself stands. Words that
 * were never understood stay, since they are all there is; words understood that no length stands by are written in the new unit.
 */
export function wordsAfterUnitChange(entry: GateEntry, from: LengthUnit, to: LengthUnit): Typed {
  const kept = Object.entries(entry.typed).flatMap(([path, words]): [string, string][] => {
    const mm = valueAt(entry.spec, path.split('.'))
    if (typeof mm !== 'number') return [[path, meantBefore(words, from, to)]]
    return !means(words, from, mm) || means(words, to, mm) ? [[path, words]] : []
  })
  return Object.fromEntries(kept)
}
