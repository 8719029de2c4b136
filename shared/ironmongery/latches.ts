import { inFinishes, type LatchEntry } from './entry.ts'

/** Latches. Invented examples, not any maker's: sizes typical of the trade, names made up, to be replaced by what the workshop buys. */
export const latches: readonly LatchEntry[] = inFinishes(
  [
    {
      id: 'thumb-latch-230',
      name: 'Orchard thumb latch 230',
      kind: 'latch' as const,
      suits: 'either hand' as const,
      plate: { width: 50, height: 230 },
      spindle: 12,
      bar: { width: 190, height: 30 },
      thickestLeaf: 60,
      massKg: 0.5,
      screws: { count: 6, diameter: 4.5, spacing: 40 },
    },
    {
      id: 'ring-latch-150',
      name: 'Byre ring latch 150',
      kind: 'latch' as const,
      suits: 'either hand' as const,
      plate: { width: 150, height: 75 },
      spindle: 16,
      bar: { width: 180, height: 30 },
      thickestLeaf: 85,
      massKg: 0.9,
      screws: { count: 8, diameter: 5, spacing: 55 },
    },
  ],
  ['black japanned', 'galvanised', 'stainless'],
)
