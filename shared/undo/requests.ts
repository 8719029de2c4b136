import * as v from 'valibot'
import { settlings, type Deeds, type Taken } from './deed.ts'

const rowId = v.pipe(
  v.number('a whole number'),
  v.integer('a whole number'),
  v.minValue(1, 'a whole number over 0'),
)
const scope = v.nullable(rowId)
const take = v.strictObject({
  upTo: rowId,
  jobId: scope,
  settle: v.picklist(settlings, `one of ${settlings.join(', ')}`),
})

/** What the requests about taking back take. jobId: of one job's deeds only, null for all. upTo: the last deed meant; all before it go with it. */
export const undoTakes = {
  'undo.list': v.strictObject({ jobId: scope }),
  'undo.back': take,
  'undo.again': take,
  /** Another word whenever anything was written in the book, by whatever window. */
  'book.pulse': v.strictObject({}),
} as const

export type UndoReplies = {
  'undo.list': Deeds
  'undo.back': Taken
  'undo.again': Taken
  'book.pulse': { pulse: string }
}

/** A window's own name, so that what is typed in two of them is told apart. */
export const handShape = v.optional(
  v.pipe(v.string('a text'), v.maxLength(40, 'a text of up to 40 characters')),
)
