import { inFinishes, type HingeEntry } from './entry.ts'

/**
 * Tee hinges (cross garnets). Invented examples, not any maker's: sizes are typical of the trade, names and the ratings
 * "by the maker" are made up, to be replaced by what the workshop buys.
 */
const sizes = [
  { strap: 200, band: [30, 2.5], pin: 8, plate: [35, 110], massKg: 0.25, screws: [4, 4.5, 50], rated: 12 },
  { strap: 300, band: [38, 3], pin: 9, plate: [40, 130], massKg: 0.45, screws: [5, 5, 62.5], rated: 22 },
  { strap: 450, band: [45, 3.5], pin: 10, plate: [45, 180], massKg: 0.9, screws: [6, 5.5, 80], rated: 38 },
  { strap: 600, band: [50, 4], pin: 12, plate: [50, 220], massKg: 1.45, screws: [7, 6, 91], rated: 55 },
] as const

export const teeHinges: readonly HingeEntry[] = inFinishes(
  sizes.map(({ strap, band, pin, plate, massKg, screws, rated }) => ({
    id: `tee-${strap}`,
    name: `Yard tee hinge ${strap}`,
    kind: 'hinge' as const,
    form: 'tee' as const,
    suits: 'either hand' as const,
    strapLength: strap,
    band: { width: band[0], thickness: band[1] },
    pin,
    plate: { width: plate[0], height: plate[1] },
    bolt: null,
    massKg,
    screws: { count: screws[0], diameter: screws[1], spacing: screws[2] },
    maxLeafMassKg: rated,
  })),
  ['black japanned', 'galvanised', 'stainless'],
)
