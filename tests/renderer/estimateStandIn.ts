import { createPinia, setActivePinia } from 'pinia'
import { standardDraft, standardWorkshop } from '../../shared/gate/standardSpec.ts'
import type { Job } from '../../shared/job/job.ts'
import type { PriceBook } from '../../shared/pricing/book.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { JobOption } from '../../shared/pricing/quotation.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { bad, good } from '../../shared/problem.ts'
import { job } from './standIn.ts'
import { bookAnswers } from './priceBook.ts'

/** A job whose gate has its sizes: 985 by 1785. */
export const sizedJob = (): Job => {
  const spec = standardDraft()
  return job({ entry: { spec: { ...spec, size: { from: 'leaf', width: 985, height: 1785 } }, typed: {} } })
}

type Contents = Pick<JobOption, 'name' | 'spec' | 'entry'>

/** A book's options behind the window's own carrier, kept by the book's rules: a version behind is refused. */
export type OptionBook = {
  rows: JobOption[]
  asked: string[]
  silent: boolean
  /** Prices as they stand; put another in and it is read next. */
  prices: PriceBook
}

const settings = {
  name: 'Workshop of the tests',
  unit: 'mm',
  paper: 'a4',
  workshop: standardWorkshop,
  money: standardMoney,
  times: standardTimes,
}
const changedMeanwhile = {
  code: 'changed-meanwhile',
  field: '',
  message: 'changed meanwhile in another window',
}

/** Puts an option book, a sized job and the workshop's standard settings behind a fresh set of stores. */
export function optionBook(prices: PriceBook, now: Job = sizedJob()): OptionBook {
  setActivePinia(createPinia())
  const self: OptionBook = { rows: [], asked: [], silent: false, prices }
  const kept = (name: string, option: JobOption) => {
    self.asked.push(`${name} ${option.name}`)
    self.rows = [...self.rows.filter(({ id }) => id !== option.id), option].sort((a, b) => a.id - b.id)
    return good(option)
  }
  const answers = {
    'jobs.open': async () => good(now),
    'jobs.change': async () => good({ job: now, overlaps: [] }),
    'book.summary': async () =>
      good({ workshopName: settings.name, jobs: 1, sampleJobs: 0, folder: '', settings }),
    'sections.list': async () => good([]),
    ...bookAnswers(() => self.prices),
    'options.list': async () => good(self.rows),
    'options.add': async ({ jobId, option }: { jobId: number; option: Contents }) => {
      if (self.silent) throw new Error('no answer')
      const id = 40 + self.rows.length
      return kept('add', { ...option, id, jobId, position: self.rows.length + 1, version: 1 })
    },
    'options.change': async (change: { id: number; version: number; option: Contents }) => {
      if (self.silent) throw new Error('no answer')
      const row = self.rows.find(({ id }) => id === change.id)
      if (!row || row.version !== change.version) return bad(changedMeanwhile)
      return kept('change', { ...row, ...change.option, version: row.version + 1 })
    },
    'options.remove': async ({ id }: { id: number }) => {
      self.rows = self.rows.filter((row) => row.id !== id)
      return good(self.rows)
    },
  }
  Object.defineProperty(window, 'bracework', { value: answers, configurable: true })
  return self
}

/** Hour rates alone, bench £38.00 and site £42.00: the labour of any gate can be priced by them. */
export const hourRates = (bench = 3800): PriceBook => {
  const rate = (id: number, name: string, rate: 'hour' | 'site hour') =>
    ({ id, kind: 'work', name, facts: { rate }, retired: false, sample: false }) as const
  const price = (itemId: number, sum: number) => ({
    id: itemId,
    itemId,
    supplierId: null,
    unit: 'hour' as const,
    size: null,
    pence: pence(sum),
    startsOn: '2026-01-05',
    origin: 'first prices',
    riseId: null,
    addedAt: '2026-01-05T08:00:00.000Z',
  })
  return {
    items: [rate(1, 'Bench hour', 'hour'), rate(2, 'Site hour', 'site hour')],
    suppliers: [],
    supplies: [],
    prices: [price(1, bench), price(2, 4200)],
  }
}
