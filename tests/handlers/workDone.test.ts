import { describe, expect, it } from 'vitest'
import { fillPrices } from '../fixtures/prices.ts'
import { makeableJob, opened } from './opened.ts'

const hours = {
  what: 'hours',
  group: 'making',
  operation: 'rip',
  quantity: 0.75,
  note: 'knots',
  on: '2026-03-20',
} as const

describe('what a job took', () => {
  it('is kept by day, taken out again, and stands beside the estimate that the job was sold on', async () => {
    const context = opened()
    const { ask } = context
    fillPrices(context.book)
    const { id: jobId, version } = await makeableJob(context)
    const later = await ask('workDone.add', { jobId, ...hours })
    const sooner = await ask('workDone.add', { jobId, ...hours, quantity: 0.5, on: '2026-03-19' })
    expect(await ask('workDone.list', { jobId })).toEqual([sooner, later])
    expect(await ask('workDone.record', {})).toEqual([])
    const paper = await ask('quotations.issue', { jobId, format: 'a4', version })
    const { money } = await ask('quotations.money', { paperId: paper.id })
    const estimated = money.options[0]?.estimate.lines.find(({ id }) => id === 'making.rip')?.quantity
    expect(estimated).toBeGreaterThan(0)
    expect(await ask('workDone.record', {})).toMatchObject([
      { group: 'making', operation: 'rip', jobs: 1, estimated, done: 75 },
    ])
    expect(await ask('workDone.remove', { id: later.id })).toEqual([sooner])
  })

  it('is refused for a job, and missed for an entry, that isn’t there', async () => {
    const { refused } = opened()
    expect(await refused('workDone.add', { jobId: 5, ...hours })).toEqual(['not-found jobId'])
    expect(await refused('workDone.list', { jobId: 5 })).toEqual(['not-found jobId'])
    expect(await refused('workDone.remove', { id: 5 })).toEqual(['not-found id'])
  })
})
