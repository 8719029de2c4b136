import { waterDensity } from '../timber/species.ts'
import { commonPractice, geometry, workshopSetting, type Figure, type Figures } from './figures.ts'
import { clench, headSunk, pointBehindFace } from './fixingLength.ts'
import type { DrillChoice, Hole } from './holes.ts'
import type { LeadHole } from './leadHole.ts'
import { figure } from './worked.ts'

/**
 * What a hole was worked out from. through is the part's thickness, board the board's, all mm; density of the board in kg/m³,
 * gravity its oven-dry specific gravity.
 */
export type HoleSource = {
  id: string
  kind: 'screw' | 'nail'
  through: number
  board: number
  diameter: number
  root: number
  rootGiven: boolean
  density: number
  clearance: number
  gravity: number
  lead: LeadHole
}

function lengthFigure(hole: Hole, { kind, through, board }: HoleSource): Figure {
  return kind === 'screw'
    ? figure(hole.fixingLength, 'mm', {
        formula: 'longest in stock up to part + board − head sunk − kept behind the face',
        inputs: { part: through, board, 'head sunk': headSunk, 'kept behind the face': pointBehindFace },
        source: commonPractice,
      })
    : figure(hole.fixingLength, 'mm', {
        formula: 'nearest in stock to part + board + what is clenched',
        inputs: { part: through, board, 'clenched at least': clench.least, 'clenched at most': clench.most },
        source: commonPractice,
      })
}

function penetrationFigure(hole: Hole, { kind, through }: HoleSource): Figure {
  return kind === 'screw'
    ? figure(hole.penetration, 'mm', {
        formula: 'length + head sunk − part',
        inputs: { length: hole.fixingLength, 'head sunk': headSunk, part: through },
        source: geometry,
      })
    : figure(hole.penetration, 'mm', {
        formula: 'right through the part',
        inputs: { part: through },
        source: commonPractice,
      })
}

function screwFigures(source: HoleSource): Figures {
  const { id, diameter, root, rootGiven, clearance, density, gravity, lead } = source
  return {
    [`${id}.clearance`]: figure(diameter + clearance, 'mm', {
      formula: 'shank + allowance, so that the boards can move',
      inputs: { shank: diameter, allowance: clearance },
      source: workshopSetting,
    }),
    [`${id}.countersink`]: figure(2 * diameter, 'mm', {
      formula: '2 × shank',
      inputs: { shank: diameter },
      source: 'after ASME B18.6.1, production-screw table: flat heads are about twice the shank',
    }),
    [`${id}.root`]: rootGiven
      ? figure(root, 'mm', { formula: 'as entered', inputs: { entered: root }, source: workshopSetting })
      : figure(root, 'mm', {
          formula: '2/3 × shank',
          inputs: { shank: diameter },
          source: 'Wood Handbook FPL-GTR-190 ch. 8: the root averages about two-thirds of the shank',
        }),
    [`${id}.gravity`]: figure(gravity, '', {
      formula: 'r / (1.12 − 0.108 × r), r = density / density of water',
      inputs: { density, 'density of water': waterDensity },
      source:
        'NDS-2018 relation between density at 12 % moisture and oven-dry specific gravity, where from memory',
    }),
    [`${id}.lead`]: figure(lead.diameter ?? 0, 'mm', {
      formula: lead.formula,
      inputs: { root, shank: diameter, 'specific gravity': gravity },
      source: lead.source,
    }),
  }
}

function drillFigures(id: string, hole: Hole): Figures {
  const chosen: [string, DrillChoice | null, string][] = [
    ['clearanceDrill', hole.clearance, 'the smallest drill of the set not under it, else the largest'],
    ['leadDrill', hole.lead, 'the drill of the set nearest to it'],
    ['countersinkDrill', hole.countersink, 'the drill of the set nearest to it'],
  ]
  return Object.fromEntries(
    chosen.flatMap(([name, made, formula]) =>
      made === null || made.drill === null
        ? []
        : [
            [
              `${id}.${name}`,
              figure(made.drill, 'mm', { formula, inputs: { exact: made.exact }, source: workshopSetting }),
            ],
          ],
    ),
  )
}

/** Every figure of one hole: 'hole.ledges.clearance', 'hole.braces.leadDrill' and the like. */
export const holeFigures = (hole: Hole, source: HoleSource): Figures => ({
  [`${source.id}.length`]: lengthFigure(hole, source),
  [`${source.id}.penetration`]: penetrationFigure(hole, source),
  [`${source.id}.quantity`]: figure(hole.quantity, 'no.', {
    formula: 'places through this part',
    inputs: { places: hole.quantity },
    source: geometry,
  }),
  ...(source.kind === 'screw' ? screwFigures(source) : {}),
  ...drillFigures(source.id, hole),
})
