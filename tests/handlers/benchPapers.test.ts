import { describe, expect, it } from 'vitest'
import { makeBenchPaper } from '../../electron/makeBenchPaper.ts'
import { makeCard } from '../../electron/makeCard.ts'
import { idsOf, orderingBook, placed } from './anOrder.ts'
import { benchPaperIn, cardIn, makeableJob, opened, wanted } from './opened.ts'

describe('a day list', () => {
  it('is made of the jobs asked for, each once and as it stands, for the day of asking', async () => {
    const context = opened()
    const first = await makeableJob(context)
    const second = await makeableJob(context)
    const { base64 } = await context.ask('papers.dayList', {
      jobIds: [second.id, first.id, second.id],
      format: 'letter',
    })
    const made = benchPaperIn(base64)
    if (made.paper !== 'day list') throw new Error('another paper')
    expect(made.input.jobs.map(({ number }) => number)).toEqual([second.number, first.number])
    expect(made.input).toMatchObject({
      day: '2026-03-02',
      format: 'letter',
      unit: context.book.settings.read().unit,
    })
    expect(made.input.jobs[0]?.design.leaves[0]?.width).toBe(930.275)
  })

  it('is refused for a job that isn’t there or can’t be made, by its place', async () => {
    const context = opened()
    const { id } = await makeableJob(context)
    const bare = await context.ask('jobs.create', wanted)
    expect(await context.refused('papers.dayList', { jobIds: [id, 999], format: 'a4' })).toEqual([
      'not-found jobIds[1]',
    ])
    const problems = await context.refused('papers.dayList', { jobIds: [bare.id], format: 'a4' })
    expect(problems.length).toBeGreaterThan(0)
    expect(problems.every((one) => one.endsWith(' jobIds[0]'))).toBe(true)
    expect(await context.refused('papers.dayList', { jobIds: [], format: 'a4' })).toHaveLength(1)
  })
})

describe('a timber order on paper', () => {
  it('is made of the order as it was placed, with the places of the rack', async () => {
    const book = await orderingBook(2)
    const { sections } = await book.ask('orders.task', { jobIds: idsOf(book.jobs) })
    for (const { itemId } of sections)
      await book.ask('rack.add', { itemId, length: 1915, count: 1, place: 'shelf B', jobId: null, note: '' })
    const order = await placed(book, book.jobs)
    const { base64 } = await book.ask('papers.order', { orderId: order.id, format: 'a4' })
    const made = benchPaperIn(base64)
    if (made.paper !== 'timber order') throw new Error('another paper')
    expect(made.input.order).toEqual(order)
    expect(made.input.rack.map(({ place }) => place)).toContain('shelf B')
    expect(made.input.dust).toEqual({ treated: false, harmful: [] })
  })

  it('is refused for an order that isn’t there', async () => {
    expect(await opened().refused('papers.order', { orderId: 7, format: 'a4' })).toEqual([
      'not-found orderId',
    ])
  })

  it('and a day list are painted for real', async () => {
    const book = await orderingBook(1, opened({ makeBenchPaper }))
    const order = await placed(book, book.jobs)
    for (const { base64 } of [
      await book.ask('papers.order', { orderId: order.id, format: 'a4' }),
      await book.ask('papers.dayList', { jobIds: idsOf(book.jobs), format: 'a4' }),
    ])
      expect(Buffer.from(base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
  })
})

describe('the sheets of a job', () => {
  it('hand the choice of labels on, and refuse a first label that the sheet hasn’t got', async () => {
    const context = opened()
    const { id: jobId } = await makeableJob(context)
    const asked = { jobId, format: 'a4' as const, sheet: 'part labels' as const }
    const { base64 } = await context.ask('papers.sheet', { ...asked, labels: { sheet: '40', start: 31 } })
    expect(cardIn(base64).labels).toEqual({ sheet: '40', start: 31 })
    for (const labels of [
      { sheet: '24', start: 25 },
      { sheet: 'roll', start: 2 },
    ])
      expect(await context.refused('papers.sheet', { ...asked, labels })).toEqual(['refused labels.start'])
    expect(
      await context.refused('papers.sheet', { ...asked, labels: { sheet: '30', start: 1 } }),
    ).toHaveLength(1)
  })

  it('give the care note the workshop as it stands, and no finish where none was sold', async () => {
    const context = opened()
    const { id: jobId } = await makeableJob(context)
    const { business } = context.book.settings.read()
    await context.ask('settings.change', { business: { ...business, phone: '01632 960 777' } })
    const { base64 } = await context.ask('papers.sheet', { jobId, format: 'a4', sheet: 'care note' })
    expect(cardIn(base64).handover).toEqual({ business: { ...business, phone: '01632 960 777' } })
    const fitting = await context.ask('papers.sheet', { jobId, format: 'a4', sheet: 'fitting sheet' })
    expect(cardIn(fitting.base64).handover).toBeUndefined()
  })

  it('give full-size sheets the day and the printer as it is out, and refuse a kind that the gate doesn’t want', async () => {
    const context = opened()
    const { id: jobId } = await makeableJob(context)
    await context.ask('settings.change', { printer: { across: 99.6, along: 100.3 } })
    const asked = { jobId, format: 'a4', sheet: 'full-size sheets' } as const
    const { base64 } = await context.ask('papers.sheet', { ...asked, fullSize: ['rod', 'bevels'] })
    expect(cardIn(base64).fullSize).toEqual({
      kinds: ['rod', 'bevels'],
      day: context.now().slice(0, 10),
      printer: { across: 99.6, along: 100.3 },
    })
    const all = await context.ask('papers.sheet', asked)
    expect(cardIn(all.base64).fullSize?.kinds).toEqual(['bevels', 'notch', 'top', 'drilling', 'rod'])
    const refused = (fullSize: unknown) => context.refused('papers.sheet', { ...asked, fullSize })
    expect(await refused(['rod', 'notch', 'top'])).toEqual(['refused fullSize', 'refused fullSize'])
    expect(await refused([])).toHaveLength(1)
    expect(await refused(['ceiling'])).toHaveLength(1)
    for (const out of [96, 104])
      expect(await context.refused('settings.change', { printer: { across: 100, along: out } })).toEqual([
        expect.stringContaining('printer.along'),
      ])
    expect(context.book.settings.read().printer).toEqual({ across: 99.6, along: 100.3 })
  })

  it('are painted for real', async () => {
    const context = opened({ makeCard })
    const { id: jobId } = await makeableJob(context)
    for (const sheet of ['part labels', 'care note', 'full-size sheets'] as const) {
      const { base64 } = await context.ask('papers.sheet', { jobId, format: 'a4', sheet })
      expect(Buffer.from(base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
    }
  })
})
