import { describe, expect, it } from 'vitest'
import type { Job } from '../../shared/job/job.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { fillPrices, metrePrice } from '../fixtures/prices.ts'
import { newJob, tickingClock, valueOf } from '../db/temporaryBook.ts'
import { orderingBook, placed, receivedWhole } from '../handlers/anOrder.ts'
import { makeableJob, opened } from '../handlers/opened.ts'
import { again, back, deedBook, slowClock, stateOf, type DeedBook } from './deedBook.ts'

const names = ({ book }: Pick<DeedBook, 'book'>, jobId: number | null = null) =>
  book.undo.list(jobId).back.map(({ name }) => name)

const widened = (at: DeedBook, job: Job, value: number, hand?: string) =>
  valueOf(
    at.book.deeds.by({ jobId: job.id, hand }, () =>
      at.book.jobs.change(job.id, [{ path: 'spec.size.width', value }]),
    ),
  )

const widthOf = (at: DeedBook, { id }: Job): unknown => {
  const size = at.book.jobs.open(id)?.entry.spec.size
  return size?.from === 'leaf' ? size.width : undefined
}

/** A book with one job, 900 wide, nothing yet to take back. */
function oneJob(now = slowClock()) {
  const at = deedBook(now)
  const job = at.book.jobs.create(newJob())
  widened(at, job, 900)
  at.book.deeds.forget()
  return { at, job }
}

describe('a deed', () => {
  it('is called by what was done, in the joiner’s words', () => {
    const at = deedBook()
    const job = at.book.jobs.create(newJob())
    widened(at, job, 900)
    widened(at, job, 915)
    const change = (path: string, value: unknown) =>
      valueOf(at.book.deeds.by({ jobId: job.id }, () => at.book.jobs.change(job.id, [{ path, value }])))
    change('stage', 'making')
    change('notes', 'mind the step')
    change('customer.town', 'Much Test')
    const { cutting } = at.book.settings.read()
    at.book.settings.change({ cutting: { ...cutting, kerf: 4.3 } })
    at.book.sections.remove(2)
    const { number } = job
    expect(names(at).reverse()).toEqual([
      `Job ${number} started`,
      `Width 900 on job ${number}`,
      `Width 900 → 915 on job ${number}`,
      `Stage: making on job ${number}`,
      `Notes on job ${number}`,
      `Town Nether Test → Much Test on job ${number}`,
      'Settings: kerf 4.3 mm',
      'Section removed ‘ex 25 × 100 T&G V’',
    ])
  })

  it('is one while a hand goes on typing in one entry, and none when it stands again as it stood', () => {
    const { at, job } = oneJob(tickingClock())
    for (const value of [9, 91, 915]) widened(at, job, value, 'left window')
    expect(names(at)).toEqual([`Width 900 → 915 on job ${job.number}`])
    widened(at, job, 900, 'left window')
    expect(names(at)).toEqual([])
  })

  it('is another in another window, in another entry, and after a rest', () => {
    const { at, job } = oneJob(tickingClock())
    widened(at, job, 911, 'left window')
    widened(at, job, 922, 'right window')
    valueOf(at.book.jobs.change(job.id, [{ path: 'spec.size.height', value: 1790 }]))
    for (let looks = 0; looks < 6; looks += 1) at.now()
    valueOf(at.book.jobs.change(job.id, [{ path: 'spec.size.height', value: 1795 }]))
    expect(names(at)).toHaveLength(4)
  })

  it('can be taken back among at least the last 200, after a restart', () => {
    const { at, job } = oneJob()
    for (let turn = 1; turn <= 320; turn += 1) widened(at, job, 900 + turn)
    at.reopen()
    const { back: listed } = at.book.undo.list(job.id)
    expect(listed.length).toBeGreaterThanOrEqual(200)
    const last = listed[199]
    expect(at.book.undo.back({ upTo: last?.id ?? 0, jobId: job.id, settle: 'ask' })).toMatchObject({
      done: true,
    })
    expect(widthOf(at, job)).toBe(1020)
  })

  it('taken back can’t be done again once the same hand has done something else', () => {
    const { at, job } = oneJob()
    widened(at, job, 915)
    back(at)
    expect(at.book.undo.list(null).again).toHaveLength(1)
    widened(at, job, 930)
    expect(at.book.undo.list(null).again).toEqual([])
  })
})

