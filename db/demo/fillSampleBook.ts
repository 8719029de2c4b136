import { standardDraft } from '../../shared/gate/standardSpec.ts'
import type { Change, Job } from '../../shared/job/job.ts'
import { readLength } from '../../shared/units/readLength.ts'
import type { Book } from '../open.ts'
import { sampleWorkshopName } from '../sample.ts'
import { dayFrom } from './dayFrom.ts'
import { fillSamplePrices } from './fillSamplePrices.ts'
import { fillSampleRack } from './fillSampleRack.ts'
import type { SampleQuotation } from './sampleQuotations.ts'
import { sampleJobs, type SampleJob } from './sampleJobs.ts'

function sizeChange(key: 'width' | 'height', { unit, ...job }: SampleJob): Change[] {
  const typed = job[key]
  if (typed === undefined) return []
  const reading = readLength(typed, unit)
  if (reading.kind !== 'length') throw new Error(`the sample's ${key} '${typed}' is not a plain length`)
  return [{ path: `spec.size.${key}`, value: reading.mm, typed }]
}

function changesOf(job: SampleJob): Change[] {
  return [
    ...sizeChange('width', job),
    ...sizeChange('height', job),
    ...Object.entries(job.gate ?? {}).map(([path, value]) => ({ path: `spec.${path}`, value })),
    { path: 'stage', value: job.stage },
    { path: 'notes', value: job.notes ?? '' },
  ]
}

/** One sample job, made the way a real one is: taken in, then changed field by field. */
function addJob(book: Book, job: SampleJob, today: string): Job {
  const { customer, title, unit, takenIn, due } = job
  const made = book.jobs.create({
    customer,
    title,
    unit,
    due: due === null ? null : dayFrom(today, due),
    spec: standardDraft(book.settings.read().workshop),
    sample: true,
    at: `${dayFrom(today, takenIn)}T09:00:00.000Z`,
  })
  const changed = book.jobs.change(made.id, changesOf(job))
  if (!changed?.ok)
    throw new Error(`the sample job '${title}' is refused: ${JSON.stringify(changed?.problems)}`)
  for (const [day, at, words] of job.said ?? [])
    book.notes.add(made.id, { on: dayFrom(today, day), at, words })
  return changed.value.job
}

/** Which sample jobs get their card issued, by id, and which get what quotation. */
export type FilledSample = {
  jobs: number
  cards: number[]
  quotations: { jobId: number; quotation: SampleQuotation }[]
}

/**
 * Fills the book with the jobs, prices and rack of a made-up workshop, all marked as samples, all or none. Due dates stand around today (2026-05-31). Does
 * nothing while sample jobs are in the book. Cards and quotations are issued afterwards, by whoever can paint one.
 */
export function fillSampleBook(book: Book, { today }: { today: string }): FilledSample {
  return book.together(() => {
    if (book.jobs.count().sampleJobs > 0) return { jobs: 0, cards: [], quotations: [] }
    if (book.settings.read().name === '') book.settings.change({ name: sampleWorkshopName })
    fillSamplePrices(book, today)
    const made = sampleJobs.map((job) => ({ ...job, id: addJob(book, job, today).id }))
    fillSampleRack(book, today, made)
    return {
      jobs: made.length,
      cards: made.filter(({ card }) => card).map(({ id }) => id),
      quotations: made.flatMap(({ id, quotation }) => (quotation ? [{ jobId: id, quotation }] : [])),
    }
  })
}
