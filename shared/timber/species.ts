import type { Timber } from '../gate/spec.ts'
import { describedTimber, plainTimber } from './describedTimber.ts'
import { isSure, leastSure, type Certainty } from './fact.ts'
import { hardwoods } from './hardwoods.ts'
import type { CrossGrain } from './movement.ts'
import { softwoods } from './softwoods.ts'
import { strengthClasses } from './strengthClasses.ts'
import type { ListedTimber, TimberFacts } from './timberFacts.ts'
import { densityPerPoundCubicFoot } from '../units/imperial.ts'

/** A species as most rules use it: density in kg/m³ at about 12 % moisture, with where it comes from. */
export type Species = {
  name: string
  hardwood: boolean
  density: number
  source: string
  certainty: Certainty
}

const order = [
  'European redwood',
  'European whitewood',
  'Douglas-fir',
  'European larch',
  'western redcedar',
  'European oak',
  'sweet chestnut',
  'iroko',
  'acetylated pine',
]

const placeOf = ({ name }: ListedTimber): number => order.indexOf(name)

/** The timbers the program knows, in the order the trade names them. */
export const listedTimbers: readonly ListedTimber[] = [...softwoods, ...hardwoods].sort(
  (a, b) => placeOf(a) - placeOf(b),
)

/** A name as it is compared: letters and figures only, or as it stands where it has none. */
const plain = (name: string): string =>
  name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '') || name

const byName = new Map(
  listedTimbers.flatMap((entry) => [entry.name, ...entry.alsoCalled].map((name) => [plain(name), entry])),
)

/** Mean density of a strength class, kg/m³: EN 338:2016 table 1. */
export const classDensity: Record<string, number> = Object.fromEntries(
  strengthClasses.map(({ name, density }) => [name, density]),
)

/** The species the program knows, by their own names. */
export const speciesNames: string[] = listedTimbers.map((entry) => entry.name)

/**
 * Everything known of a timber by the name in a section (capitals, spaces and hyphens don't matter), with the spec's own
 * values before the listed ones. Undefined when it is neither listed nor described with a density or a known strength class.
 */
export function timberNamed(name: string, own?: Record<string, Timber>): TimberFacts | undefined {
  const listed = byName.get(plain(name))
  const described = Object.entries(own ?? {}).find(([key]) => plain(key) === plain(name))?.[1]
  if (described) return describedTimber(name, described, listed)
  return listed && plainTimber(listed)
}

/** The same, cut down to name, kind and density. */
export function speciesNamed(name: string, own?: Record<string, Timber>): Species | undefined {
  const found = timberNamed(name, own)
  return (
    found && {
      name: found.name,
      hardwood: found.hardwood,
      density: found.density.value,
      source: found.density.source,
      certainty: found.density.certainty,
    }
  )
}

/**
 * How a timber moves across the grain in one direction; boards are taken as tangential, the direction that moves most.
 * Undefined when nothing tells it: an unlisted timber that the workshop described by its density alone.
 */
export function crossGrain(
  timber: TimberFacts,
  direction: 'tangential' | 'radial' = 'tangential',
): CrossGrain | undefined {
  const [coefficient, shrinkage] =
    direction === 'tangential'
      ? [timber.tangential, timber.tangentialShrinkage]
      : [timber.radial, timber.radialShrinkage]
  const start = timber.movementStart
  if (!coefficient || !shrinkage || !start) return undefined
  return {
    coefficient: coefficient.value,
    shrinkage: shrinkage.value,
    start: start.value,
    source: isSure(start) ? shrinkage.source : `${shrinkage.source}; start: ${start.source}`,
    certainty: leastSure([coefficient, shrinkage, start]),
  }
}

/** Density of water as the NDS relation takes it, kg/m³: 62.4 lb/ft³. */
export const waterDensity = 62.4 * densityPerPoundCubicFoot

/**
 * Specific gravity on oven-dry mass and volume, as fastener rules want it, from a density in kg/m³ at 12 % moisture.
 * Source: NDS, ρ = 62.4·[G/(1 + 0.009·G·M)]·(1 + M/100) lb/ft³, solved for G. 449.8 kg/m³ is 0.42.
 */
export const ovenDryGravity = (density: number): number => {
  const ratio = density / waterDensity
  return ratio / (1.12 - 0.009 * 12 * ratio)
}
