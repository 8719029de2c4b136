import { ovenDryGravity, speciesNamed } from '../timber/species.ts'
import type { Check } from './checks.ts'
import type { Figures } from './figures.ts'
import { chooseLength, type ChosenLength } from './fixingLength.ts'
import { drillChecks, noLengthStop, penetrationChecks } from './holeChecks.ts'
import { holeFigures, type HoleSource } from './holeFigures.ts'
import { membersOf, type Member } from './holeMembers.ts'
import type { Hole } from './holes.ts'
import { clearanceDrill, countersinkDrill, leadDrill, leadHole } from './leadHole.ts'
import type { Fixing } from './leaf.ts'
import type { GateSpec } from './spec.ts'
import { workshopOf } from './standardSpec.ts'
import type { Worked } from './worked.ts'
import { writeShortMm } from '../units/writeLength.ts'

/** What the board's timber and the fixing settle for every hole through one part. */
function sourceOf(spec: GateSpec, member: Member): HoleSource {
  const { kind, diameter, root = (2 / 3) * diameter } = spec.fixings
  const { clearance, leadRule } = workshopOf(spec)
  const { species, thickness: board } = spec.boards.section
  const timber = speciesNamed(species, spec.timbers)
  if (!timber) throw new RangeError(`sourceOf needs a known species, got ${species}`)
  const gravity = ovenDryGravity(timber.density)
  return {
    id: `hole.${member.key}`,
    kind,
    through: member.section.thickness,
    board,
    diameter,
    root,
    rootGiven: spec.fixings.root !== undefined,
    density: timber.density,
    clearance,
    gravity,
    lead: leadHole(leadRule, gravity, { root, shank: diameter }),
  }
}

function holeOf(spec: GateSpec, member: Member, chosen: NonNullable<ChosenLength>): Worked<Hole> {
  const { drills } = workshopOf(spec)
  const source = sourceOf(spec, member)
  const { kind, diameter, clearance, lead } = source
  const screw = kind === 'screw'
  const wanted = { clearance: diameter + clearance, countersink: 2 * diameter }
  const hole: Hole = {
    through: member.name,
    quantity: member.quantity,
    fixing: `${kind} ${writeShortMm(diameter, 2)} × ${writeShortMm(chosen.length, 2)}`,
    fixingLength: chosen.length,
    penetration: chosen.penetration,
    clearance: screw
      ? { exact: wanted.clearance, drill: clearanceDrill(wanted.clearance, diameter, drills) }
      : null,
    lead:
      screw && lead.diameter !== null
        ? { exact: lead.diameter, drill: leadDrill(lead.diameter, diameter, drills) }
        : null,
    countersink: screw
      ? { exact: wanted.countersink, drill: countersinkDrill(wanted.countersink, diameter, drills) }
      : null,
  }
  return {
    value: hole,
    figures: holeFigures(hole, source),
    checks: [...penetrationChecks(spec, member, chosen), ...drillChecks(spec, member, hole)],
  }
}

/** The fixing and the holes for every part that fixings go through. */
export function sizeHoles(spec: GateSpec, places: Fixing[]): Worked<Hole[]> {
  const checks: Check[] = []
  const figures: Figures = {}
  const holes: Hole[] = []
  for (const member of membersOf(spec, places)) {
    const chosen = chooseLength(spec.fixings, member.section.thickness, spec.boards.section.thickness)
    if (!chosen) {
      checks.push(noLengthStop(spec, member))
      continue
    }
    const worked = holeOf(spec, member, chosen)
    holes.push(worked.value)
    checks.push(...worked.checks)
    Object.assign(figures, worked.figures)
  }
  return { value: holes, figures, checks }
}
