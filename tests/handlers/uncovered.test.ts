import { describe, expect, it } from 'vitest'
import { makeableJob, opened } from './opened.ts'

describe('letters that no paper can show', () => {
  it('are told with the place they stand in, each once', async () => {
    const context = opened()
    const job = await makeableJob(context)
    expect(await context.ask('papers.uncovered', { jobId: job.id })).toEqual([])
    const changes = [
      { path: 'customer.name', value: '門屋 and 門 Sons' },
      { path: 'title', value: 'Gate 🚪 שער Łódź' },
    ]
    await context.ask('jobs.change', { id: job.id, changes })
    expect(await context.ask('papers.uncovered', { jobId: job.id })).toEqual([
      { what: 'what the job is', field: 'title', characters: ['🚪'] },
      { what: 'the customer’s name', field: 'customer.name', characters: ['門', '屋'] },
    ])
  })

  it('are asked for of a job that is there', async () => {
    const context = opened()
    expect(await context.refused('papers.uncovered', { jobId: 4711 })).toEqual([
      expect.stringContaining('jobId'),
    ])
  })
})
