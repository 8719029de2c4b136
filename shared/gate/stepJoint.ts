import type { Figure } from './figures.ts'
import { figure } from './worked.ts'

/**
 * The deepest notch in mm that a published rule allows for a brace let into a member of a depth in mm, at an angle in degrees
 * between the two: h/4 up to 50°, h·(2/3 − α/120) from 50 to 60°, h/6 above. 150 deep: 37.5 at 45°, 31.25 at 55°, 25 at 65°.
 * Source: step joints after the German annex to EN 1995-1-1, second-hand.
 */
export function stepJointDepth(depth: number, angle: number): number {
  if (!(depth > 0) || !(angle >= 0 && angle <= 90))
    throw new RangeError(`a depth over 0 and an angle from 0 to 90 were expected, got ${depth} and ${angle}`)
  if (angle <= 50) return depth / 4
  return angle <= 60 ? depth * (2 / 3 - angle / 120) : depth / 6
}

const formulaFor = (angle: number): string => {
  if (angle <= 50) return 'depth / 4, up to 50°'
  return angle <= 60 ? 'depth × (2/3 − angle / 120), from 50 to 60°' : 'depth / 6, above 60°'
}

/** The same as a worked figure. */
export const stepJointFigure = (depth: number, angle: number): Figure =>
  figure(stepJointDepth(depth, angle), 'mm', {
    formula: formulaFor(angle),
    inputs: { depth, angle },
    source: 'step joint after the German annex to EN 1995-1-1, second-hand',
  })
