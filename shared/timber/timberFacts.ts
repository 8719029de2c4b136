import { fact, isSure, leastSure, type Fact } from './fact.ts'
import { coefficientFromShrinkage } from './shrinkage.ts'

/** What metal a timber's fixings and ironmongery should be, when the timber stands outdoors untreated. */
export type FixingMetal = 'stainless' | 'stainless preferred' | 'galvanised'

/** What a timber's dust can do beyond what any dust does. */
export type Dust = 'asthma' | 'nose and lungs' | 'ordinary'

/**
 * Everything the rules know of a timber, each value with its source and how sure it is.
 * density kg/m³ at about 12 % moisture; tangential and radial per 1 % of moisture; the shrinkages green to oven-dry in %;
 * movementStart the moisture content in % at which shrinking starts; durability the heartwood's class of EN 350, 1 best;
 * stainsIron: iron marks it blue-black; corrodes: its acids eat plain and zinc-coated steel; changedThrough: made durable right
 * through, so that it has no sapwood to keep out.
 */
export type ListedTimber = {
  name: string
  alsoCalled: string[]
  hardwood: boolean
  density: Fact<number>
  tangential: Fact<number>
  radial: Fact<number>
  tangentialShrinkage: Fact<number>
  radialShrinkage: Fact<number>
  movementStart: Fact<number>
  strengthClass: Fact<string>
  durability: Fact<string>
  stainsIron: Fact<boolean>
  corrodes: Fact<boolean>
  fixings: Fact<FixingMetal>
  dust: Fact<Dust>
  changedThrough: boolean
}

/** A timber as the rules meet it: what isn't listed or described by the workshop is left out, never guessed. */
export type TimberFacts = Pick<ListedTimber, 'name' | 'hardwood' | 'density'> &
  Partial<Omit<ListedTimber, 'name' | 'alsoCalled' | 'hardwood' | 'density'>> & { treated: boolean }

/** The source of a coefficient that no table gives, so that it is worked from the whole shrinkage. */
export const byRelation = 'C = (S/F) / (1 − S·(F − 10)/F), Wood Handbook FPL-GTR-190 ch. 13'

/** A change coefficient worked from a whole shrinkage: as sure as the less sure of shrinkage and start. */
export function coefficientOf(shrinkage: Fact<number>, start: Fact<number>): Fact<number> {
  const from = isSure(start)
    ? `the shrinkage (${shrinkage.source})`
    : `the shrinkage (${shrinkage.source}) and the start (${start.source})`
  return fact(
    coefficientFromShrinkage(shrinkage.value, start.value),
    `${byRelation}, from ${from}`,
    leastSure([shrinkage, start]),
  )
}

/** 30 %, the usual start of shrinking. */
export const usualStart: Fact<number> = fact(
  30,
  'Wood Handbook FPL-GTR-190 ch. 13: shrinkage runs from 30 %',
  'published',
)

const durabilitySource = 'EN 350 (heartwood; sapwood is never durable), from memory'
export const durabilityOf = (classes: string): Fact<string> => fact(classes, durabilitySource, 'memory')

export const tradeDensity = (density: number): Fact<number> =>
  fact(density, 'typical density at 12 to 15 % moisture, trade tables, from memory', 'memory')

const yearBook = 'TRADA year-book 2019 p. 217'
export const marked: Fact<boolean> = fact(true, `${yearBook}: iron stains it`, 'published')
export const unmarked: Fact<boolean> = fact(
  false,
  `not among the timbers that ${yearBook} names, from memory`,
  'memory',
)

const metalRule = 'common practice: metal by species and treatment'
export const metalOf = (metal: FixingMetal): Fact<FixingMetal> => fact(metal, metalRule, 'common practice')
export const acid: Fact<boolean> = fact(true, metalRule, 'common practice')
export const mild: Fact<boolean> = fact(false, metalRule, 'common practice')

export const dustOf = (dust: Dust): Fact<Dust> =>
  fact(dust, 'health and safety guidance on wood dust, from memory', 'memory')
