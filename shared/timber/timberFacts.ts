import { fact, type Fact } from './fact.ts'
import { coefficientFromShrinkage } from './shrinkage.ts'

/** What metal a timber's fixings and ironmongery should be, when the timber stands outdoors untreated. */
export type FixingMetal = 'stainless' | 'stainless preferred' | 'galvanised'

/**
 * Everything the rules know of a timber, each value with its source and how sure it is.
 * density kg/m³ at about 12 % moisture; tangential and radial per 1 % of moisture; the shrinkages green to oven-dry in %;
 * movementStart the moisture content in % at which shrinking starts; durability the heartwood's class of EN 350, 1 best;
 * stainsIron: iron marks it blue-black; corrodes: its acids eat plain and zinc-coated steel.
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
}

/** A timber as the rules meet it: what isn't listed or described by the workshop is left out, never guessed. */
export type TimberFacts = Pick<ListedTimber, 'name' | 'hardwood' | 'density'> &
  Partial<Omit<ListedTimber, 'name' | 'alsoCalled' | 'hardwood' | 'density'>> & { treated: boolean }

/** The source of a coefficient that no table gives, so that it is worked from the whole shrinkage. */
export const byRelation = 'C = (S/F) / (1 − S·(F − 10)/F), Wood Handbook FPL-GTR-190 ch. 13'

/** A change coefficient worked from a whole shrinkage: as sure as the shrinkage is. */
export const coefficientOf = (shrinkage: Fact<number>, start: Fact<number>): Fact<number> =>
  fact(
    coefficientFromShrinkage(shrinkage.value, start.value),
    `${byRelation}, from the shrinkage (${shrinkage.source})`,
    shrinkage.certainty === 'published' ? start.certainty : shrinkage.certainty,
  )

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
