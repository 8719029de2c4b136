import { bareLeaf, durabilityAdvice, dustAdvice } from '../timber/advice.ts'
import { metalAdvice } from '../timber/fixingMetal.ts'
import { timberNamed } from '../timber/species.ts'
import type { TimberFacts } from '../timber/timberFacts.ts'
import type { Check } from './checks.ts'
import { sectionsOf } from './sectionsOf.ts'
import type { GateSpec } from './spec.ts'

/** Each timber of the gate once, with the first place it is used. */
function timbersOf(spec: GateSpec): [string, TimberFacts][] {
  const found = new Map<string, [string, TimberFacts]>()
  for (const [path, { species }] of sectionsOf(spec)) {
    const timber = timberNamed(species, spec.timbers)
    if (timber && !found.has(timber.name)) found.set(timber.name, [`${path}.species`, timber])
  }
  return [...found.values()]
}

/**
 * What there is to know of the gate's timbers out of doors, bare and clear of the ground (use class 3.2): which metal to fix them with, how
 * long they last, their sapwood and their dust.
 */
export const timberChecks = (spec: GateSpec): Check[] =>
  timbersOf(spec).flatMap(([field, timber]) =>
    [...metalAdvice(timber, bareLeaf), ...durabilityAdvice(timber, bareLeaf), ...dustAdvice(timber)].map(
      ({ id, level, message, remedy }): Check => ({ id, level, message, figures: [], remedy, field }),
    ),
  )
