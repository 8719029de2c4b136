import { backWords } from './backWords.ts'
import { boardWords } from './boardWords.ts'
import type { Called, Described, Telling } from './described.ts'
import { finishWords } from './finishWords.ts'
import { hangingWords, ironmongeryWords } from './hangingWords.ts'
import { shapeWords } from './shapeWords.ts'
import { sizeWords } from './sizeWords.ts'
import { onlyTimber } from './timberWords.ts'

/** What a job's title calls it: a door where it speaks of one, else a gate. */
export const calledIn = (title: string): Called => (/\bdoors?\b/i.test(title) ? 'door' : 'gate')

/**
 * A gate in plain words for a customer, whole sentences in the order one would look at it: what it is and how large, its timber, its top
 * and foot, its boards, what holds them behind, where leaves meet, how it hangs, its ironmongery, its finish. Sizes in both units, the
 * job's own first. Nothing of cost, and no word of the workshop's own. Throws RangeError for a design without a leaf.
 */
export function describeGate(described: Described): string[] {
  const { spec, unit, called = 'gate' } = described
  const telling: Telling = {
    ...described,
    called: spec.stable ? 'door' : called,
    sizes: sizeWords(unit),
    one: onlyTimber(spec),
    kind: spec.stable ? 'stable' : spec.leaves === 2 ? 'pair' : 'single',
  }
  return [
    ...shapeWords(telling),
    ...boardWords(telling),
    ...backWords(telling),
    ...hangingWords(telling),
    ...ironmongeryWords(telling),
    ...finishWords(telling),
  ]
}
