import { bolts } from './bolts.ts'
import type { CatalogueEntry } from './entry.ts'
import { handles } from './handles.ts'
import { hookAndBandSets } from './hookAndBand.ts'
import { latches } from './latches.ts'
import { locks } from './locks.ts'
import { teeHinges } from './teeHinges.ts'

/** Where the entries come from: nothing published stands behind an invented example. */
export const catalogueSource =
  'invented example in the ironmongery list, to be replaced by what the workshop buys'

/** The ironmongery a new workshop starts from: invented examples, each id once. */
export const catalogue: readonly CatalogueEntry[] = [
  ...teeHinges,
  ...hookAndBandSets,
  ...latches,
  ...locks,
  ...bolts,
  ...handles,
]

const byId = new Map(catalogue.map((entry) => [entry.id, entry]))

/** The catalogue's entry of an id and kind; undefined for a piece of the workshop's own that isn't in it. */
export function entryOf<K extends CatalogueEntry['kind']>(
  id: string,
  kind: K,
): Extract<CatalogueEntry, { kind: K }> | undefined {
  const found = byId.get(id)
  return found && isOfKind(found, kind) ? found : undefined
}

const isOfKind = <K extends CatalogueEntry['kind']>(
  entry: CatalogueEntry,
  kind: K,
): entry is Extract<CatalogueEntry, { kind: K }> => entry.kind === kind

/** The finish of a piece by its id, where the catalogue knows it. */
export const finishOf = (id: string): CatalogueEntry['finish'] | undefined => byId.get(id)?.finish
