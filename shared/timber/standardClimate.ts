import { equilibriumMoisture, type Air } from './moisture.ts'

/** Where the months of a new gate come from, as it is told to the person. */
export const standardClimateSource = 'invented: a mild inland place, no weather station behind it'

/**
 * Twelve months, January first, that a new gate starts from: invented figures of a mild inland place, to be replaced by the site's own.
 */
export const standardMonths: readonly Air[] = [
  { tempC: 4, rhPercent: 87 },
  { tempC: 4.5, rhPercent: 84 },
  { tempC: 6.5, rhPercent: 80 },
  { tempC: 9, rhPercent: 76 },
  { tempC: 12, rhPercent: 75 },
  { tempC: 15, rhPercent: 74 },
  { tempC: 17, rhPercent: 73 },
  { tempC: 17, rhPercent: 75 },
  { tempC: 14.5, rhPercent: 79 },
  { tempC: 11, rhPercent: 83 },
  { tempC: 7, rhPercent: 87 },
  { tempC: 4.5, rhPercent: 88 },
]

/** A dry workshop, invented as well. */
export const standardShop: Air = { tempC: 18, rhPercent: 60 }

/** What a new gate's climate holds: the shop, the wettest and driest months, and all twelve. */
export type Climate = { shop: Air; wettest: Air; driest: Air; months: Air[] }

/** A climate from a shop's air and a year's months: the months in which timber gets wettest and driest. Throws RangeError without a month. */
export function climateOf(shop: Air, months: readonly Air[]): Climate {
  const byMoisture = [...months].sort((a, b) => equilibriumMoisture(a) - equilibriumMoisture(b))
  const [driest, wettest] = [byMoisture[0], byMoisture.at(-1)]
  if (!driest || !wettest) throw new RangeError('climateOf needs at least one month')
  return { shop, wettest, driest, months: [...months] }
}

/** The climate that a new gate starts from. */
export const standardClimate: Climate = climateOf(standardShop, standardMonths)
