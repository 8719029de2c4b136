import { describe, expect, it } from 'vitest'
import { orderingBook, placed, raiseBoards } from './anOrder.ts'
import { opened, quotationIn } from './opened.ts'

const words = {
  customerName: 'Peg Sash',
  town: 'Nether Test',
  phone: '01632 960001',
  title: 'Side gate',
  due: null,
}

describe('the list of every job', () => {
  it('keeps to a stage, a customer, a year, a promise, papers and the sample, together with words', async () => {
    const { ask } = opened()
    const first = await ask('jobs.create', { ...words, due: '2026-03-01' })
    const second = await ask('jobs.create', { ...words, customerName: 'Ned Rail', title: 'Side door' })
    const found = async (some: object) =>
      (await ask('jobs.list', { search: 'side', stage: null, ...some })).rows.map(({ id }) => id)
    expect(await found({ customerId: first.customer.id })).toEqual([first.id])
    expect(await found({ promised: 'late' })).toEqual([first.id])
    expect(await found({ promised: 'no day' })).toEqual([second.id])
    expect(await found({ year: 2026, stage: 'enquiry' })).toHaveLength(2)
    expect(await found({ year: 2025 })).toEqual([])
    expect(await found({ papers: true })).toEqual([])
    expect(await found({ papers: false, sample: false })).toHaveLength(2)
    expect(await found({ sample: true })).toEqual([])
  })

  it('tells where a word stands that its rows don’t show', async () => {
    const { ask } = opened()
    const { id } = await ask('jobs.create', words)
    await ask('jobs.change', {
      id,
      changes: [{ path: 'notes', value: 'Post leans.\nKey with the neighbour.' }],
    })
    const pieces = (given: string[]) => ask('jobs.pieces', { rows: [{ id, words: given }] })
    expect(await pieces(['neighb'])).toEqual([
      { id, place: 'notes', words: '…leans. Key with the neighbour.' },
    ])
    expect(await pieces(['redwood'])).toMatchObject([{ place: 'timber', words: /redwood/ }])
    expect(await pieces(['960001'])).toEqual([{ id, place: 'telephone', words: '01632 960001' }])
    expect(await pieces(['larch'])).toEqual([])
    expect(await ask('jobs.pieces', { rows: [{ id: 999, words: ['key'] }] })).toEqual([])
  })
})

describe('the same again', () => {
  it('has the old sizes, a line that says whose it follows in place of the notes, and today’s prices', async () => {
    const context = opened()
    const book = await orderingBook(1, context)
    const { ask, jobs } = book
    const [old] = jobs
    if (!old) throw new Error('no job')
    await ask('jobs.change', { id: old.id, changes: [{ path: 'notes', value: 'dog in the yard' }] })
    const priced = async (jobId: number) => {
      const draft = await ask('quotations.draft', { jobId, format: 'a4' })
      return quotationIn(draft.base64).money.options[0]?.estimate.cost ?? 0
    }
    const before = await priced(old.id)
    raiseBoards(book)
    const again = await ask('jobs.repeat', { id: old.id })
    expect(again.notes).toBe(`As job ${old.number} of 2 March 2026.`)
    expect(again.entry).toEqual((await ask('jobs.open', { id: old.id })).entry)
    expect(await ask('options.list', { jobId: again.id })).toEqual([])
    expect(await priced(again.id)).toBeGreaterThan(before)
  })
})

describe('a year of the book', () => {
  it('counts what was begun, promised and hung by the month, and the timber ordered', async () => {
    const context = opened()
    const book = await orderingBook(2, context)
    const { ask, jobs } = book
    const order = await placed(book, jobs.slice(0, 1))
    const [first, second] = jobs
    const change = (id: number | undefined, value: string, path = 'stage') =>
      ask('jobs.change', { id: id ?? 0, changes: [{ path, value }] })
    await change(first?.id, 'hung')
    await change(second?.id, 'hung')
    await change(second?.id, 'making')
    await change(second?.id, '2026-08-31', 'due')
    const { year, years, months, kinds } = await ask('jobs.year', { year: null })
    expect([year, years]).toEqual([2026, [2026]])
    expect(months).toHaveLength(12)
    expect(months[2]).toMatchObject({ begun: 2, hung: 1, timberPence: order.cost, worthPence: 0 })
    expect(months[7]).toMatchObject({ promised: 1, begun: 0 })
    expect(kinds.reduce((sum, kind) => sum + kind.begun, 0)).toBe(2)
    expect((await ask('jobs.year', { year: 2025 })).months.every(({ begun }) => begun === 0)).toBe(true)
  })
})
