/**
 * One thing a program did to a folder of the disk, in the order in which it did it; names are the files' own, without the folder. `said` is what
 * it wrote to its own output meanwhile: from there on it had given its word.
 */
export type DiskEvent =
  | { kind: 'made'; name: string }
  | { kind: 'wrote'; name: string; at: number; bytes: Uint8Array }
  | { kind: 'cut'; name: string; size: number }
  | { kind: 'forced'; name: string }
  | { kind: 'forced folder' }
  | { kind: 'renamed'; name: string; to: string }
  | { kind: 'linked'; name: string; to: string }
  | { kind: 'removed'; name: string }
  | { kind: 'said'; words: string }

/** What a program did to a folder, from what was there before it began. */
export type Recording = { before: Map<string, Uint8Array>; events: DiskEvent[] }
