/** A word as it is compared: accents and capitals aside. */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()

/**
 * How well a row meets the words typed: each counts by the first field that holds it, in the order given (the first weighs most), double where it is there
 * whole and not only as a beginning; one found elsewhere counts 1.
 */
function meets(fields: readonly string[], words: readonly string[]): number {
  const parts = fields.map((field): string[] => plain(field).match(/[\p{L}\p{N}]+/gu) ?? [])
  return words.reduce((sum, word) => {
    const place = parts.findIndex((part) => part.some((one) => one.startsWith(word)))
    if (place < 0) return sum + 1
    return sum + (parts.length - place + 1) * (parts[place]?.includes(word) ? 2 : 1)
  }, 0)
}

/** Puts what was found in order: those that meet the words best first; of two alike the one that came first stays before the other. */
export function bestFirst<T>(
  found: readonly T[],
  words: readonly string[],
  fieldsOf: (one: T) => readonly string[],
): T[] {
  const sought = words.map(plain)
  return found
    .map((one) => ({ one, score: meets(fieldsOf(one), sought) }))
    .sort((a, b) => b.score - a.score)
    .map(({ one }) => one)
}
