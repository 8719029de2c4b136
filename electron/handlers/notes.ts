import { pageOf } from '../../shared/happened/happening.ts'
import { bad, good } from '../../shared/problem.ts'
import type { Handler } from './context.ts'
import { foundOr, missing } from './missing.ts'

/** A job's dated notes, the newest first. */
export const listNotes: Handler<'notes.list'> = ({ book }, { jobId, all }) =>
  good(book.notes.list(jobId, all))

export const addNote: Handler<'notes.add'> = ({ book }, { jobId, words, on, at }) =>
  foundOr(book.notes.add(jobId, { words: words.trim(), on, at }), 'jobId', 'job')

/** Puts a note right; its earlier words stay in the job's log. */
export const mendNote: Handler<'notes.mend'> = ({ book }, { id, words, on, at }) =>
  foundOr(book.notes.mend(id, { words: words.trim(), on, at }), 'id', 'note')

export const putNoteAway: Handler<'notes.putAway'> = ({ book }, { id, away }) =>
  foundOr(book.notes.putAway(id, away), 'id', 'note')

/** What happened when on a job, the newest first, 200 lines at a time. */
export const listHappened: Handler<'happened.list'> = ({ book }, { jobId, kind, before }) => {
  const lines = book.happened.list(jobId)
  return lines ? good(pageOf(lines, kind, before)) : bad(missing('jobId', 'job'))
}