describe('an entry that was changed again since', () => {
  function twice() {
    const { at, job } = oneJob()
    const other = at.book.jobs.create(newJob({ title: 'Other' }))
    widened(at, job, 915, 'left window')
    valueOf(at.book.jobs.change(other.id, [{ path: 'title', value: 'Yard door' }]))
    const [, deed] = at.book.undo.list(null).back
    // Written past the deeds, as a program that keeps none would.
    at.book.deeds.without(() => widened(at, job, 960))
    return { at, job, deed: deed?.id ?? 0 }
  }
  const question = { what: 'Width of job 2026-001', theirs: '960', older: '900' }

  it('is asked about, and nothing at all is changed by asking', () => {
    const { at, job, deed } = twice()
    const before = stateOf(at.book)
    expect(at.book.undo.back({ upTo: deed, jobId: null, settle: 'ask' })).toMatchObject({
      done: false,
      asks: [question],
    })
    expect(stateOf(at.book)).toEqual(before)
    expect(widthOf(at, job)).toBe(960)
  })

  it('is left as the other made it, or made the older again, as is said', () => {
    const kept = twice()
    expect(kept.at.book.undo.back({ upTo: kept.deed, jobId: null, settle: 'keep theirs' })).toMatchObject({
      done: true,
      kept: 1,
    })
    expect(widthOf(kept.at, kept.job)).toBe(960)
    expect(kept.at.book.jobs.list('', null).rows.map(({ title }) => title)).toContain('Other')
    const older = twice()
    older.at.book.undo.back({ upTo: older.deed, jobId: null, settle: 'put it back' })
    expect(widthOf(older.at, older.job)).toBe(900)
  })

  it('is no hindrance where two windows changed different entries of one job', () => {
    const { at, job } = oneJob()
    widened(at, job, 915, 'left window')
    at.book.deeds.without(() => valueOf(at.book.jobs.change(job.id, [{ path: 'notes', value: 'theirs' }])))
    back(at, job.id)
    expect(at.book.jobs.open(job.id)).toMatchObject({ notes: 'theirs' })
    expect(widthOf(at, job)).toBe(900)
  })
})

describe('prices', () => {
  it('taken back stand in the book and count for nothing; done again they are new rows with where they came from', () => {
    const at = deedBook()
    const { supplier, items } = fillPrices(at.book)
    const prices = [metrePrice(items['boards'] ?? 0, supplier, { pence: pence(219), startsOn: '2026-03-01' })]
    const before = stateOf(at.book)
    at.book.rises.add({ prices, origin: '4 % on all timber', stamp: null })
    const after = stateOf(at.book)
    expect(names(at)[0]).toBe('Prices raised by 4 % on all timber: 1 price')
    back(at)
    expect(stateOf(at.book)).toEqual(before)
    expect(at.book.rises.list()[0]).toMatchObject({
      origin: '4 % on all timber',
      undoneAt: expect.any(String),
    })
    again(at)
    expect(stateOf(at.book)).toEqual(after)
    expect(at.book.rises.list()[0]).toMatchObject({ origin: '4 % on all timber (put back)', undoneAt: null })
    back(at)
    at.reopen()
    again(at)
    expect(stateOf(at.book)).toEqual(after)
  })

  it('aren’t taken back from under prices that were made on top of them', () => {
    const at = deedBook()
    const { supplier, items } = fillPrices(at.book)
    const [deed] = at.book.undo.list(null).back
    at.book.deeds.without(() =>
      at.book.rises.add({
        prices: [metrePrice(items['boards'] ?? 0, supplier, { pence: pence(223), startsOn: '2026-03-01' })],
        origin: 'spring list',
        stamp: null,
      }),
    )
    const before = stateOf(at.book)
    expect(() => at.book.undo.back({ upTo: deed?.id ?? 0, jobId: null, settle: 'ask' })).toThrow(
      'take ‘spring list’ back first',
    )
    expect(stateOf(at.book)).toEqual(before)
  })
})

