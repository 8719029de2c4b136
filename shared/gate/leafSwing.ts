import { lengthTolerance } from '../geometry/point.ts'
import { writeShortMm } from '../units/writeLength.ts'
import type { Check } from './checks.ts'
import { geometry, type Figures } from './figures.ts'
import { greatestRise, groundClearance, type GroundSwing } from './groundSwing.ts'
import type { LeafName } from './leaf.ts'
import type { LeafPlan } from './leafPlan.ts'
import type { GateSpec } from './spec.ts'
import { bevelledClosingGap, leadEdgeBevel, leastClosingGap, type Swing } from './swing.ts'
import { groundFigures, swingFigures } from './swingFigures.ts'
import { figure, type Worked } from './worked.ts'

/**
 * How one leaf swings. closingGap the least gap at its closing edge as it is; bevel the lead-edge bevel in degrees and the gap it still
 * needs (null where no bevel clears); ground the gap to leave under the closing edge over ground that rises and the angle in degrees where
 * it is worst (null over level ground). mm. The whole is null for a pin past the closing edge.
 */
export type LeafSwing = {
  leaf: LeafName
  closingGap: number
  bevel: { angle: number; closingGap: number } | null
  ground: { clearance: number; angle: number } | null
}

/** Least clearance over the highest ground that a leaf swings across, mm: common practice. */
export const leastGroundGap = 10

const mm = (length: number): string => `${writeShortMm(length)} mm`

function swingOf(spec: GateSpec, plan: LeafPlan): Swing | undefined {
  const { section, topSection = section, closingInset } = spec.ledges
  const { pinInset = 0, pinProud = 0 } = spec.site ?? {}
  if (!(plan.width - pinInset > 0)) return undefined
  return {
    width: plan.width,
    pinInset,
    pinProud,
    boards: spec.boards.section.thickness,
    ledges: spec.frame ? section.thickness : Math.max(section.thickness, topSection.thickness),
    closingInset,
    opens: spec.opens ?? 'to-back',
  }
}

const pinPastEdge = (plan: LeafPlan, pinInset: number): Check => ({
  id: 'pin-past-edge',
  level: 'caution',
  message: `The pin stands ${mm(pinInset)} in on a leaf ${mm(plan.width)} wide: it can’t swing.`,
  figures: ['leaf.width'],
  remedy: 'Measure the pin again: it stands near the hanging edge.',
  field: 'site.pinInset',
})

/** A gap in mm and its entry in the spec. */
type GapThere = { gap: number; field: string }

/** The gap that is there at the closing edge, mm, when an opening was surveyed: a pair's is the meeting gap. */
function gapThere({ size, leaves }: GateSpec): GapThere | undefined {
  if (leaves === 2) return { gap: size.meetingGap ?? 0, field: 'size.meetingGap' }
  return size.from === 'opening' ? { gap: size.closingGap, field: 'size.closingGap' } : undefined
}

/** What to leave when the size of the opening isn't known. */
const leastNote = (least: number): Check => ({
  id: 'closing-gap-least',
  level: 'note',
  message: `The leaf needs a closing gap of ${mm(least)} at least to swing clear.`,
  figures: ['swing.gap'],
  remedy: 'Leave more than that at the closing edge: 10 mm is usual.',
  field: 'size',
})

function smallGap({ bevel, closingGap: least }: LeafSwing, { gap, field }: GapThere): Check {
  const helps = bevel !== null && bevel.closingGap <= gap + lengthTolerance && bevel.angle > 0
  return {
    id: 'closing-gap-small',
    level: 'caution',
    message: `The gap of ${mm(gap)} at the closing edge is under the ${mm(least)} that the leaf needs to swing clear.`,
    figures: ['swing.gap'],
    remedy: helps
      ? `Bevel the closing edge ${writeShortMm(bevel.angle)}°, or leave ${mm(least)} or more.`
      : `Leave ${mm(least)} or more.`,
    field,
  }
}

