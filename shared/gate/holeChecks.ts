import { writeShortMm } from '../units/writeLength.ts'
import { lengthTolerance } from '../geometry/point.ts'
import type { Check } from './checks.ts'
import { clench, headSunk, pointBehindFace, type ChosenLength } from './fixingLength.ts'
import type { Hole } from './holes.ts'
import type { Member } from './holeMembers.ts'
import type { GateSpec } from './spec.ts'
import { workshopOf } from './standardSpec.ts'

/** No length in stock fits: what is wanted and what is kept. */
export function noLengthStop(spec: GateSpec, member: Member): Check {
  const { kind, lengths } = spec.fixings
  const total = member.section.thickness + spec.boards.section.thickness
  const wanted =
    kind === 'screw'
      ? `over ${writeShortMm(member.section.thickness - headSunk)} and up to ${writeShortMm(total - headSunk - pointBehindFace)} mm`
      : `${writeShortMm(total + clench.least)} mm or more`
  return {
    id: 'no-fixing-fits',
    level: 'stop',
    message: `No ${kind} in stock fits through the ${member.name}: ${wanted} is wanted, ${lengths.map((length) => writeShortMm(length)).join(', ')} are kept.`,
    figures: [],
    remedy: `Add a ${kind} of that length, or change the thickness of the ${member.name}.`,
    field: 'fixings.lengths',
  }
}

type Chosen = NonNullable<ChosenLength>

/** A nail that leaves more to turn over than is usual. */
function nailChecks(spec: GateSpec, member: Member, { length }: Chosen): Check[] {
  const over = length - member.section.thickness - spec.boards.section.thickness
  if (over <= clench.most + lengthTolerance) return []
  return [
    {
      id: 'nail-long',
      level: 'caution',
      field: 'fixings.lengths',
      figures: [`hole.${member.key}.length`],
      message: `The nearest nail through the ${member.name} is ${writeShortMm(length)} mm and leaves ${writeShortMm(over)} mm to clench; ${clench.least} to ${clench.most} mm is usual.`,
      remedy: 'Cut the points back before clenching, or keep a shorter nail.',
    },
  ]
}

/** A screw's point that goes less than half through the board, or less than a structural screw's must. */
function screwChecks(spec: GateSpec, member: Member, { penetration }: Chosen): Check[] {
  const board = spec.boards.section.thickness
  const structural = 6 * spec.fixings.diameter
  const at = { field: 'fixings.lengths', figures: [`hole.${member.key}.penetration`] }
  const goes = `${writeShortMm(penetration)} mm into`
  if (penetration < board / 2 - lengthTolerance)
    return [
      {
        id: 'penetration-small',
        level: 'caution',
        ...at,
        message: `The screw through the ${member.name} goes only ${goes} a board ${writeShortMm(board)} mm thick.`,
        remedy: 'Keep a longer screw, or use a thinner ledge or brace.',
      },
    ]
  if (penetration >= structural - lengthTolerance) return []
  return [
    {
      id: 'penetration-structural',
      level: 'note',
      ...at,
      message: `The screw through the ${member.name} goes ${goes} the board, under the ${writeShortMm(structural)} mm (6 diameters) asked of a structural screw by EN 1995-1-1 §8.7.2(3).`,
      remedy:
        'Usual for boards this thin: the ledges and the brace carry the leaf, not the pull of the screws.',
    },
  ]
}

/** How a nail clenches or how far a screw's point holds. */
export const penetrationChecks = (spec: GateSpec, member: Member, chosen: Chosen): Check[] =>
  spec.fixings.kind === 'nail' ? nailChecks(spec, member, chosen) : screwChecks(spec, member, chosen)

/** A hole for which the workshop's set has no drill that would do: the size to find is said instead. */
export function drillChecks(spec: GateSpec, member: Member, hole: Hole): Check[] {
  if (workshopOf(spec).drills.length === 0) return []
  const wanted = (['clearance', 'lead', 'countersink'] as const).filter((kind) => hole[kind]?.drill === null)
  if (wanted.length === 0) return []
  const sizes = wanted.map((kind) => `${kind} ${writeShortMm(hole[kind]?.exact ?? 0)} mm`).join(', ')
  return [
    {
      id: 'drill-missing',
      level: 'caution',
      field: 'workshop.drills',
      figures: wanted.map((kind) => `hole.${member.key}.${kind}`),
      message: `No drill of the set does for the ${member.name}: ${sizes}.`,
      remedy: 'Add a drill near that size to the set.',
    },
  ]
}
