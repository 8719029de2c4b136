import type { Reshaping } from '../shared/gate/reshape.ts'
import { sectionsOf } from '../shared/gate/sectionsOf.ts'
import type { DraftSpec, Timber } from '../shared/gate/spec.ts'
import { timberNamed } from '../shared/timber/species.ts'

type Own = NonNullable<DraftSpec['timbers']>

/** Names are one timber whatever their capitals, spaces and hyphens. */
const alike = (one: string, other: string): boolean => {
  const plain = (name: string) => name.toLowerCase().replace(/[^\p{L}\p{M}\p{N}]+/gu, '')
  return plain(one) === plain(other)
}

/** The timbers that a gate's sections are of, each once, in the order of the sections. */
export const timbersInUse = (spec: DraftSpec): string[] =>
  sectionsOf(spec)
    .map(([, section]) => section.species)
    .filter((name, at, all) => all.findIndex((other) => alike(other, name)) === at)

/** The timbers described on this job that no section is of. */
export const timbersUnused = (spec: DraftSpec): string[] =>
  Object.keys(spec.timbers ?? {}).filter((name) => !timbersInUse(spec).some((used) => alike(used, name)))

/** This job's own values of a timber; nothing where it takes them all as listed. */
export const ownValues = (spec: DraftSpec, name: string): Timber =>
  Object.entries(spec.timbers ?? {}).find(([key]) => alike(key, name))?.[1] ?? {}

/** The timbers whole, since a name of two words can't stand in a path. */
const put = (timbers: Own): Reshaping[] => [
  { path: 'spec.timbers', value: Object.keys(timbers).length > 0 ? timbers : null },
]

const without = (spec: DraftSpec, name: string): Own =>
  Object.fromEntries(Object.entries(spec.timbers ?? {}).filter(([key]) => !alike(key, name)))

/** One value of a timber on this job alone; undefined takes it as listed again. */
export function withOwnValue<K extends keyof Timber>(
  spec: DraftSpec,
  name: string,
  [key, value]: [K, Timber[K] | undefined],
): Reshaping[] {
  const { [key]: _before, ...rest } = ownValues(spec, name)
  const next: Timber = value === undefined ? rest : { ...rest, [key]: value }
  const empty = Object.keys(next).length === 0
  return put(empty && timberNamed(name) ? without(spec, name) : { ...without(spec, name), [name]: next })
}

/** A timber of the workshop's own, known by its density until more is said of it. */
export const describe = (spec: DraftSpec, name: string, density: number): Reshaping[] =>
  put({ ...without(spec, name), [name]: { density } })

/** The job without what was said of a timber. */
export const forgetTimber = (spec: DraftSpec, name: string): Reshaping[] => put(without(spec, name))
