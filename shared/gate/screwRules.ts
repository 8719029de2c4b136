import { toRadians } from '../units/angle.ts'
import type { Figure, Figures } from './figures.ts'
import { figure } from './worked.ts'

/** What nails and thin screws are spaced by: diameter in mm, the timber's low density ρk in kg/m³, angle force to grain in degrees. */
export type Spaced = { diameter: number; densityLow: number; predrilled: boolean; angle: number }

/**
 * Least spacings in mm. along and across the grain between fixings; the ends and edges towards which the force pushes
 * (loaded) and the others (a1, a2, a3t, a3c, a4t, a4c).
 */
export type Spacings = {
  along: number
  across: number
  loadedEnd: number
  unloadedEnd: number
  loadedEdge: number
  unloadedEdge: number
}

/** The columns of EN 1995-1-1 table 8.2. */
type Column = 'light' | 'dense' | 'predrilled'

const source = 'EN 1995-1-1 table 8.2'

/** Denser than this (ρk, kg/m³) every fixing is predrilled: EN 1995-1-1 §8.3.1.1. */
export const predrillAbove = 500

/** Whether a nail or thin screw must have a lead hole: dense timber, or a diameter over 6 mm. EN 1995-1-1 §8.3.1.1. */
export const mustPredrill = (densityLow: number, diameter: number): boolean =>
  densityLow > predrillAbove || diameter > 6

function columnOf({ densityLow, predrilled }: Spaced): Column {
  if (predrilled) return 'predrilled'
  return densityLow <= 420 ? 'light' : 'dense'
}

/** How many diameters each distance is, by column; c and s are |cos| and sin of the angle. */
function multiples(column: Column, slim: boolean, { c, s }: { c: number; s: number }): Spacings {
  if (column === 'light')
    return {
      along: 5 + (slim ? 5 : 7) * c,
      across: 5,
      loadedEnd: 10 + 5 * c,
      unloadedEnd: 10,
      loadedEdge: 5 + (slim ? 2 : 5) * s,
      unloadedEdge: 5,
    }
  if (column === 'dense')
    return {
      along: 7 + 8 * c,
      across: 7,
      loadedEnd: 15 + 5 * c,
      unloadedEnd: 15,
      loadedEdge: 7 + (slim ? 2 : 5) * s,
      unloadedEdge: 7,
    }
  return {
    along: 4 + c,
    across: 3 + s,
    loadedEnd: 7 + 5 * c,
    unloadedEnd: 7,
    loadedEdge: 3 + (slim ? 2 : 4) * s,
    unloadedEdge: 3,
  }
}

/**
 * Least spacings of nails, and of screws up to 6 mm effective, by EN 1995-1-1 table 8.2. Angle from 0 (force along the grain)
 * to 90. 5 mm predrilled at 0°: 25, 15, 60, 35, 15, 15.
 * Undefined where the timber is too dense or the fixing too thick to go in without a lead hole.
 */
export function leastSpacings(spaced: Spaced): Spacings | undefined {
  const { diameter, densityLow, predrilled, angle } = spaced
  if (!(diameter > 0) || !(densityLow > 0) || !(angle >= 0 && angle <= 90))
    throw new RangeError(
      `a diameter and density over 0 and an angle from 0 to 90 were expected, got ${diameter}, ${densityLow} and ${angle}`,
    )
  if (!predrilled && mustPredrill(densityLow, diameter)) return undefined
  const turned = { c: Math.cos(toRadians(angle)), s: Math.sin(toRadians(angle)) }
  const times = multiples(columnOf(spaced), diameter < 5, turned)
  return {
    along: times.along * diameter,
    across: times.across * diameter,
    loadedEnd: times.loadedEnd * diameter,
    unloadedEnd: times.unloadedEnd * diameter,
    loadedEdge: times.loadedEdge * diameter,
    unloadedEdge: times.unloadedEdge * diameter,
  }
}

const columnWords: Record<Column, string> = {
  light: 'without a lead hole, density up to 420',
  dense: 'without a lead hole, density over 420 and up to 500',
  predrilled: 'with a lead hole',
}

/** The least spacings as worked figures: 'spacing.along', 'spacing.loadedEdge' and so on. Empty where none are given. */
export function spacingFigures(spaced: Spaced): Figures {
  const spacings = leastSpacings(spaced)
  if (!spacings) return {}
  const inputs = {
    diameter: spaced.diameter,
    'low density': spaced.densityLow,
    'angle to grain': spaced.angle,
  }
  return Object.fromEntries(
    Object.entries(spacings).map(([name, value]) => [
      `spacing.${name}`,
      figure(value, 'mm', {
        formula: `diameters by the table ${columnWords[columnOf(spaced)]} × diameter`,
        inputs: { ...inputs, diameters: value / spaced.diameter },
        source,
      }),
    ]),
  )
}

/** Steel on timber may stand closer, panels too: factors on the spacings along and across. EN 1995-1-1 §8.3.1.3 and 8.3.1.4. */
export const closerOn = { steel: 0.7, panel: 0.85 }

/** Least spacings in mm of screws loaded along their length in timber at least 12 diameters thick: EN 1995-1-1 table 8.6. */
export const axialSpacings = (diameter: number) => ({
  along: 7 * diameter,
  across: 5 * diameter,
  end: 10 * diameter,
  edge: 4 * diameter,
})

/** Kinds of fixing that the least penetration tells apart. */
export type Penetrating = 'screw' | 'smooth nail' | 'other nail'

/**
 * Least depth in mm in the part that holds the point: a screw's thread 6 d (EN 1995-1-1 §8.7.2; NDS 12.1.5.6), a smooth nail
 * 8 d, other nails 6 d (§8.3.1.2). A 5 mm screw: 30. A boarded leaf is rarely thick enough, so it is told beside the hold.
 */
export const leastPenetration = (kind: Penetrating, diameter: number): number =>
  (kind === 'smooth nail' ? 8 : 6) * diameter

/** The least depth as a worked figure. */
export const leastPenetrationFigure = (kind: Penetrating, diameter: number): Figure =>
  figure(leastPenetration(kind, diameter), 'mm', {
    formula: `${kind === 'smooth nail' ? 8 : 6} × diameter`,
    inputs: { diameter },
    source: kind === 'screw' ? 'EN 1995-1-1 §8.7.2; NDS 12.1.5.6' : 'EN 1995-1-1 §8.3.1.2',
  })

/**
 * The thinnest timber in mm that takes a nail without a lead hole: the greater of 7 d and (13 d − 30)·ρk / 400, for timber
 * prone to splitting of 14 d and (13 d − 30)·ρk / 200. EN 1995-1-1 §8.3.1.2 (6) and (7). 5 mm at 350: 35.
 */
export function leastThickness(diameter: number, densityLow: number, splitsEasily = false): number {
  const span = 13 * diameter - 30
  return splitsEasily
    ? Math.max(14 * diameter, (span * densityLow) / 200)
    : Math.max(7 * diameter, (span * densityLow) / 400)
}
