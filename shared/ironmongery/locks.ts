import { inFinishes, type LockEntry } from './entry.ts'

/**
 * Rim locks, screwed to the back. Invented examples, not any maker's: sizes typical of the trade, names made up, to be replaced by
 * what the workshop buys.
 */
export const locks: readonly LockEntry[] = inFinishes(
  [
    {
      id: 'rim-deadlock-100',
      name: 'Paddock rim deadlock 100',
      kind: 'lock' as const,
      suits: 'either hand' as const,
      plate: { width: 100, height: 75, depth: 18 },
      backset: 72,
      keyhole: { drill: 10, length: 24 },
      spindle: null,
      massKg: 0.55,
      screws: { count: 4, diameter: 4.5, spacing: 60 },
    },
    {
      id: 'rim-lock-150',
      name: 'Garth rim lock 150',
      kind: 'lock' as const,
      suits: 'either hand' as const,
      plate: { width: 150, height: 100, depth: 22 },
      backset: 105,
      keyhole: { drill: 10, length: 26 },
      spindle: 20,
      massKg: 1.1,
      screws: { count: 6, diameter: 5, spacing: 65 },
    },
  ],
  ['black japanned', 'galvanised', 'stainless'],
)
