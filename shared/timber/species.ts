import type { Timber } from '../gate/spec.ts'

/** How sure a value is: read in a published source, or from memory and to be checked before it decides anything. */
export type Certainty = 'published' | 'memory' | 'workshop'

/** A species as the rules use it: density in kg/m³ at about 12 % moisture, with where it comes from. */
export type Species = {
  name: string
  hardwood: boolean
  density: number
  source: string
  certainty: Certainty
}

type Entry = Species & { alsoCalled: string[] }

const typical = 'typical density at 12 to 15 % moisture, trade tables, from memory'

const list: Entry[] = [
  {
    name: 'European redwood',
    alsoCalled: ['redwood', 'Scots pine', 'pine'],
    hardwood: false,
    density: 510,
    source: typical,
    certainty: 'memory',
  },
  {
    name: 'European whitewood',
    alsoCalled: ['whitewood', 'Norway spruce', 'spruce'],
    hardwood: false,
    density: 470,
    source: typical,
    certainty: 'memory',
  },
  {
    name: 'Douglas-fir',
    alsoCalled: ['Douglas fir'],
    hardwood: false,
    density: 545,
    source: 'Oregon State University wood data, air-dry',
    certainty: 'published',
  },
  {
    name: 'European larch',
    alsoCalled: ['larch'],
    hardwood: false,
    density: 590,
    source: typical,
    certainty: 'memory',
  },
  {
    name: 'western redcedar',
    alsoCalled: ['western red cedar', 'redcedar', 'cedar'],
    hardwood: false,
    density: 390,
    source: typical,
    certainty: 'memory',
  },
  {
    name: 'European oak',
    alsoCalled: ['oak', 'English oak'],
    hardwood: true,
    density: 720,
    source: typical,
    certainty: 'memory',
  },
  {
    name: 'sweet chestnut',
    alsoCalled: ['chestnut'],
    hardwood: true,
    density: 560,
    source: typical,
    certainty: 'memory',
  },
  { name: 'iroko', alsoCalled: [], hardwood: true, density: 660, source: typical, certainty: 'memory' },
  {
    name: 'acetylated pine',
    alsoCalled: ['acetylated radiata pine'],
    hardwood: false,
    density: 510,
    source: typical,
    certainty: 'memory',
  },
]

/** A name as it is compared: letters and figures only, or as it stands where it has none. */
const plain = (name: string): string =>
  name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '') || name

const byName = new Map(
  list.flatMap((entry) => [entry.name, ...entry.alsoCalled].map((name) => [plain(name), entry])),
)

/** Mean density of a strength class, kg/m³: EN 338:2016 table 1. */
export const classDensity: Record<string, number> = {
  C16: 370,
  C18: 380,
  C24: 420,
  D24: 580,
  D30: 640,
  D40: 660,
}

/** The species the program knows, by their own names. */
export const speciesNames: string[] = list.map((entry) => entry.name)

/**
 * A species by the name in a section (capitals, spaces and hyphens don't matter), with the spec's own values before the
 * listed ones. Undefined when it is neither listed nor described with a density or a known strength class.
 */
export function speciesNamed(name: string, own?: Record<string, Timber>): Species | undefined {
  const described = Object.entries(own ?? {}).find(([key]) => plain(key) === plain(name))?.[1]
  const listed = byName.get(plain(name))
  const density = described?.density
  if (density !== undefined)
    return {
      name: listed?.name ?? name,
      hardwood: listed?.hardwood ?? density > 600,
      density,
      source: "this workshop's setting",
      certainty: 'workshop',
    }
  if (listed) return listed
  const grade = described?.strengthClass
  const mean = grade !== undefined && Object.hasOwn(classDensity, grade) ? classDensity[grade] : undefined
  if (grade === undefined || mean === undefined) return undefined
  return {
    name,
    hardwood: grade.startsWith('D'),
    density: mean,
    source: `EN 338:2016 table 1, mean density of ${grade}`,
    certainty: 'published',
  }
}

/** Density of water as the NDS relation takes it, kg/m³: 62.4 lb/ft³ at 16.018463 kg/m³ each. */
export const waterDensity = 62.4 * 16.018463374

/**
 * Specific gravity on oven-dry mass and volume, as fastener rules want it, from a density in kg/m³ at 12 % moisture.
 * Source: NDS, ρ = 62.4·[G/(1 + 0.009·G·M)]·(1 + M/100) lb/ft³, solved for G. 449.8 kg/m³ is 0.42.
 */
export const ovenDryGravity = (density: number): number => {
  const ratio = density / waterDensity
  return ratio / (1.12 - 0.009 * 12 * ratio)
}
