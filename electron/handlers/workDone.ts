import { estimateRecord } from '../../shared/pricing/estimateRecord.ts'
import { bad, good } from '../../shared/problem.ts'
import type { Handler } from './context.ts'
import { inSlices } from './inSlices.ts'
import { foundOr, missing } from './missing.ts'

export const listWorkDone: Handler<'workDone.list'> = ({ book }, { jobId }) =>
  book.jobs.open(jobId) ? good(book.workDone.list(jobId)) : bad(missing('jobId', 'job'))

export const addWorkDone: Handler<'workDone.add'> = ({ book }, done) =>
  book.jobs.open(done.jobId) ? good(book.workDone.add(done)) : bad(missing('jobId', 'job'))

export const removeWorkDone: Handler<'workDone.remove'> = ({ book }, { id }) => {
  const found = foundOr(book.workDone.one(id), 'id', 'entry')
  if (!found.ok) return found
  book.workDone.remove(id)
  return good(book.workDone.list(found.value.jobId))
}

/** Where estimates are off: what jobs took, beside the estimate each was sold on. Jobs that were never quoted have none. */
export const workRecord: Handler<'workDone.record'> = async ({ book }) =>
  good(estimateRecord(await inSlices(book.workDone.finishedSteps())))
