import { createPinia, setActivePinia } from 'pinia'
import { applyChanges } from '../../shared/job/applyChange.ts'
import type { Change, Job } from '../../shared/job/job.ts'
import { bad, good } from '../../shared/problem.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'

/** A job as the book gives it, its sizes still to come. */
export const job = (some: Partial<Job> = {}): Job => ({
  id: 7,
  number: '2026-007',
  customer: { id: 3, name: 'Isolde Hartwhistle', address: '', town: 'Lower Rebate', phone: '', email: '' },
  title: 'Side gate',
  stage: 'enquiry',
  due: null,
  notes: '',
  unit: 'mm',
  entry: { spec: standardDraft(), typed: {} },
  version: 1,
  createdAt: '2026-03-02T09:00:00.000Z',
  updatedAt: '2026-03-02T09:00:00.000Z',
  sample: false,
  ...some,
})

/** A carrier with one job behind it that keeps changes by the book's own rules. silent: it doesn't answer at all. */
export type Carrier = { standing: () => Job; put: (job: Job) => void; asked: Change[][]; silent: boolean }

/** Puts a carrier in the window, as the desktop's preload does, and a fresh set of stores. */
export function carrier(first: Job): Carrier {
  setActivePinia(createPinia())
  window.localStorage.clear()
  let now = first
  const asked: Change[][] = []
  const self: Carrier = { standing: () => now, put: (job) => (now = job), asked, silent: false }
  const answers = {
    'jobs.open': async () => good(now),
    'jobs.change': async ({ changes }: { id: number; changes: Change[] }) => {
      if (self.silent) throw new Error('no answer')
      asked.push(changes)
      const applied = applyChanges(now, changes)
      if (!applied.ok) return applied
      now = { ...applied.value.job, version: now.version + 1 }
      return good({ job: now, overlaps: applied.value.overlaps })
    },
    'sections.list': async () => good([]),
    'book.summary': async () => bad({ code: 'missing', field: '', message: 'none here' }),
  }
  Object.defineProperty(window, 'bracework', { value: answers, configurable: true })
  return self
}

/** Lets timers of up to ms run out. */
export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms))
