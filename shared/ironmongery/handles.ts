import { inFinishes, type HandleEntry } from './entry.ts'

/** Pull handles. Invented examples, not any maker's: sizes typical of the trade, names made up, to be replaced by what the workshop buys. */
export const handles: readonly HandleEntry[] = inFinishes(
  [
    {
      id: 'pull-handle-150',
      name: 'Hazel pull handle 150',
      kind: 'handle' as const,
      suits: 'either hand' as const,
      grip: 150,
      plateWidth: 35,
      massKg: 0.25,
      screws: { count: 4, diameter: 4.5, spacing: 25 },
    },
    {
      id: 'pull-handle-225',
      name: 'Hazel pull handle 225',
      kind: 'handle' as const,
      suits: 'either hand' as const,
      grip: 225,
      plateWidth: 40,
      massKg: 0.45,
      screws: { count: 4, diameter: 5, spacing: 30 },
    },
  ],
  ['black japanned', 'galvanised', 'stainless'],
)
