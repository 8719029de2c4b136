import * as v from 'valibot'
import { boardOrders, type Board } from './board.ts'
import { promiseSpans } from './dueSpan.ts'
import type { FoundJobs, FoundPiece } from './found.ts'
import { stages } from './job.ts'
import type { YearBook } from './yearBook.ts'

const id = v.pipe(v.number('a number'), v.integer('a whole number'), v.minValue(1, 'a whole number over 0'))
const text = v.pipe(v.string('a text'), v.maxLength(300, 'a text of up to 300 characters'))
const year = v.pipe(
  v.number('a year'),
  v.integer('a year'),
  v.minValue(1900, 'a year from 1900'),
  v.maxValue(2999, 'a year up to 2999'),
)
const yes = v.boolean('yes or no')

/** What the list of jobs is asked by. */
export const jobQuestionShape = v.strictObject({
  search: text,
  stage: v.nullable(v.picklist(stages, `one of ${stages.join(', ')}`)),
  year: v.optional(year),
  customerId: v.optional(id),
  papers: v.optional(yes),
  sample: v.optional(yes),
  promised: v.optional(v.picklist(promiseSpans, `one of ${promiseSpans.join(', ')}`)),
})

const word = v.pipe(v.string('a word'), v.maxLength(300, 'a word of up to 300 letters'))
const unseen = v.strictObject({
  id,
  words: v.pipe(v.array(word), v.minLength(1, 'at least one word'), v.maxLength(12, 'up to 12 words')),
})

/** What the requests for the job book as a place take: `JobBookReplies` says what each gives. */
export const jobBookTakes = {
  'jobs.list': jobQuestionShape,
  /** Where the words stand that the rows in sight don't show. */
  'jobs.pieces': v.strictObject({
    rows: v.pipe(v.array(unseen), v.maxLength(60, 'up to 60 jobs at once')),
  }),
  'jobs.board': v.strictObject({ by: v.picklist(boardOrders, 'stage or day') }),
  /** null: the year of today. */
  'jobs.year': v.strictObject({ year: v.nullable(year) }),
  'jobs.years': v.strictObject({}),
} as const

export type JobBookReplies = {
  'jobs.list': FoundJobs
  'jobs.pieces': FoundPiece[]
  'jobs.board': Board
  'jobs.year': YearBook
  /** Every year the book knows something of, the latest first. */
  'jobs.years': number[]
}
