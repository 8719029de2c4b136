/**
 * How sure a value is. published: read in the source itself. second-hand: read in another text that cites the source.
 * memory: not looked up, so to be checked before it decides anything. common practice: the trade's habit, no document behind
 * it. workshop: this workshop's own setting.
 */
export type Certainty = 'published' | 'second-hand' | 'memory' | 'common practice' | 'workshop'

/** One value of a timber, with where it comes from and how sure it is. source is never empty. */
export type Fact<T> = { value: T; source: string; certainty: Certainty }

/** A value with its source, in one line. */
export const fact = <T>(value: T, source: string, certainty: Certainty): Fact<T> => ({
  value,
  source,
  certainty,
})

/** Whether a value may settle something alone: memory and common practice may not. */
export const isSure = (one: Fact<unknown>): boolean =>
  one.certainty !== 'memory' && one.certainty !== 'common practice'

const order: readonly Certainty[] = ['memory', 'common practice', 'second-hand', 'published', 'workshop']

/** The least sure of several values: what a result worked from them all can claim. */
export function leastSure(facts: readonly Fact<unknown>[]): Certainty {
  const worst = Math.min(...facts.map(({ certainty }) => order.indexOf(certainty)))
  const found = order[worst]
  if (found === undefined) throw new RangeError('leastSure needs at least one value')
  return found
}

/** A source as it is shown to the person: a value from memory says that it is one. */
export const sourceWords = ({ source, certainty }: Fact<unknown>): string =>
  certainty === 'memory' && !source.includes('from memory') ? `${source}, from memory` : source
