import { describe, expect, it } from 'vitest'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { idsOf, orderingBook, placed } from './anOrder.ts'
import { makeableJob, wanted } from './opened.ts'

describe('jobs that timber may be ordered for', () => {
  it('are all but those hung: accepted ones first, then by the day promised', async () => {
    const book = await orderingBook(3)
    const { ask, jobs } = book
    const [first, second, third] = idsOf(jobs) as [number, number, number]
    const empty = await ask('jobs.create', { ...wanted, due: '2026-04-20' })
    await ask('jobs.change', { id: second, changes: [{ path: 'due', value: '2026-04-10' }] })
    await ask('jobs.change', { id: third, changes: [{ path: 'due', value: null }] })
    const hung = await makeableJob(book)
    await ask('jobs.change', { id: hung.id, changes: [{ path: 'stage', value: 'hung' }] })
    const { version } = await ask('jobs.open', { id: third })
    const paper = await ask('quotations.issue', { jobId: third, format: 'a4', version })
    await ask('quotations.accept', { paperId: paper.id, option: 0, acceptedOn: '2026-03-02', note: '' })
    const candidates = await ask('orders.candidates', {})
    expect(candidates.map(({ jobId, accepted }) => [jobId, accepted])).toEqual([
      [third, true],
      [second, false],
      [empty.id, false],
      [first, false],
    ])
    expect(candidates.map(({ hindrance }) => hindrance)).toEqual([
      null,
      null,
      'the width of the leaf is missing; type it in first (and 1 more)',
      null,
    ])
    expect(candidates[0]).toMatchObject({
      customer: 'Peg Sash',
      title: 'Side gate',
      stage: 'quoted',
      due: null,
    })
    expect(candidates.filter(({ remark }) => remark !== undefined)).toEqual([])
  })

  it('say which order they stand on, and where the gate was changed since it was accepted', async () => {
    const book = await orderingBook(2)
    const { ask, jobs } = book
    const [first, second] = jobs as [(typeof jobs)[0], (typeof jobs)[0]]
    const paper = await ask('quotations.issue', { jobId: first.id, format: 'a4', version: first.version })
    await ask('quotations.accept', { paperId: paper.id, option: 0, acceptedOn: '2026-03-02', note: '' })
    await ask('jobs.change', { id: first.id, changes: [{ path: 'spec.size.height', value: 1812 }] })
    await placed(book, [second])
    const candidates = await ask('orders.candidates', {})
    expect(candidates.map(({ orderedOn, remark }) => [orderedOn, remark?.slice(0, 20)])).toEqual([
      [null, 'the gate was changed'],
      ['2026-T01', undefined],
    ])
  })
})

describe('what is to be bought for jobs', () => {
  it('is refused for a gate that can’t be made, a job that is gone, or one that is hung', async () => {
    const { ask, refused, jobs } = await orderingBook(1)
    const [job] = idsOf(jobs)
    const empty = await ask('jobs.create', wanted)
    expect(await refused('orders.task', { jobIds: [job, empty.id, 99] })).toEqual([
      'missing jobIds[1]',
      'missing jobIds[1]',
      'not-found jobIds[2]',
    ])
    await ask('jobs.change', { id: job ?? 0, changes: [{ path: 'stage', value: 'hung' }] })
    expect(await refused('orders.task', { jobIds: [job] })).toEqual(['refused jobIds[0]'])
  })

  it('is of the sections put by hand in the option accepted, else in the first', async () => {
    const book = await orderingBook(1)
    const { ask, items, jobs } = book
    const [job] = jobs as [(typeof jobs)[0]]
    const entry = { ...plainEntry, chosen: { 'timber.ex 32 × 100 planed': items['ledges'] ?? 0 } }
    const ledgeBlanks = async () =>
      (await ask('orders.task', { jobIds: [job.id] })).parts
        .filter(({ key }) => key === 'ex 32 × 150 planed, European redwood')
        .map(({ part }) => part)
    expect(await ledgeBlanks()).toEqual(['ledge'])
    await ask('options.add', { jobId: job.id, option: { name: 'Wide', spec: null, entry: plainEntry } })
    await ask('options.add', { jobId: job.id, option: { name: 'Stout braces', spec: null, entry } })
    expect(await ledgeBlanks()).toEqual(['ledge'])
    const { version } = await ask('jobs.open', { id: job.id })
    const paper = await ask('quotations.issue', { jobId: job.id, format: 'a4', version })
    await ask('quotations.accept', { paperId: paper.id, option: 1, acceptedOn: '2026-03-02', note: '' })
    expect(await ledgeBlanks()).toEqual(['ledge', 'brace'])
  })
})
