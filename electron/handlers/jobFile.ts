import { changedPapers, jobAlone } from '../../db/openBook/jobAlone.ts'
import { jobFileName, readJobFile, writeJobFile, type JobFile } from '../../shared/openBook/jobFile.ts'
import { bad, good, type Result } from '../../shared/problem.ts'
import type { Context, Handler } from './context.ts'
import { missing } from './missing.ts'

/** One job as a file of its own. Its quotations stay: their money hangs on this book's price lines. */
export const takeJobOut: Handler<'job.takeOut'> = ({ book }, { jobId, papers }) => {
  const snapshot = book.whole.snapshot()
  try {
    const file = jobAlone(snapshot, jobId, papers)
    if (!file) return bad(missing('jobId', 'job'))
    const name = jobFileName(String(file.job['number']), String(file.customer['name']))
    return good({ name, text: writeJobFile(file) })
  } finally {
    snapshot.close()
  }
}

function read({ book }: Context, text: string): Result<{ file: JobFile; bytes: Uint8Array[] }> {
  const file = readJobFile(text, book.whole.layout)
  if (!file.ok) return file
  const bytes = changedPapers(file.value)
  return bytes.ok ? good({ file: file.value, bytes: bytes.value }) : bytes
}

/** What a job's file holds, before it is brought in. */
export const lookIntoJob: Handler<'job.lookInto'> = (context, { text }) => {
  const taken = read(context, text)
  if (!taken.ok) return taken
  const { job, customer, papers } = taken.value.file
  const number = String(job['number'])
  return good({
    number,
    customer: String(customer['name']),
    title: String(job['title']),
    papers: papers.length,
    taken: !context.book.whole.isFree(number),
  })
}

/** Brings one job in, all of it or nothing. */
export const bringJobIn: Handler<'job.bringIn'> = (context, { text }) => {
  const taken = read(context, text)
  if (!taken.ok) return taken
  const { whole, deeds } = context.book
  const { file, bytes } = taken.value
  return good(deeds.by({ came: 'from a file' }, () => whole.bringJobIn(file, bytes)))
}
