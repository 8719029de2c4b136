/**
 * A worked figure: what it came to, the formula, the numbers put in, and where the rule comes from.
 * unit is 'mm', '°', 'kg', 'N', 'no.' and the like. formula and source are never empty. The same objects feed screen, card and program.
 */
export type Figure = {
  value: number
  unit: string
  formula: string
  inputs: Record<string, number>
  source: string
}

/** Figures by id, e.g. 'brace.single.angle'. */
export type Figures = Record<string, Figure>

/** Where a rule comes from, when no document stands behind it. */
export const commonPractice = 'common practice'

/** Where a number comes from, when the workshop set it. */
export const workshopSetting = 'this workshop’s setting'

/** Where a formula comes from, when it follows from the shape alone. */
export const geometry = 'plane geometry'
