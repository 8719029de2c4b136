import { toRadians } from '../units/angle.ts'
import { writeShortMm } from '../units/writeLength.ts'
import type { Check } from './checks.ts'
import { geometry, type Figures } from './figures.ts'
import type { Point } from '../geometry/point.ts'
import { lengthTolerance } from '../geometry/point.ts'
import { stepJointDepth } from './stepJoint.ts'
import { figure } from './worked.ts'

/**
 * A notched brace end: a shoulder square to the brace from the long corner at the ledge edge down to the depth, then a straight slope
 * to the other corner. shoulder and slope are the two faces' lengths for marking; shift is how far along the ledge the notch's point lies
 * from the long corner. mm.
 */
export type Notch = { depth: number; shoulder: number; slope: number; shift: number }

/**
 * The faces of a notch of a depth under a brace of an angle (degrees) and width: shoulder d / cos θ, slope √((b / sin θ − d·tan θ)² + d²).
 * 20 deep under a 95 brace at 60°: shoulder 40, slope 77.69.
 */
export function notchFaces({ depth, angle, width }: { depth: number; angle: number; width: number }): Notch {
  const slope = toRadians(angle)
  const shift = depth * Math.tan(slope)
  return {
    depth,
    shoulder: depth / Math.cos(slope),
    slope: Math.hypot(width / Math.sin(slope) - shift, depth),
    shift,
  }
}

/** A flush outline [foot hanging, foot closing, head closing, head hanging] with a notch at foot and head, anticlockwise. */
export function notchedOutline(outline: readonly Point[], { depth, shift }: Notch): Point[] {
  const [foot, footInner, head, headInner] = outline as [Point, Point, Point, Point]
  return [
    foot,
    [foot[0] + shift, foot[1] - depth],
    footInner,
    head,
    [head[0] - shift, head[1] + depth],
    headInner,
  ]
}

/** What a notch is checked against: brace angle in degrees and width, the ledge's width, how many notches share the ledge; mm. */
export type NotchPlace = {
  name: string
  depth: number
  angle: number
  width: number
  ledge: { name: string; width: number; notches: 1 | 2 }
}

/** A notch past its limits can't be cut; one deeper than the published step joint is said. */
export function notchChecks({ name, depth, angle, width, ledge }: NotchPlace): Check[] {
  const most = Math.min(width * Math.cos(toRadians(angle)), ledge.width / 2 / ledge.notches)
  const field = 'braces.notchDepth'
  const figures = [`brace.${name}.notch.shoulder`]
  const where = `The notch of the ${name === 'single' ? 'brace' : `${name} brace`} in the ${ledge.name}`
  if (depth > most + lengthTolerance)
    return [
      {
        id: 'notch-too-deep',
        level: 'stop',
        message: `${where} is ${writeShortMm(depth)} mm deep; ${writeShortMm(most)} mm is the most ${ledge.notches === 2 ? 'where two notches share the ledge' : 'here'}.`,
        figures,
        remedy: `Cut it ${writeShortMm(most)} mm deep or less, or leave the ends flush.`,
        field,
      },
    ]
  const published = stepJointDepth(ledge.width, angle)
  if (depth <= published + lengthTolerance) return []
  return [
    {
      id: 'notch-deep',
      level: 'caution',
      message: `${where} is ${writeShortMm(depth)} mm deep; a step joint at ${writeShortMm(angle)}° is published as up to ${writeShortMm(published)} mm.`,
      figures,
      remedy: `Cut it ${writeShortMm(published)} mm deep or less.`,
      field,
    },
  ]
}

/** The worked figures of one brace's notches. endGrain is what is left from notch to ledge end at foot and head, mm. */
export function notchFigures(
  name: string,
  notch: Notch,
  from: { angle: number; width: number; endGrain: { foot: number; head: number } },
): Figures {
  const { depth } = notch
  const { angle, width, endGrain } = from
  const mm = (value: number, formula: string, inputs: Record<string, number>) =>
    figure(value, 'mm', { formula, inputs, source: geometry })
  return {
    [`brace.${name}.notch.shoulder`]: mm(notch.shoulder, 'depth / cos(angle)', { depth, angle }),
    [`brace.${name}.notch.slope`]: mm(notch.slope, '√((width / sin(angle) − depth × tan(angle))² + depth²)', {
      width,
      depth,
      angle,
    }),
    [`brace.${name}.notch.shift`]: mm(notch.shift, 'depth × tan(angle)', { depth, angle }),
    [`brace.${name}.notch.endGrainFoot`]: mm(
      endGrain.foot,
      'distance along the ledge from the notch to its end',
      { distance: endGrain.foot },
    ),
    [`brace.${name}.notch.endGrainHead`]: mm(
      endGrain.head,
      'distance along the ledge from the notch to its end',
      { distance: endGrain.head },
    ),
  }
}
