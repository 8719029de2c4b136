import { isStop, type Check } from './checks.ts'
import { geometry, workshopSetting, type Figure, type Figures } from './figures.ts'
import { headRoom } from './headRoom.ts'
import { fromOpening, type LeafSize } from './opening.ts'
import type { LeafName } from './leaf.ts'
import { meetingFigures } from './meeting.ts'
import { meetingChecks } from './meetingChecks.ts'
import type { GateSpec } from './spec.ts'
import { topLine, topStops, type TopLine } from './topShape.ts'
import { pairRise, secondHeight, secondHeightFigure, slopeChecks } from './pairOnSlope.ts'
import { figure, type Worked } from './worked.ts'

/**
 * One leaf before it has parts, in its own frame. prefix goes before the ids of its figures when there is more than one leaf.
 * foot is the line its foot follows (y at any x); groundSlope the rise of the ground along it, away from its hanging side. mm.
 */
export type LeafPlan = LeafSize & {
  name: LeafName
  prefix: string
  top: TopLine
  foot: (x: number) => number
  groundSlope: number
}

function sizeOf(spec: GateSpec): Worked<LeafSize> {
  const { size } = spec
  if (size.from === 'opening') return fromOpening(spec, size)
  const entered = (value: number) =>
    figure(value, 'mm', { formula: 'as entered', inputs: { entered: value }, source: workshopSetting })
  return {
    value: { width: size.width, height: size.height },
    figures: { 'leaf.width': entered(size.width), 'leaf.height': entered(size.height) },
    checks: [],
  }
}

const level = (): number => 0

/** The two halves of a stable door: one above the other, the shaped top on the upper. */
function stableHalves(spec: GateSpec, whole: LeafSize, stable: NonNullable<GateSpec['stable']>): LeafPlan[] {
  const lower = { width: whole.width, height: stable.lowerHeight }
  const upper = { width: whole.width, height: whole.height - stable.lowerHeight - stable.gap }
  const slope = spec.site?.slopeAlong ?? 0
  return [
    {
      ...lower,
      name: 'lower half',
      prefix: '',
      top: topLine({ shape: 'level' }, lower, lower.width),
      foot: footOf(spec, slope),
      groundSlope: slope,
    },
    {
      ...upper,
      name: 'upper half',
      prefix: 'upper.',
      top: topLine(spec.top, upper, upper.width),
      foot: level,
      groundSlope: slope,
    },
  ]
}

/** The line of a leaf's foot: level, or rising with the ground along the opening. */
const footOf = (spec: GateSpec, slope: number): ((x: number) => number) =>
  // Adding 0 keeps a falling foot from starting at −0.
  spec.foot === 'follows-ground' && slope !== 0 ? (x) => slope * x + 0 : level

function plansOf(spec: GateSpec, size: LeafSize): LeafPlan[] {
  if (spec.stable) return stableHalves(spec, size, spec.stable)
  const slope = spec.site?.slopeAlong ?? 0
  if (spec.leaves === 1)
    return [
      {
        ...size,
        name: 'leaf',
        prefix: '',
        top: topLine(spec.top, size, size.width),
        foot: footOf(spec, slope),
        groundSlope: slope,
      },
    ]
  const span = spanOf(spec, size.width)
  return (
    [
      ['first leaf', '', slope, size.height],
      ['second leaf', 'second.', 0 - slope, secondHeight(spec, size)],
    ] as const
  ).map(([name, prefix, own, height]) => ({
    width: size.width,
    height,
    name,
    prefix,
    top: topLine(spec.top, { width: size.width, height }, span),
    foot: footOf(spec, own),
    groundSlope: own,
  }))
}

/** The width a curve or rake runs over, mm: both leaves and the meeting gap for a curve on a pair, else the leaf. */
const spanOf = (spec: GateSpec, width: number): number =>
  spec.leaves === 2 && spec.top.shape !== 'raked' ? 2 * width + (spec.size.meetingGap ?? 0) : width

function divisionStop(spec: GateSpec, whole: LeafSize): Check[] {
  const { stable } = spec
  if (!stable || whole.height - stable.lowerHeight - stable.gap > 0) return []
  return [
    {
      id: 'part-no-size',
      level: 'stop',
      message: 'The upper half has no height left.',
      figures: ['whole.height'],
      remedy: 'Lower the division of the stable door, or make the opening higher.',
      field: 'stable.lowerHeight',
    },
  ]
}

/** The whole's size figures, renamed 'whole…' on a stable door, where the halves have sizes of their own. */
function sizeFiguresOf(spec: GateSpec, size: Worked<LeafSize>, plans: LeafPlan[]): Figures {
  const figures: Figures = { ...size.figures }
  const { stable } = spec
  if (stable) {
    const whole = size.figures['leaf.height'] as Figure
    figures['whole.height'] = whole
    figures['leaf.height'] = figure(stable.lowerHeight, 'mm', {
      formula: 'as entered',
      inputs: { entered: stable.lowerHeight },
      source: workshopSetting,
    })
    figures['upper.leaf.height'] = figure(size.value.height - stable.lowerHeight - stable.gap, 'mm', {
      formula: 'whole height − lower half − gap',
      inputs: { 'whole height': whole.value, 'lower half': stable.lowerHeight, gap: stable.gap },
      source: geometry,
    })
    figures['upper.leaf.width'] = size.figures['leaf.width'] as Figure
  }
  const rise = pairRise(spec, size.value)
  if (rise !== 0) figures['second.leaf.height'] = secondHeightFigure(spec, size.value)
  for (const plan of plans) {
    for (const side of ['width', 'height'] as const)
      figures[`${plan.prefix}leaf.${side}`] ??= size.figures[`leaf.${side}`] as Figure
    figures[`${plan.prefix}leaf.diagonal`] = figure(Math.hypot(plan.width, plan.height), 'mm', {
      formula: '√(width² + height²)',
      inputs: { width: plan.width, height: plan.height },
      source: geometry,
    })
  }
  return figures
}

/**
 * Every leaf of a gate with its size, top line and foot line; leaves[0] opens first (stable door: the lower half). No leaves where
 * a size or the top can't be.
 */
export function planLeaves(spec: GateSpec): Worked<LeafPlan[]> {
  const size = sizeOf(spec)
  const checks = [...size.checks, ...divisionStop(spec, size.value), ...meetingChecks(spec)]
  if (!checks.some(isStop)) checks.push(...slopeChecks(spec, size.value))
  const room = headRoom(spec, size.value)
  if (!checks.some(isStop)) checks.push(...room.checks)
  if (!checks.some(isStop)) checks.push(...topStops(spec.top, spanOf(spec, size.value.width)))
  const plans = checks.some(isStop) ? [] : plansOf(spec, size.value)
  return {
    value: plans,
    figures: {
      ...sizeFiguresOf(spec, size, plans),
      ...room.figures,
      ...meetingFigures(spec, size.value.width),
    },
    checks,
  }
}
