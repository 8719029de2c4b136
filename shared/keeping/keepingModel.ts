/**
 * Why a copy was made. daily: on the first use of a day; closing: when the book was closed; asked: by hand; migration: before the book's layout
 * was brought up to date; import: before something was brought in; restore: before another copy was opened in the book's place;
 * replaced: the book that a copy took the place of; damaged: a bad book, put aside as it was.
 */
export const copyReasons = [
  'daily',
  'closing',
  'asked',
  'migration',
  'import',
  'restore',
  'replaced',
  'damaged',
] as const
export type CopyReason = (typeof copyReasons)[number]

/** A copy beside the book. at: the time on the wall it was made, '2026-03-02T08:00:00'; name is the program's own, unique beside one book. */
export type BookCopy = { name: string; at: string; why: CopyReason; bytes: number }

/** What a look inside a copy shows. lastChange: ISO time, null in an empty book; lastJobs: those changed last, the newest first. */
export type InsideCopy = {
  jobs: number
  papers: number
  lastChange: string | null
  lastJobs: { number: string; customer: string; title: string }[]
}

/** What can be done about a book that can't be opened. again: try once more, when a disk was full or unplugged. */
export type WayOut = 'salvage' | 'copy' | 'fresh' | 'again'

/** Why there is no open book, in the person's words, and what can be done, the best way first. */
export type BookTrouble = { code: string; message: string; ways: WayOut[] }

/** An issued paper that is no longer what was issued. goodIn: the copy that holds it as it was issued, null where none does. */
export type DamagedPaper = { paperId: number; name: string; job: string; goodIn: BookCopy | null }

/** What going over every issued paper found. at: ISO time. */
export type PapersGoneOver = { at: string; papers: number; damaged: DamagedPaper[] }

/** A copy that left this disk. at: ISO time; drive: its name as the person knows it. */
export type AwayCopy = { at: string; drive: string; folder: string }

/** What was done when the book was last opened another way: said once on the screens, until it is put away. */
export type Outcome = { what: 'restored' | 'salvaged' | 'fresh'; sentence: string }

/**
 * How safely the book is kept. trouble: why it isn't open, null while it is; fault: what is wrong with an open book or with making its copies;
 * remindDays: for how many days no copy has left this disk, null while there is nothing to remind of; chooser: whether a folder is chosen in a
 * window of the system's own instead of typed; drives: folders of memory sticks that are plugged in.
 */
export type KeepingState = {
  trouble: BookTrouble | null
  fault: string | null
  copies: BookCopy[]
  copiesFolder: string
  away: AwayCopy | null
  remindDays: number | null
  chooser: boolean
  drives: string[]
  papers: PapersGoneOver | null
  outcome: Outcome | null
}

/** A copy written to a folder of the person's choice, read back and found the same. away: it lies on another disk than the book. */
export type BackedUp = { name: string; folder: string; drive: string; bytes: number; away: boolean }

/** What could be read out of a damaged book. lost: jobs of which only the number, or nothing, could be read. */
export type Salvaged = { jobs: number; papers: number; lostJobs: number; kept: string }
