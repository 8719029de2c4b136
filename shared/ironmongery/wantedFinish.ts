import type { GateSpec } from '../gate/spec.ts'
import { bareLeaf } from '../timber/advice.ts'
import { fixingMetal, type Metal } from '../timber/fixingMetal.ts'
import { timberNamed } from '../timber/species.ts'
import type { TimberFacts } from '../timber/timberFacts.ts'
import type { Finish } from './entry.ts'

/** The metal that a finish counts as where damp timber is hard on it: japan over plain steel soon chips. Common practice. */
export const metalOfFinish: Record<Finish, Metal> = {
  'black japanned': 'plain steel',
  galvanised: 'galvanised',
  stainless: 'stainless',
}

/** The timbers that ironmongery lies on or is screwed into, each once. */
export function timbersUnder(spec: GateSpec): TimberFacts[] {
  const names = [spec.boards.section, spec.ledges.section, spec.frame?.stile, spec.frame?.topRail].flatMap(
    (section) => (section ? [section.species] : []),
  )
  return [...new Set(names)].flatMap((name) => timberNamed(name, spec.timbers) ?? [])
}

/** The finish proposed for a gate: stainless where any of its timbers wants or prefers it, else galvanised. */
export const wantedFinish = (spec: GateSpec): Finish =>
  timbersUnder(spec).some((timber) => fixingMetal(timber, bareLeaf).value !== 'galvanised')
    ? 'stainless'
    : 'galvanised'
