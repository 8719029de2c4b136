import { standardHingePlaces } from '../ironmongery/hingeLines.ts'
import type { PlacedPiece } from '../ironmongery/placePieces.ts'
import { lengthTolerance } from '../geometry/point.ts'
import { commonPractice, type Figure, type Figures } from './figures.ts'
import { hingeCouple, hingeCoupleFigure, hingeShareFigure, weightOf, type HungLeaf } from './forces.ts'
import type { HungOn, Leaf } from './leaf.ts'
import type { LeafMass } from './leafWeight.ts'
import { figure, type Worked } from './worked.ts'

/** A hinge's height in mm and how it was found. */
type HingeHeight = { y: number; how: Figure }

/** Heights of a leaf's hinges, bottom → top: where hinges are placed at two heights at least, else the bottom and top lines. */
function hingeHeights(leaf: Leaf, placed: readonly PlacedPiece[]): HingeHeight[] {
  const heights: HingeHeight[] = []
  const own = placed
    .filter(({ piece }) => piece.kind === 'hinge')
    .map(({ height, how }) => ({ y: height, how }))
    .sort((a, b) => a.y - b.y)
  for (const one of own) if (one.y - (heights.at(-1)?.y ?? -Infinity) > lengthTolerance) heights.push(one)
  if (heights.length >= 2) return heights
  return standardHingePlaces(leaf, 2).map(({ y, line }) => ({
    y,
    how: figure(y, 'mm', {
      formula: `centre line of the ${line?.name ?? 'leaf'}`,
      inputs: { 'from the foot': y },
      source: commonPractice,
    }),
  }))
}

/** What the hinges of one leaf carry. The top one is pulled from the post, the bottom one presses on it; those between take no pull. */
export function hingeLoads(
  leaf: Leaf,
  mass: LeafMass,
  from: { placed: readonly PlacedPiece[]; pinInset: number },
): Worked<HungOn[]> {
  const heights = hingeHeights(leaf, from.placed)
  const [bottom, top] = [heights[0], heights.at(-1)]
  const spacing = bottom && top ? top.y - bottom.y : 0
  if (!(spacing > 0)) throw new RangeError(`hinges at two heights were expected on the ${leaf.name}`)
  const weight = weightOf(mass.massKg)
  const hung: HungLeaf = { weight, centreX: mass.centre.x, pinInset: from.pinInset, spacing }
  const couple = hingeCouple(hung)
  const last = heights.length - 1
  const figures: Figures = {
    'hinges.pull': hingeCoupleFigure(hung),
    'hinges.whole': hingeShareFigure(mass.massKg),
    'hinges.share': figure(weight / heights.length, 'N', {
      formula: 'weight / number of hinges; the whole weight may fall on one',
      inputs: { weight, 'number of hinges': heights.length },
      source: commonPractice,
    }),
  }
  heights.forEach(({ how }, index) => (figures[`hinge.${index + 1}.y`] = how))
  const value = heights.map(({ y }, index): HungOn => ({
    y,
    pullN: index === last ? couple : index === 0 ? 0 - couple : 0,
    shareN: weight / heights.length,
  }))
  return { value, figures, checks: [] }
}
