import { writeShortMm } from '../units/writeLength.ts'
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
    message: `No ${kind} in stock fits through the ${member.name}: ${wanted} is wanted, ${lengths.join(', ')} are kept.`,
    figures: [],
    remedy: `Add a ${kind} of that length, or change the thickness of the ${member.name}.`,
    field: 'fixings.lengths',
  }
}

/** How a nail clenches or how far a screw's point holds. */
export function penetrationChecks(
  spec: GateSpec,
  member: Member,
  chosen: NonNullable<ChosenLength>,
): Check[] {
  const board = spec.boards.section.thickness
  const { kind, diameter } = spec.fixings
  const figures = [`hole.${member.key}.penetration`]
  const id = `through the ${member.name}`
  if (kind === 'nail')
    return chosen.length > member.section.thickness + board + clench.most
      ? [
          {
            id: 'nail-long',
            level: 'caution',
            field: 'fixings.lengths',
            figures: [`hole.${member.key}.length`],
            message: `The nearest nail ${id} is ${chosen.length} mm and leaves ${writeShortMm(chosen.length - member.section.thickness - board)} mm to clench; ${clench.least} to ${clench.most} mm is usual.`,
            remedy: 'Cut the points back before clenching, or keep a shorter nail.',
          },
        ]
      : []
  if (chosen.penetration < board / 2)
    return [
      {
        id: 'penetration-small',
        level: 'caution',
        field: 'fixings.lengths',
        figures,
        message: `The screw ${id} goes only ${writeShortMm(chosen.penetration)} mm into a board ${board} mm thick.`,
        remedy: 'Keep a longer screw, or use a thinner ledge or brace.',
      },
    ]
  if (chosen.penetration < 6 * diameter)
    return [
      {
        id: 'penetration-structural',
        level: 'note',
        field: 'fixings.lengths',
        figures,
        message: `The screw ${id} goes ${writeShortMm(chosen.penetration)} mm into the board, under the ${writeShortMm(6 * diameter)} mm (6 diameters) asked of a structural screw by EN 1995-1-1 §8.7.2(3).`,
        remedy:
          'Usual for boards this thin: the ledges and the brace carry the leaf, not the pull of the screws.',
      },
    ]
  return []
}

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
