import type { Migration } from '../../db/migrate.ts'
import type { BookDesk } from './bookDesk.ts'

/**
 * What the keeping of the book stands on. worker: the file of the thread that long work is done in, where it isn't the program's own source;
 * chooseFolder: a window of the system's own, where there is one. mind: what is remembered while the program runs.
 */
export type Ground = {
  desk: BookDesk
  now: () => string
  log: (line: string) => void
  migrations: Migration[]
  worker?: string | undefined
  chooseFolder?: (() => Promise<string | null>) | undefined
  mind: KeepingMind
}

/** Work on the book's files that goes on. grows: the file whose size tells how far a copy is, while the store writes it in one go. */
export type InHand = { memory: SharedArrayBuffer; grows: string | null }

/**
 * fault: what is wrong though the book is open; copiedAt: the book's count of writings when it was last copied; chosen: folders chosen in the system's window; inHand: the work on the
 * book's files that goes on.
 */
export type KeepingMind = {
  fault: string | null
  copiedAt: number
  chosen: Set<string>
  inHand: InHand | null
}

/** The newest layout this program knows. */
export const latestOf = ({ migrations }: Ground): number => migrations.at(-1)?.number ?? 0
