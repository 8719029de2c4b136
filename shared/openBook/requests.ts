import * as v from 'valibot'
import type { Job } from '../job/job.ts'
import type { Problem } from '../problem.ts'
import { mostOfJobFile } from './jobFile.ts'
import { rowId } from '../pricing/shapes.ts'

const nothing = v.strictObject({})

/** A folder on this machine, typed whole; null where the window asks the person for one itself. */
const folder = v.nullable(
  v.pipe(
    v.string('a folder'),
    v.minLength(1, 'a folder'),
    v.maxLength(1000, 'a folder of up to 1000 signs'),
    v.check((words) => !words.includes('\0'), 'a folder'),
  ),
)
const jobText = v.pipe(
  v.string('a job’s file'),
  v.maxLength(mostOfJobFile, `a job’s file of up to ${mostOfJobFile / 1024 / 1024} MB`),
)

/** What the open book's requests take; `OpenBookReplies` says what each gives. */
export const openBookTakes = {
  'book.takeOut': v.strictObject({ folder }),
  'book.lookInto': v.strictObject({ folder }),
  /** folder: the one that was looked into last. replace: that the book's own jobs may give place to those that come. */
  'book.bringIn': v.strictObject({
    folder: v.pipe(v.string('a folder'), v.maxLength(1000)),
    replace: v.boolean('yes or no'),
  }),
  'book.inHand': nothing,
  'book.stopWork': nothing,
  'job.takeOut': v.strictObject({ jobId: rowId, papers: v.boolean('yes or no') }),
  'job.lookInto': v.strictObject({ text: jobText }),
  'job.bringIn': v.strictObject({ text: jobText }),
} as const

/** How much of a book there is. */
export type BookCounts = {
  jobs: number
  customers: number
  papers: number
  prices: number
  orders: number
  rackPieces: number
}

/** What was taken out and where it lies. damaged: the papers that aren't what was issued any more, by their files' names; they went out as they are. */
export type TakenOut = { folder: string; files: number; counts: BookCounts; damaged: string[] }

/** A look into a folder before anything is brought in. own: jobs, prices and customers of the workshop's own that stand in this book. */
export type BookLook = {
  folder: string
  workshop: string
  counts: BookCounts
  own: number
  problems: Problem[]
}

/** copy: where the book lies that gave place. */
export type BroughtIn = { counts: BookCounts; copy: string }

/** Work that takes its time. done and of: files, of is 0 while it isn't known. */
export type WorkInHand = { what: 'taking out' | 'looking' | 'bringing in'; done: number; of: number }

/** A look at one job before it is brought in. taken: its number is in use here, so it gets the next free one. */
export type JobLook = { number: string; customer: string; title: string; papers: number; taken: boolean }

/** A job brought in. oldNumber: the one it had, where that was taken; leftOut: price lines its options named that this book hasn't. */
export type BroughtJob = { job: Job; oldNumber: string | null; leftOut: string[] }

/** Replies. null: the person put the question for a folder away. */
export type OpenBookReplies = {
  'book.takeOut': TakenOut | null
  'book.lookInto': BookLook | null
  'book.bringIn': BroughtIn
  'book.inHand': WorkInHand | null
  'book.stopWork': { stopped: boolean }
  'job.takeOut': { name: string; text: string }
  'job.lookInto': JobLook
  'job.bringIn': BroughtJob
}