/** grown: how much wider the leaf gets at the wettest, mm. On a pair both leaves grow towards the meeting line. */
function gapChecks(spec: GateSpec, swing: LeafSwing, grown: number): Check[] {
  const there = gapThere(spec)
  const least = swing.closingGap
  if (!there) return [leastNote(least)]
  const { gap, field } = there
  if (gap < least - lengthTolerance) return [smallGap(swing, there)]
  const grows = grown * spec.leaves
  if (gap - grows >= least - lengthTolerance) return []
  return [
    {
      id: 'closing-gap-wet',
      level: 'caution',
      message: `At the wettest the gap of ${mm(gap)} at the closing edge comes down to ${mm(gap - grows)}; ${mm(least)} is what the leaf needs to swing clear.`,
      figures: ['swing.gap', 'swing.grown'],
      remedy: `Leave ${mm(least + grows)} or more, or wider gaps between the boards.`,
      field,
    },
  ]
}

/** The ground that a leaf swings over; undefined over level ground and for the upper half of a stable door. */
function groundOf(spec: GateSpec, plan: LeafPlan): GroundSwing | undefined {
  const along = plan.groundSlope + 0
  const across = spec.site?.slopeAcross ?? 0
  if (plan.name === 'upper half' || (along === 0 && across === 0)) return undefined
  return {
    width: plan.width,
    openTo: spec.openTo ?? 90,
    slope: { along, across },
    followsGround: spec.foot === 'follows-ground',
  }
}

function groundChecks(spec: GateSpec, ground: GroundSwing): Check[] {
  const { rise, angle } = greatestRise(ground)
  if (spec.size.from !== 'opening')
    return [
      {
        id: 'ground-gap-least',
        level: 'note',
        message: `The ground under the closing edge rises ${mm(rise)} above that at the pin, most at ${writeShortMm(angle)}°.`,
        figures: ['swing.ground', 'swing.groundAngle'],
        remedy: `Hang the leaf ${mm(groundClearance(ground, leastGroundGap))} or more above the ground at the pin.`,
        field: 'site.slopeAcross',
      },
    ]
  // A level foot keeps the ground gap over the highest ground it shuts over, so over rising ground it stands higher at the pin.
  const shutRise = ground.followsGround ? 0 : Math.max(0, ground.width * ground.slope.along)
  const clear = spec.size.groundGap + shutRise - rise
  if (clear >= leastGroundGap - lengthTolerance) return []
  const hits = clear < -lengthTolerance
  return [
    {
      id: 'swing-ground',
      level: 'caution',
      message: hits
        ? `As it opens the leaf hits the ground: ${mm(-clear)} too low at ${writeShortMm(angle)}°.`
        : `As it opens the leaf comes within ${mm(Math.max(0, clear))} of the ground at ${writeShortMm(angle)}°; ${leastGroundGap} mm is the least usual.`,
      figures: ['swing.ground', 'swing.groundAngle'],
      remedy: `Leave a ground gap of ${mm(spec.size.groundGap + leastGroundGap - clear)} or more, open it less far or the other way, or use rising hinges.`,
      field: 'size.groundGap',
    },
  ]
}

/** Swing of one leaf: the gap it needs, the bevel that helps, and the ground it must clear. grown: how much wider it gets at the wettest, mm. */
export function leafSwing(spec: GateSpec, plan: LeafPlan, grown: number): Worked<LeafSwing | null> {
  const swing = swingOf(spec, plan)
  if (!swing) return { value: null, figures: {}, checks: [pinPastEdge(plan, spec.site?.pinInset ?? 0)] }
  const bevel = leadEdgeBevel(swing)
  const ground = groundOf(spec, plan)
  const value: LeafSwing = {
    leaf: plan.name,
    closingGap: leastClosingGap(swing),
    bevel: bevel ? { angle: bevel.angle, closingGap: bevelledClosingGap(swing) } : null,
    ground: ground
      ? { clearance: groundClearance(ground, leastGroundGap), angle: greatestRise(ground).angle }
      : null,
  }
  const figures: Figures = {
    ...swingFigures(swing),
    ...(ground ? groundFigures(ground, leastGroundGap) : {}),
    ...(grown > 0
      ? {
          'swing.grown': figure(grown, 'mm', {
            formula: 'leaf width at the wettest − leaf width as made',
            inputs: { 'leaf width at the wettest': plan.width + grown, 'leaf width as made': plan.width },
            source: geometry,
          }),
        }
      : {}),
  }
  const checks = [
    ...(plan.name === 'upper half' ? [] : gapChecks(spec, value, grown)),
    ...(ground ? groundChecks(spec, ground) : []),
  ]
  return { value, figures, checks }
}
