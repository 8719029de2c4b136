import { sectionsOf } from '../gate/sectionsOf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { listedTimbers, timberNamed } from '../timber/species.ts'

const plain = (name: string): string => name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '')

/** The listed spelling of a name the program knows ('Western redcedar' is written western redcedar), else the workshop's own words. */
const spelt = (name: string): string =>
  listedTimbers
    .flatMap((entry) => [entry.name, ...entry.alsoCalled])
    .find((known) => plain(known) === plain(name)) ?? name.trim()

/** A timber as a customer reads it: 'European redwood', 'treated European redwood' where the workshop says that it is. */
export function timberWords(species: string, spec: GateSpec): string {
  const treated = timberNamed(species, spec.timbers)?.treated === true
  return treated ? `treated ${spelt(species)}` : spelt(species)
}

/** The one timber that every part of a gate is made of, undefined where there are several. */
export function onlyTimber(spec: GateSpec): string | undefined {
  const all = new Set(sectionsOf(spec).map(([, { species }]) => timberWords(species, spec)))
  return all.size === 1 ? [...all][0] : undefined
}

/** Whether any part is of treated timber, which its owner must not burn or saw without care. */
export const hasTreatedTimber = (spec: GateSpec): boolean =>
  sectionsOf(spec).some(([, { species }]) => timberNamed(species, spec.timbers)?.treated === true)
