import { fact, leastSure, sourceWords, type Fact } from '../timber/fact.ts'
import { timberNamed } from '../timber/species.ts'
import { strengthClass, type StrengthClass } from '../timber/strengthClasses.ts'
import type { GateSpec, Section } from './spec.ts'

/** The strength class of a section's timber, with where both the class and its values come from; undefined where it isn't known. */
export function sectionStrength(spec: GateSpec, { species }: Section): Fact<StrengthClass> | undefined {
  const named = timberNamed(species, spec.timbers)?.strengthClass
  const found = named && strengthClass(named.value)
  if (!named || !found) return undefined
  return fact(found.value, `${found.source}; class by ${sourceWords(named)}`, leastSure([named, found]))
}
