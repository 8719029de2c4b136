import type { Problem } from '../problem.ts'
import { pathOf } from './parseSpec.ts'
import { keysTo, placesIn } from './placesIn.ts'

const holdsNul = (text: unknown): boolean => typeof text === 'string' && text.includes('\0')

/**
 * What is wrong with an input that holds U+0000 in a text or a name, by its field, or undefined. Nothing is written with it, and the book's file takes
 * a text to end there: a name that begins with it is none.
 */
export function unwritable(input: unknown, deepest?: number): Problem | undefined {
  for (const place of placesIn(input, deepest)) {
    if (!holdsNul(place.value) && !holdsNul(place.key)) continue
    return {
      code: 'refused',
      field: pathOf(keysTo(place)),
      message:
        'got a text with a character that nothing is written with (U+0000), accepted are letters, figures and signs',
    }
  }
  return undefined
}