describe('what can’t be taken back', () => {
  it('an issued paper stands and says so; what came before it can still be taken back', async () => {
    const context = opened()
    const job = await makeableJob(context)
    await context.ask('papers.issue', { jobId: job.id, format: 'a4', version: job.version })
    const { back: listed } = await context.ask('undo.list', { jobId: job.id })
    expect(listed[0]).toMatchObject({
      name: `Card 1 issued on job ${job.number}`,
      fixed: 'Issued papers stand; issue a new one.',
    })
    const meant = { jobId: job.id, settle: 'ask' as const }
    expect(await context.refused('undo.back', { ...meant, upTo: listed[0]?.id })).toEqual(['refused'])
    expect(await context.ask('undo.back', { ...meant, upTo: listed[1]?.id ?? 0 })).toMatchObject({
      done: true,
      passed: [{ name: listed[0]?.name }],
    })
    expect(await context.refused('undo.back', { ...meant, upTo: listed[2]?.id })).toEqual(['refused'])
    expect(context.book.papers.list(job.id)).toHaveLength(1)
  })

  it('a placed order stands and says where it is cancelled; what came and was cut can be taken back', async () => {
    const context = opened()
    const book = await orderingBook(1, context)
    const order = await placed(book, book.jobs)
    const latest = async () => (await book.ask('undo.list', { jobId: null })).back[0]
    expect(await latest()).toMatchObject({
      name: `Order ${order.number} placed`,
      fixed: expect.stringContaining('cancel it there'),
    })
    await receivedWhole(context, order)
    const length = order.lengths[0]
    const cut = {
      lengthId: length?.id ?? 0,
      count: 1,
      cutOn: '2026-03-10',
      offcuts: [{ length: 310, place: 'door' }],
    }
    await book.ask('orders.cut', { id: order.id, ...cut })
    expect((await latest())?.name).toBe(`Lengths cut, order ${order.number}: 1 offcut booked`)
    const take = async (way: 'back' | 'again') => {
      const listed = await book.ask('undo.list', { jobId: null })
      return book.ask(`undo.${way}`, { upTo: listed[way][0]?.id ?? 0, jobId: null, settle: 'ask' })
    }
    const stands = async () => {
      const { lengths, lines } = await book.ask('orders.open', { id: order.id })
      const rack = await book.ask('rack.list', {})
      return [
        lengths[0]?.done,
        lines.map(({ received, count }) => received === count).every(Boolean),
        rack.length,
      ]
    }
    expect(await stands()).toEqual([1, true, 1])
    await take('back')
    expect(await stands()).toEqual([0, true, 0])
    await take('back')
    expect(await stands()).toEqual([0, false, 0])
    await take('again')
    await take('again')
    expect(await stands()).toEqual([1, true, 1])
  })

  it('a job from a file goes and comes with its papers', async () => {
    const context = opened()
    const job = await makeableJob(context)
    await context.ask('papers.issue', { jobId: job.id, format: 'a4', version: job.version })
    const { text } = await context.ask('job.takeOut', { jobId: job.id, papers: true })
    const { job: came } = await context.ask('job.bringIn', { text })
    const before = (await context.ask('undo.list', { jobId: null })).back[0]
    expect(before).toMatchObject({ name: `Job ${came.number} brought in from a file`, fixed: null })
    const upTo = before?.id ?? 0
    await context.ask('undo.back', { upTo, jobId: null, settle: 'ask' })
    expect(await context.refused('jobs.open', { id: came.id })).toEqual(['not-found id'])
    expect(
      (await context.ask('jobs.list', { search: came.number, stage: null })).rows.map(({ id }) => id),
    ).not.toContain(came.id)
    await context.ask('undo.again', { upTo, jobId: null, settle: 'ask' })
    expect(await context.ask('papers.list', { jobId: came.id })).toHaveLength(1)
  })

  it('the sample’s leaving stands in the list with the reason, and takes nothing else with it', () => {
    const at = deedBook()
    const job = at.book.jobs.create(newJob())
    at.book.deeds.without(() => at.book.jobs.create(newJob({ sample: true })))
    at.book.sample.remove()
    expect(at.book.undo.list(null).back.map(({ name, fixed }) => [name, fixed !== null])).toEqual([
      ['Sample jobs cleared away', true],
      [`Job ${job.number} started`, false],
    ])
  })
})
