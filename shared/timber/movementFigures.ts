import { commonPractice, geometry, type Figure } from '../gate/figures.ts'
import { figure } from '../gate/worked.ts'
import { sourceWords } from './fact.ts'
import {
  autoGap,
  jointGap,
  movementForm,
  tongueReach,
  widthChange,
  type CrossGrain,
  type MoistureChange,
} from './movement.ts'

const valuesOf = (grain: CrossGrain): string =>
  sourceWords({ value: 0, source: grain.source, certainty: grain.certainty })

/** The change of a width in mm as a worked figure, positive for swelling, by the form that fits the change. */
export function changeFigure(width: number, grain: CrossGrain, change: MoistureChange): Figure {
  const value = widthChange(width, grain, change)
  if (movementForm(change) === 'coefficient')
    return figure(value, 'mm', {
      formula: 'width × coefficient × (moisture after − moisture before)',
      inputs: {
        width,
        coefficient: grain.coefficient,
        'moisture before': change.from,
        'moisture after': change.to,
      },
      source: `Wood Handbook FPL-GTR-190 eq. 13-2; coefficient: ${valuesOf(grain)}`,
    })
  return figure(value, 'mm', {
    formula: 'width × (after − before) / (start × 100 / shrinkage − start + before), neither over the start',
    inputs: {
      width,
      before: Math.min(change.from, grain.start),
      after: Math.min(change.to, grain.start),
      start: grain.start,
      shrinkage: grain.shrinkage,
    },
    source: `Wood Handbook FPL-GTR-190 eq. 13-3; shrinkage: ${valuesOf(grain)}`,
  })
}

/** The gap to leave at each joint, mm, from what a board swells. */
export function autoGapFigure(cover: number, change: MoistureChange, grain: CrossGrain): Figure {
  return figure(autoGap(cover, change, grain), 'mm', {
    formula: 'swelling of one board from the shop to the wettest, never under 0, rounded up to the next 0.5',
    inputs: { cover, swelling: widthChange(cover, grain, change) },
    source: commonPractice,
  })
}

/** What is left of a joint gap once the boards have moved, mm. */
export function jointGapFigure(
  gap: number,
  cover: number,
  moved: { grain: CrossGrain; change: MoistureChange },
): Figure {
  return figure(jointGap(gap, cover, moved), 'mm', {
    formula: 'gap as made − change of one board',
    inputs: { 'gap as made': gap, change: widthChange(cover, moved.grain, moved.change) },
    source: geometry,
  })
}

/** How far the tongue still reaches into its groove, mm. */
export const tongueReachFigure = (tongue: number, gap: number): Figure =>
  figure(tongueReach(tongue, gap), 'mm', {
    formula: 'tongue − joint gap',
    inputs: { tongue, 'joint gap': gap },
    source: geometry,
  })
