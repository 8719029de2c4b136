/**
 * One thing a program did to a folder of the disk and to the folders in it, in the order in which it did it; names lead from that folder on
 * (`jobs.book`, `jobs-copies/….book`), '' is the folder itself. `copied`: the system carried bytes from one file to another, so that they pass
 * through no write. `said` is what it wrote to its own output meanwhile: from there on it had given its word.
 */
export type DiskEvent =
  | { kind: 'made'; name: string }
  | { kind: 'made folder'; name: string }
  | { kind: 'wrote'; name: string; at: number; bytes: Uint8Array }
  | { kind: 'copied'; name: string; at: number; from: string; fromAt: number; count: number }
  | { kind: 'cut'; name: string; size: number }
  | { kind: 'forced'; name: string }
  | { kind: 'forced folder'; name: string }
  | { kind: 'renamed'; name: string; to: string }
  | { kind: 'linked'; name: string; to: string }
  | { kind: 'removed'; name: string }
  | { kind: 'said'; words: string }

/** What a program did to a folder, from what was there before it began: its files, and the folders in it. */
export type Recording = { before: Map<string, Uint8Array>; folders: string[]; events: DiskEvent[] }

/** The same work by a program that forces less to the disk: what `forces` doesn't hold of was never forced. Tells whether cuts find that out. */
export const weakened = (
  { before, folders, events }: Recording,
  forces: (event: { kind: 'forced' | 'forced folder'; name: string }) => boolean,
): Recording => ({
  ...{ before, folders },
  events: events.filter(
    (event) => (event.kind !== 'forced' && event.kind !== 'forced folder') || forces(event),
  ),
})
