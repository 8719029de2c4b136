/** As deep as any spec or request goes, with room to spare; deeper, the schema refuses what stands there. */
const deepest = 32

const isStrange = (key: string): boolean => key === 'prototype' || key in Object.prototype

/**
 * The paths, as keys, of names that every object has already ('__proto__', 'constructor', 'toString'): a schema passes them over without a word, also
 * among names that anyone may give, such as timbers. What an input holds several times (or in a circle) is looked through once.
 */
export function strangeKeys(input: unknown, depth = 0, seen = new Set<unknown>()): (string | number)[][] {
  if (typeof input !== 'object' || input === null || depth > deepest || seen.has(input)) return []
  seen.add(input)
  // Never by a list's own methods: they make what its 'constructor' says.
  const isList = Array.isArray(input)
  const found: (string | number)[][] = []
  for (const [key, value] of Object.entries(input))
    if (isStrange(key)) found.push([key])
    else
      for (const path of strangeKeys(value, depth + 1, seen))
        found.push([isList ? Number(key) : key, ...path])
  return found
}
