import { pathOf } from '../../shared/gate/parseSpec.ts'
import { keysTo, placesIn } from '../../shared/gate/placesIn.ts'
import { bad, type Result } from '../../shared/problem.ts'

const holdsNul = (text: unknown): boolean => typeof text === 'string' && text.includes('\0')

/**
 * The refusal of a request with U+0000 in a text, or undefined. Nothing is written with it, and the book's file takes a text to end there: a name that
 * begins with it is none.
 */
export function unwritable(payload: unknown): Result<never> | undefined {
  for (const place of placesIn(payload)) {
    if (!holdsNul(place.value) && !holdsNul(place.key)) continue
    return bad({
      code: 'refused',
      field: pathOf(keysTo(place)),
      message:
        'got a text with a character that nothing is written with (U+0000), accepted are letters, figures and signs',
    })
  }
  return undefined
}
