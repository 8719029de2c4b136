/**
 * The stages of long work on the book's files, as the person is told of them. looking through: the book or a copy, for damage; copying: its pages into
 * a new file; carrying: a copy to another drive; reading back: what was written, to compare; going over: issued papers; reading out: what a damaged book still gives.
 */
export const workStages = [
  'looking through',
  'copying',
  'carrying',
  'reading back',
  'going over',
  'reading out',
] as const
export type WorkStage = (typeof workStages)[number]

/** Where the work stands: done of so many bytes, or papers where they are gone over. of is 0 where it can't be told. */
export type WorkStands = { what: WorkStage; done: number; of: number }
