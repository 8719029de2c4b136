import { commonPractice, geometry, type Figure, type Figures } from './figures.ts'
import { fromEnd, fromJoint, type Placed } from './fixingPlaces.ts'
import type { Fixing } from './leaf.ts'
import { figure, joined } from './worked.ts'

/** The counts of the fixings and the distances kept: 'fixings.ledge', 'fixings.count' and the like. */
function countFigures(places: Fixing[], diameter: number): Figures {
  const figures: Figures = {}
  for (const joins of ['ledge', 'brace'] as const) {
    const own = places.filter((place) => place.joins === joins)
    if (own.length === 0) continue
    const crossings = new Set(own.map((place) => `${place.member}|${place.board}`)).size
    figures[`fixings.${joins}`] = figure(own.length, 'no.', {
      formula: 'crossings with room for one + 2 × crossings with room of 4 × diameter or more',
      inputs: {
        'crossings with room for one': 2 * crossings - own.length,
        'crossings with room for two': own.length - crossings,
        diameter,
      },
      source:
        joins === 'ledge'
          ? 'two staggered fixings a crossing: L. Goring, Manual of Purpose-Made Woodworking Joinery, p. 86'
          : commonPractice,
    })
  }
  figures['fixings.count'] = figure(places.length, 'no.', {
    formula: 'places on the ledges + places on the braces',
    inputs: {
      'places on the ledges': places.filter((place) => place.joins === 'ledge').length,
      'places on the braces': places.filter((place) => place.joins === 'brace').length,
    },
    source: geometry,
  })
  return figures
}

const setDistance = (value: number, from: string): Figure =>
  figure(value, 'mm', {
    formula: `set distance from ${from}`,
    inputs: { set: value },
    source: commonPractice,
  })

/** Every figure of the fixings; each place's own are 'fixing.1.x' and 'fixing.1.y', counted as in the list. */
export function fixingFigures(placed: Placed[], diameter: number): Figures {
  const figures = joined([
    countFigures(
      placed.map(({ place }) => place),
      diameter,
    ),
  ])
  figures['fixings.fromJoint'] = setDistance(fromJoint, 'a board joint')
  figures['fixings.fromEnd'] = setDistance(fromEnd, 'a leaf’s or ledge’s end')
  placed.forEach(({ x, y }, index) => {
    figures[`fixing.${index + 1}.x`] = x
    figures[`fixing.${index + 1}.y`] = y
  })
  return figures
}
