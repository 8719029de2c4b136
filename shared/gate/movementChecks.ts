import { lengthTolerance } from '../geometry/point.ts'
import { leastTongueReach } from '../timber/movement.ts'
import { writeShortMm } from '../units/writeLength.ts'
import type { Check } from './checks.ts'
import type { Movement } from './movement.ts'

/** What there is to say of a boarding that moves, with a tongue in mm: a tongue that hardly reaches at the driest, joints that press at the wettest. */
export function movementChecks({ driest, wettest, gap }: Movement, tongue: number): Check[] {
  const checks: Check[] = []
  const reach = driest.tongueReach
  if (reach !== null && reach < leastTongueReach - lengthTolerance)
    checks.push({
      id: 'tongue-driest',
      level: 'caution',
      message:
        reach > 0
          ? `At the driest a tongue of ${writeShortMm(tongue)} mm reaches only ${writeShortMm(reach)} mm into its groove.`
          : `At the driest a tongue of ${writeShortMm(tongue)} mm leaves its groove.`,
      figures: ['movement.driest.tongueReach', 'movement.driest.jointGap'],
      remedy: 'Use narrower boards or a longer tongue, or dry the boards further before they are fixed.',
      field: 'boards.section.width',
    })
  if (wettest.jointGap < -lengthTolerance)
    checks.push({
      id: 'joints-press',
      level: 'caution',
      message: `At the wettest each board wants ${writeShortMm(-wettest.jointGap)} mm more than its gap of ${writeShortMm(gap)} mm: the boards press on one another and cup.`,
      figures: ['movement.wettest.jointGap', 'movement.wettest.boardChange'],
      remedy: `Leave ${writeShortMm(Math.ceil(wettest.boardChange * 2 - 1e-9) / 2)} mm at each joint, or use narrower boards.`,
      field: 'boards.gap',
    })
  return checks
}

/** A timber of which nobody said how it moves. */
export const unknownMovement = (species: string): Check => ({
  id: 'movement-unknown',
  level: 'note',
  message: `How ${species} moves with the air isn’t known, so its gaps through the year aren’t worked out.`,
  figures: [],
  remedy: 'Give its shrinkage or its movement.',
  field: 'boards.section.species',
})
