import type { Workshop } from './spec.ts'

type LeadRule = Workshop['leadRule']

/** A lead hole's exact diameter in mm, or none needed, with the rule in words and where it is published. */
export type LeadHole = { diameter: number | null; formula: string; source: string }

const nds = 'NDS-2018 (as given in a building design handbook)'

/**
 * The lead hole for a screw's thread by the published rule chosen. gravity is the board's oven-dry specific gravity;
 * root and shank in mm.
 * lateral: 7/8 of the root up to 0.6, the root above. withdrawal: none up to 0.5, 70 % of the root up to 0.6, 90 % above.
 * shank-share: 70 % of the shank, EN 1995-1-1 §10.4.5 (from memory: to be checked against the document).
 */
export function leadHole(
  rule: LeadRule,
  gravity: number,
  { root, shank }: { root: number; shank: number },
): LeadHole {
  if (rule === 'shank-share')
    return { diameter: 0.7 * shank, formula: '0.7 × shank', source: 'EN 1995-1-1 §10.4.5, from memory' }
  if (rule === 'lateral')
    return gravity > 0.6
      ? { diameter: root, formula: 'root, specific gravity over 0.6', source: `${nds} §12.1.5.3` }
      : {
          diameter: (7 / 8) * root,
          formula: '7/8 × root, specific gravity up to 0.6',
          source: `${nds} §12.1.5.3`,
        }
  const source = `${nds} §12.1.5.2`
  if (gravity <= 0.5) return { diameter: null, formula: 'none needed, specific gravity up to 0.5', source }
  if (gravity <= 0.6)
    return { diameter: 0.7 * root, formula: '0.7 × root, specific gravity over 0.5 and up to 0.6', source }
  return { diameter: 0.9 * root, formula: '0.9 × root, specific gravity over 0.6', source }
}

/** The drill of a set nearest to a size, mm; the smaller of two equally near. Null when the set is empty. */
const nearest = (exact: number, drills: number[]): number | null =>
  [...drills].sort((a, b) => Math.abs(a - exact) - Math.abs(b - exact) || a - b)[0] ?? null

/** The drill nearest to a lead hole; null when even that would leave the thread nothing to bite (the shank's size or over). */
export function leadDrill(exact: number, shank: number, drills: number[]): number | null {
  const drill = nearest(exact, drills)
  return drill !== null && drill < shank ? drill : null
}

/** The drill or countersink nearest to the size a head wants; null when even that is no wider than the shank. */
export function countersinkDrill(exact: number, shank: number, drills: number[]): number | null {
  const drill = nearest(exact, drills)
  return drill !== null && drill > shank ? drill : null
}

/**
 * The smallest drill that isn't under a clearance hole, so that the shank stays free; where all are under, the largest that
 * still lets the shank through. Null when none does, or only one as wide as the head (twice the shank), which would fall through.
 */
export function clearanceDrill(exact: number, shank: number, drills: number[]): number | null {
  const fit = drills.filter((drill) => drill >= shank && drill < 2 * shank).sort((a, b) => a - b)
  return fit.find((drill) => drill >= exact - 1e-9) ?? fit.at(-1) ?? null
}
