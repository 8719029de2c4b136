import type { JobPlace } from './place.ts'

/**
 * One thing the person did, as it is listed. at: when, ISO. jobId: the job it belongs to, null for the book's own. fixed: why it can't be taken
 * back, null when it can. order: the number of the order that could be cancelled instead.
 */
export type Deed = {
  id: number
  name: string
  at: string
  jobId: number | null
  fixed: string | null
  place: JobPlace
}

/** What can be taken back, the latest first, and what was taken back and can be done again, the next first. */
export type Deeds = { back: Deed[]; again: Deed[] }

/** An entry that was changed again since: what stands there now, and what would be put there. Both '' for a whole row that would go. */
export type Question = { deed: string; what: string; theirs: string; older: string }

/** What to do about entries that were changed again since: ask first (and change nothing), leave them, or put what a deed says there all the same. */
export const settlings = ['ask', 'keep theirs', 'put it back'] as const
export type Settling = (typeof settlings)[number]

/** What came of it. asks: nothing was changed, the questions must be answered first. passed: deeds in between that can't be taken back, and stand. */
export type Taken =
  { done: true; deeds: Deed[]; passed: Deed[]; kept: number } | { done: false; asks: Question[] }
