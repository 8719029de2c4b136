import { ovenDryGravity, timberNamed } from '../timber/species.ts'
import type { Figures } from './figures.ts'
import { membersOf } from './holeMembers.ts'
import type { Hole } from './holes.ts'
import type { Fixing } from './leaf.ts'
import type { GateSpec } from './spec.ts'
import { allowableHoldFigure } from './withdrawal.ts'

/**
 * What one screw through each part holds when a board is pulled straight off it, N: 'hole.braces.hold' and the like. A clenched nail holds
 * by its turned end, which no rule covers, so it has none.
 */
export function fixingHold(spec: GateSpec, holes: readonly Hole[], places: Fixing[]): Figures {
  const timber = timberNamed(spec.boards.section.species, spec.timbers)
  if (!timber || spec.fixings.kind === 'nail') return {}
  const gravity = ovenDryGravity(timber.density.value)
  const figures: Figures = {}
  for (const { key, name } of membersOf(spec, places)) {
    const hole = holes.find(({ through }) => through === name)
    if (hole)
      figures[`hole.${key}.hold`] = allowableHoldFigure('screw', {
        gravity,
        diameter: spec.fixings.diameter,
        depth: hole.penetration,
      })
  }
  return figures
}
