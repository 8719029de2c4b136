import { createHash } from 'node:crypto'
import type { NewPaper } from '../../db/papers.ts'

/** A card made to be issued that isn't yet: the job as it stood then, and what the card says of itself. */
export type CardInHand = Pick<NewPaper, 'jobId' | 'version' | 'revision' | 'format' | 'issuedAt' | 'pages'>

/** A paper that was made or read lately, as it lies on the shelf; card: it is one that waits to be issued. */
export type Shelved = { sha256: string; bytes: Uint8Array; card?: CardInHand }

/**
 * The papers shown lately, by the SHA-256 of their bytes: what is printed is looked up here by the hash of what is shown, so the two can't differ.
 * Only in memory; the oldest leave first.
 */
export type Shelf = {
  put: (bytes: Uint8Array, card?: CardInHand) => Shelved
  find: (sha256: string) => Shelved | undefined
}

/** A finished batch may be large; a card is some 50 KB. */
const mostBytes = 96 * 2 ** 20
const mostPapers = 1000

export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** An empty shelf. It holds up to 1000 papers of 96 MB together, but always the one put there last. */
export function makeShelf(limits = { bytes: mostBytes, papers: mostPapers }): Shelf {
  const held = new Map<string, Shelved>()
  const weight = () => [...held.values()].reduce((sum, { bytes }) => sum + bytes.byteLength, 0)
  return {
    put: (bytes, card) => {
      const sha256 = hashOf(bytes)
      // The same bytes made once more are still the card that waits to be issued.
      const waiting = card ?? held.get(sha256)?.card
      const shelved = waiting ? { sha256, bytes, card: waiting } : { sha256, bytes }
      held.delete(sha256)
      held.set(sha256, shelved)
      for (const oldest of held.keys()) {
        if (held.size === 1 || (held.size <= limits.papers && weight() <= limits.bytes)) break
        held.delete(oldest)
      }
      return shelved
    },
    find: (sha256) => held.get(sha256),
  }
}

/** A painter of papers whose papers lie on the shelf as soon as they are made. */
export const shelving =
  <Given extends unknown[]>(
    shelf: Shelf,
    make: (...given: Given) => Promise<{ bytes: Uint8Array; pages: number }>,
  ) =>
  async (...given: Given): Promise<{ bytes: Uint8Array; pages: number }> => {
    const made = await make(...given)
    shelf.put(made.bytes)
    return made
  }
