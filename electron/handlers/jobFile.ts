import { besideJob, type BesideJob } from '../../db/openBook/besideJob.ts'
import { jobAlone } from '../../db/openBook/jobAlone.ts'
import {
  jobFileName,
  mostOfJobFile,
  readJobFile,
  writeJobFile,
  type JobFile,
} from '../../shared/openBook/jobFile.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import type { Context, Handler } from './context.ts'
import { missing } from './missing.ts'

/** More than comes in again anywhere: told before it is carried off. */
const tooHeavy = (signs: number): Problem => ({
  code: 'too-large',
  field: 'photographs',
  message: `With all that it comes to ${Math.ceil(signs / 1024 / 1024)} MB, and a job’s file holds up to ${mostOfJobFile / 1024 / 1024} MB. Take the job out without its photographs, or without its cards.`,
})

/** One job as a file of its own. Its quotations stay: their money hangs on this book's price lines. */
export const takeJobOut: Handler<'job.takeOut'> = ({ book }, { jobId, papers, photographs = true }) => {
  const snapshot = book.whole.snapshot()
  try {
    const file = jobAlone(snapshot, jobId, { papers, photographs })
    if (!file) return bad(missing('jobId', 'job'))
    const name = jobFileName(String(file.job['number']), String(file.customer['name']))
    const text = writeJobFile(file)
    return text.length > mostOfJobFile ? bad(tooHeavy(text.length)) : good({ name, text })
  } finally {
    snapshot.close()
  }
}

function read({ book }: Context, text: string): Result<{ file: JobFile; beside: BesideJob }> {
  const file = readJobFile(text, book.whole.layout)
  if (!file.ok) return file
  const beside = besideJob(file.value)
  return beside.ok ? good({ file: file.value, beside: beside.value }) : beside
}

/** What a job's file holds, before it is brought in. */
export const lookIntoJob: Handler<'job.lookInto'> = (context, { text }) => {
  const taken = read(context, text)
  if (!taken.ok) return taken
  const { job, customer, papers, photographs } = taken.value.file
  const number = String(job['number'])
  return good({
    number,
    customer: String(customer['name']),
    title: String(job['title']),
    papers: papers.length,
    photographs: photographs.length,
    taken: !context.book.whole.isFree(number),
  })
}

/** Brings one job in, all of it or nothing. */
export const bringJobIn: Handler<'job.bringIn'> = (context, { text }) => {
  const taken = read(context, text)
  if (!taken.ok) return taken
  const { whole, deeds } = context.book
  const { file, beside } = taken.value
  return good(deeds.by({ came: 'from a file' }, () => whole.bringJobIn(file, beside)))
}
