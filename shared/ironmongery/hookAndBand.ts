import { inFinishes, type HingeEntry } from './entry.ts'

/**
 * Hook-and-band sets: a band bolted to the leaf turns on a hook on a plate at the post. Invented examples, not any maker's: sizes
 * are typical of the trade, names and the ratings "by the maker" are made up, to be replaced by what the workshop buys.
 */
const sizes = [
  {
    band: 300,
    iron: [40, 5],
    hook: 12,
    plate: [40, 110],
    massKg: 0.85,
    bolt: 8,
    screws: [4, 6, 83],
    rated: 45,
  },
  {
    band: 450,
    iron: [40, 5],
    hook: 16,
    plate: [50, 120],
    massKg: 1.2,
    bolt: 10,
    screws: [5, 6, 100],
    rated: 65,
  },
  {
    band: 600,
    iron: [50, 6],
    hook: 16,
    plate: [50, 130],
    massKg: 2.1,
    bolt: 10,
    screws: [6, 6, 110],
    rated: 95,
  },
  {
    band: 750,
    iron: [50, 6],
    hook: 19,
    plate: [60, 150],
    massKg: 2.7,
    bolt: 12,
    screws: [7, 6, 116],
    rated: 125,
  },
  {
    band: 900,
    iron: [50, 8],
    hook: 19,
    plate: [60, 150],
    massKg: 3.8,
    bolt: 12,
    screws: [8, 6, 121],
    rated: 160,
  },
  {
    band: 1200,
    iron: [60, 8],
    hook: 22,
    plate: [75, 180],
    massKg: 5.9,
    bolt: 12,
    screws: [9, 7, 143],
    rated: 220,
  },
] as const

export const hookAndBandSets: readonly HingeEntry[] = inFinishes(
  sizes.map(({ band, iron, hook, plate, massKg, bolt, screws, rated }) => ({
    id: `hook-and-band-${band}`,
    name: `Drove hook-and-band ${band}`,
    kind: 'hinge' as const,
    form: 'hook and band' as const,
    suits: 'either hand' as const,
    strapLength: band,
    band: { width: iron[0], thickness: iron[1] },
    pin: hook,
    plate: { width: plate[0], height: plate[1] },
    bolt: { diameter: bolt, count: 2 },
    massKg,
    screws: { count: screws[0], diameter: screws[1], spacing: screws[2] },
    maxLeafMassKg: rated,
  })),
  ['galvanised', 'stainless'],
)
