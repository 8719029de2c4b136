import { writeShortMm } from '../units/writeLength.ts'
import type { Check } from './checks.ts'
import { geometry, type Figure } from './figures.ts'
import type { LeafSize } from './opening.ts'
import type { GateSpec } from './spec.ts'
import { figure } from './worked.ts'

/** How far the second leaf of a pair hangs above the first where their feet follow the ground, mm: the rise over both and the gap between. */
export const pairRise = (spec: GateSpec, { width }: LeafSize): number =>
  spec.leaves === 2 && spec.foot === 'follows-ground'
    ? (spec.site?.slopeAlong ?? 0) * (2 * width + (spec.size.meetingGap ?? 0))
    : 0

/** Height of a pair's second leaf over its own foot, mm: so much less as it hangs higher, so that one line runs across both tops. */
export const secondHeight = (spec: GateSpec, size: LeafSize): number => size.height - pairRise(spec, size)

/** A pair on a slope: its tops run on in one line, so its leaves differ in height; or the second is left none at all. */
export function slopeChecks(spec: GateSpec, size: LeafSize): Check[] {
  const rise = pairRise(spec, size)
  if (rise === 0) return []
  const height = secondHeight(spec, size)
  const found = { figures: ['second.leaf.height'], field: 'site.slopeAlong' }
  if (!(height > 0))
    return [
      {
        id: 'part-no-size',
        level: 'stop',
        message: 'The ground rises so far that the second leaf has no height left.',
        remedy: 'Keep the feet level, or make the leaves higher.',
        ...found,
      },
    ]
  return [
    {
      id: 'pair-on-slope',
      level: 'note',
      message: `The tops run on in one line, so the second leaf is ${writeShortMm(Math.abs(rise))} mm ${rise > 0 ? 'lower' : 'higher'} than the first, each from its own hanging edge.`,
      remedy: 'Measure the height at both posts before cutting.',
      ...found,
    },
  ]
}

/** How the second leaf's height came about, as a worked figure. */
export const secondHeightFigure = (spec: GateSpec, size: LeafSize): Figure =>
  figure(secondHeight(spec, size), 'mm', {
    formula: 'first leaf’s height − slope × (2 × leaf width + meeting gap)',
    inputs: {
      'first leaf’s height': size.height,
      slope: spec.site?.slopeAlong ?? 0,
      'leaf width': size.width,
      'meeting gap': spec.size.meetingGap ?? 0,
    },
    source: geometry,
  })
