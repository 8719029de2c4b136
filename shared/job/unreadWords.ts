import { readLength } from '../units/readLength.ts'
import type { GateEntry, LengthUnit } from './job.ts'
import { valueAt } from './specPath.ts'

/** Words typed for a length that it doesn't stand by yet: not understood, or asking (asks) because they could mean two things. */
export type Unread = { field: string; words: string; asks: boolean }

/** How near a length must be to the words typed for it, mm: closer than any rule can show. */
const agreement = 0.01

/**
 * One diagonal of two, kept in its words until the other is measured: it stands for nothing yet, and holds nothing up.
 */
const waitsForFellow = (field: string, stands: unknown): boolean =>
  /^survey\.diagonals\.[01]$/.test(field) && stands === undefined

/**
 * Every length of a gate whose typed words aren't settled. A card made from the value that stood before them would be a
 * wrong card, so none is made while there are any.
 */
export function unreadWords(entry: GateEntry, unit: LengthUnit): Unread[] {
  return Object.entries(entry.typed).flatMap(([field, words]) => {
    const reading = readLength(words, unit, { allowZero: true })
    const stands = valueAt(entry.spec, field.split('.'))
    const agrees =
      reading.kind === 'length' && typeof stands === 'number' && Math.abs(reading.mm - stands) < agreement
    const waits = reading.kind === 'length' && waitsForFellow(field, stands)
    return agrees || waits || reading.kind === 'empty' ? [] : [{ field, words, asks: reading.kind === 'ask' }]
  })
}
