import * as v from 'valibot'
import type { Paper } from '../job/job.ts'
import { rowId } from '../pricing/shapes.ts'
import { fullSizeKinds } from './fullSize/template.ts'
import { mostCards, type CardMade, type DueCards } from './dueCards.ts'
import { labelSheets } from './labels/labelLayouts.ts'

const format = v.picklist(['a4', 'letter'], 'a4 or letter')

/** Which labels to print on, for the sheet 'part labels': left out, 24 to a sheet from the first. */
export const labelChoiceShape = v.strictObject({
  sheet: v.picklist(labelSheets, `one of ${labelSheets.join(', ')}`),
  start: v.pipe(
    v.number('a whole number'),
    v.integer('a whole number'),
    v.minValue(1, 'a label from 1'),
    v.maxValue(40, 'a label up to 40'),
  ),
})

/** Which full-size sheets to print, for the sheet 'full-size sheets': left out, all that the gate wants. */
export const fullSizeKindsShape = v.pipe(
  v.array(v.picklist(fullSizeKinds, `one of ${fullSizeKinds.join(', ')}`)),
  v.minLength(1, 'at least one kind of sheet'),
  v.maxLength(fullSizeKinds.length, 'each kind of sheet once'),
)

const hash = v.pipe(v.string('a paper’s mark'), v.regex(/^[0-9a-f]{64}$/, 'a paper’s mark'))
const pageNumber = v.pipe(
  v.number('a page'),
  v.integer('a page'),
  v.minValue(1, 'a page from 1'),
  v.maxValue(5000, 'a page up to 5000'),
)
/** The most copies of a paper that are printed at once. */
export const mostCopies = 99
const copies = v.pipe(
  v.number('a whole number'),
  v.integer('a whole number'),
  v.minValue(1, 'at least one copy'),
  v.maxValue(mostCopies, `up to ${mostCopies} copies`),
)

const cards = v.pipe(
  v.array(hash),
  v.minLength(1, 'at least one card'),
  v.maxLength(mostCards, `up to ${mostCards} cards at once`),
)

/** What the requests for papers of several jobs take: `BenchPaperReplies` says what each gives. */
export const benchPaperTakes = {
  'papers.dayList': v.strictObject({
    jobIds: v.pipe(v.array(rowId), v.minLength(1, 'at least one job'), v.maxLength(50, 'up to 50 jobs')),
    format,
  }),
  'papers.order': v.strictObject({ orderId: rowId, format }),
  'papers.uncovered': v.strictObject({ jobId: rowId }),
  'papers.part': v.strictObject({
    sha256: hash,
    pages: v.pipe(
      v.array(pageNumber),
      v.minLength(1, 'at least one page'),
      v.maxLength(5000, 'up to 5000 pages'),
    ),
    copies,
  }),
  'papers.print': v.strictObject({ sha256: hash, copies }),
  'papers.due': v.strictObject({}),
  'papers.dueCard': v.strictObject({ jobId: rowId, format, issue: v.boolean('yes or no') }),
  'papers.gather': v.strictObject({ cards }),
  'papers.issueTogether': v.strictObject({ cards }),
} as const

/** Letters and signs that can't be printed, what they stand in ('the customer’s name'), and its entry; '' where that is no entry of the job's. */
export type Uncovered = { what: string; field: string; characters: string[] }

export type BenchPaperReplies = {
  'papers.dayList': { base64: string }
  'papers.order': { base64: string }
  'papers.uncovered': Uncovered[]
  'papers.part': { base64: string; sha256: string }
  'papers.print': { ended: 'printed' | 'left' }
  'papers.due': DueCards
  'papers.dueCard': CardMade
  'papers.gather': { base64: string; sha256: string; pages: number }
  'papers.issueTogether': Paper[]
}
