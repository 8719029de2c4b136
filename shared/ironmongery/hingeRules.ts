import { commonPractice, type Figure } from '../gate/figures.ts'
import { figure } from '../gate/worked.ts'

/** Where the strap's length comes from. Weak: a shop's guide, no standard. */
export const strapSource =
  'an ironmonger’s guide (weak); common practice: a strap just over half the leaf’s width'

/** The length a strap must pass, mm: half the leaf's width. A leaf of 813 (32 in) wants over 406.5, so a strap of 450 (18 in). */
export const strapWanted = (leafWidth: number): number => leafWidth / 2

/** The same as a worked figure. */
export const strapFigure = (leafWidth: number): Figure =>
  figure(strapWanted(leafWidth), 'mm', {
    formula: 'leaf width / 2: the strap is longer than this',
    inputs: { 'leaf width': leafWidth },
    source: strapSource,
  })

/** A leaf as its hinges feel it: mass in kg, how far its centre stands out from the pin, and the outer hinges' spacing, mm. */
export type HungMass = { massKg: number; centreOut: number; spacing: number }

/** Centre's distance out over hinge spacing that a maker's rating is taken to allow for: hinges as far apart as the leaf is wide. */
const ratedReach = 0.5

/**
 * The mass in kg to compare with a maker's rating: the leaf's own, raised where the hinges stand closer together than the rating allows
 * for, since their pull grows as weight × (centre out / spacing). 40 kg, 475 out, hinges 760 apart: 40 × 0.625 / 0.5 = 50 kg.
 * Throws RangeError unless the spacing is over 0.
 */
export function reckonedMass({ massKg, centreOut, spacing }: HungMass): number {
  if (!(spacing > 0)) throw new RangeError(`a hinge spacing over 0 was expected, got ${spacing}`)
  return massKg * Math.max(1, centreOut / spacing / ratedReach)
}

/** The same as a worked figure. */
export const reckonedFigure = (hung: HungMass): Figure =>
  figure(reckonedMass(hung), 'kg', {
    formula: 'mass × the greater of 1 and (centre out from the pin / hinge spacing) / 0.5',
    inputs: {
      'mass kg': hung.massKg,
      'centre out from the pin': hung.centreOut,
      'hinge spacing': hung.spacing,
    },
    source: `${commonPractice}: a rating is taken to hold for hinges as far apart as the leaf is wide`,
  })

/** Mass in kg and height in mm of a leaf above which a third hinge is proposed where a line is there for it. Common practice. */
export const thirdHinge = { overKg: 50, overHeight: 2000 }
