import { keysTo, placesIn } from './placesIn.ts'

const isStrange = (key: string | number): boolean => key === 'prototype' || String(key) in Object.prototype

/**
 * The paths, as keys, of names that every object has already ('__proto__', 'constructor', 'toString'): a schema passes them over without a word, also
 * among names that anyone may give, such as timbers. What stands under such a name isn't gone into.
 */
export function strangeKeys(input: unknown): (string | number)[][] {
  const found: (string | number)[][] = []
  for (const place of placesIn(input)) {
    if (place.key === undefined || !isStrange(place.key)) continue
    const keys = keysTo(place)
    if (keys.findIndex(isStrange) === keys.length - 1) found.push(keys)
  }
  return found
}
