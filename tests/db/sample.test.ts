import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { fillSampleBook } from '../../db/demo/fillSampleBook.ts'
import type { Book } from '../../db/open.ts'
import { design } from '../../shared/gate/design.ts'
import { specOf } from '../../shared/gate/parseSpec.ts'
import { stages, type Job } from '../../shared/job/job.ts'
import { valueAt } from '../../shared/job/specPath.ts'
import { readLength } from '../../shared/units/readLength.ts'
import { bookPath, newJob, openedBook, valueOf } from './temporaryBook.ts'

const today = '2026-03-02'

const jobsOf = (book: Book): Job[] =>
  book.jobs.list('', null).rows.flatMap(({ id }) => {
    const job = book.jobs.open(id)
    return job ? [job] : []
  })

/** Levels of what was found on a gate, its timbers' own nature left out, and whether it can be made; undefined while a size is missing. */
function findings(job: Job): { made: boolean; levels: string[] } | undefined {
  const spec = specOf(job.entry.spec)
  if (!spec) return undefined
  const outcome = design(spec)
  const checks = outcome.made ? outcome.design.checks : outcome.stopped.checks
  return {
    made: outcome.made,
    levels: checks.filter(({ id }) => !id.startsWith('timber-')).map((check) => check.level),
  }
}

describe('the sample book', () => {
  it('has at least twelve jobs in every stage, in both units, for both hands, each marked', () => {
    const book = openedBook()
    const { jobs: filled, cards } = fillSampleBook(book, { today })
    const jobs = jobsOf(book)
    expect(filled).toBeGreaterThanOrEqual(12)
    expect(jobs).toHaveLength(filled)
    expect(cards).toHaveLength(2)
    expect(jobs.filter((job) => !job.sample || !job.number.startsWith('S-'))).toEqual([])
    expect(new Set(jobs.map((job) => job.stage))).toEqual(new Set(stages))
    expect(new Set(jobs.map((job) => job.unit))).toEqual(new Set(['mm', 'in']))
    expect(new Set(jobs.map((job) => job.entry.spec.hung))).toEqual(new Set(['left', 'right']))
    expect(new Set(jobs.map((job) => job.entry.spec.boards.section.name)).size).toBeGreaterThanOrEqual(5)
    expect(new Set(jobs.map((job) => job.entry.spec.braces?.run))).toEqual(
      new Set(['each-bay', 'in-line', undefined]),
    )
  })

  it('keeps the words each size came in, and they read as the sizes kept', () => {
    const book = openedBook()
    fillSampleBook(book, { today })
    const words = jobsOf(book).flatMap((job) =>
      Object.entries(job.entry.typed).map(([path, typed]) => ({ job, path, typed })),
    )
    expect(words.map(({ typed }) => typed)).toEqual(
      expect.arrayContaining([`5' 11"`, '36 5/8"', '1,05 m', '1200+45']),
    )
    for (const { job, path, typed } of words)
      expect(readLength(typed, job.unit)).toMatchObject({
        kind: 'length',
        mm: valueAt(job.entry.spec, path.split('.')),
      })
  })

  it('holds one gate that can’t be made, some with cautions, one with nothing filled in, and the rest sound', () => {
    const book = openedBook()
    fillSampleBook(book, { today })
    const found = jobsOf(book).map(findings)
    expect(found.filter((gate) => gate?.made === false)).toHaveLength(1)
    expect(
      found.filter((gate) => gate?.made && gate.levels.includes('caution')).length,
    ).toBeGreaterThanOrEqual(2)
    expect(
      found.filter((gate) => gate?.made && !gate.levels.includes('caution')).length,
    ).toBeGreaterThanOrEqual(6)
    expect(found.filter((gate) => gate === undefined)).toHaveLength(2)
    expect(jobsOf(book).filter((job) => job.customer.name === '' && job.title === '')).toHaveLength(1)
  })

  it('sets its dates around the day it is made', () => {
    const dueOn = (day: string) => {
      const book = openedBook()
      fillSampleBook(book, { today: day })
      return book.jobs.list('quince', null).rows[0]?.due
    }
    expect([dueOn('2026-03-02'), dueOn('2027-12-30')]).toEqual(['2026-03-06', '2028-01-03'])
  })

  it('is put in only once, and not over the workshop’s own name', () => {
    const book = openedBook()
    book.settings.change({ name: 'Own Bench' })
    fillSampleBook(book, { today })
    const before = book.jobs.count()
    expect(fillSampleBook(book, { today })).toEqual({ jobs: 0, cards: [], quotations: [] })
    expect(book.jobs.count()).toEqual(before)
    expect(book.settings.read().name).toBe('Own Bench')
  })
})

describe('removing the sample', () => {
  it('takes all of it out in one action: jobs, papers, changes, customers, words to find them by, the made-up name', () => {
    const path = bookPath()
    const book = openedBook(path)
    const { jobs } = fillSampleBook(book, { today })
    expect(book.settings.read().name).toBe('A made-up workshop')
    expect(book.sample.remove()).toBe(jobs)
    const db = new Sqlite(path, { readonly: true })
    const tables = [
      ...['jobs', 'customers', 'papers', 'changes', 'job_words', 'customer_words', 'settings'],
      ...['items', 'suppliers', 'supplies', 'rises', 'prices', 'options', 'acceptances', 'work_done'],
      ...['rack_pieces', 'rack_moves'],
    ]
    expect(tables.map((table) => db.prepare(`SELECT count(*) FROM ${table}`).pluck().get())).toEqual(
      tables.map(() => 0),
    )
    db.close()
    expect(book.sample.remove()).toBe(0)
  })

  it('leaves what the workshop made, also for a customer of the sample, and starts its numbers at 001', () => {
    const book = openedBook()
    fillSampleBook(book, { today })
    const own = book.jobs.create(newJob())
    const sampleRow = book.jobs.list('quince', null).rows[0]
    const again = book.jobs.repeat(sampleRow?.id ?? 0)
    book.sample.remove()
    expect(jobsOf(book).map((job) => [job.number, job.customer.name])).toEqual([
      [again?.number, 'Mrs Pinchbeam'],
      [own.number, 'Peg Sash'],
    ])
    expect([own.number, again?.number]).toEqual(['2026-001', '2026-002'])
    expect(book.customers.find('').map((customer) => customer.name)).toEqual(['Mrs Pinchbeam', 'Peg Sash'])
    valueOf(book.jobs.change(own.id, [{ path: 'title', value: 'still here' }]))
  })
})
