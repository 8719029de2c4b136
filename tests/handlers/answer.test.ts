import { describe, expect, it } from 'vitest'
import { answer } from '../../electron/handlers/answer.ts'
import { handlers } from '../../electron/handlers/table.ts'
import { requestNames, type RequestName } from '../../shared/contract.ts'
import { standardSections } from '../../shared/gate/standardSpec.ts'
import { makeableJob, opened, wanted } from './opened.ts'

describe('answering a request', () => {
  it('is there for every name of the contract and no other', () => {
    expect(Object.keys(handlers)).toEqual(requestNames)
  })

  it('refuses a name that isn’t in the contract, own or inherited', async () => {
    const { refused } = opened()
    for (const name of ['jobs.delete', 'toString', '__proto__', 'constructor', ''])
      expect(await refused(name, {})).toEqual(['unknown-request'])
  })

  it.each(requestNames)('%s refuses what it doesn’t take, changes nothing and logs nothing', async (name) => {
    const context = opened()
    for (const payload of [undefined, null, 7, 'x', [1], { unknown: 1 }, { id: '1' }]) {
      const result = await answer(context, name, payload)
      expect(result.ok).toBe(false)
    }
    expect(context.logged).toEqual([])
    expect(context.book.jobs.count()).toEqual({ jobs: 0, sampleJobs: 0 })
  })

  it('names every field that is wrong', async () => {
    const { refused } = opened()
    expect(await refused('jobs.create', { ...wanted, title: 7, due: 'soon', colour: 'green' })).toEqual([
      'refused title',
      'refused due',
      'refused colour',
    ])
    expect(await refused('jobs.create', { ...wanted, due: '2026-02-30' })).toEqual(['refused due'])
  })

  it('says what is no longer in the book', async () => {
    const { refused } = opened()
    const asked: [RequestName, unknown][] = [
      ['jobs.open', { id: 5 }],
      ['jobs.change', { id: 5, changes: [{ path: 'title', value: 'x' }] }],
      ['jobs.repeat', { id: 5 }],
      ['papers.list', { jobId: 5 }],
      ['papers.issue', { jobId: 5, format: 'a4', version: 1 }],
      ['papers.draft', { jobId: 5, format: 'a4' }],
      ['papers.bytes', { id: 5 }],
      ['papers.compare', { earlier: 5, later: null }],
      ['sections.change', { id: 500, section: standardSections.boards }],
      ['sections.remove', { id: 500 }],
    ]
    const answers = await Promise.all(asked.map(([name, payload]) => refused(name, payload)))
    expect(answers.map((problems) => problems[0]?.split(' ')[0])).toEqual(asked.map(() => 'not-found'))
  })

  it('turns trouble with the book into its own problem, with what the store said in the log', async () => {
    const context = opened({
      makeCard: async () => {
        throw Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' })
      },
    })
    const { id, version } = await makeableJob(context)
    expect(await context.refused('papers.issue', { jobId: id, format: 'a4', version })).toEqual(['full'])
    expect(context.logged[0]).toContain('database or disk is full')
  })

  it('says a fault of the program in one plain sentence and puts the stack in the log, never in the answer', async () => {
    const context = opened({
      makeCard: async () => {
        throw new TypeError('reading ‘size’ of undefined')
      },
    })
    const { id } = await makeableJob(context)
    const result = await answer(context, 'papers.draft', { jobId: id, format: 'a4' })
    expect(JSON.stringify(result)).not.toMatch(/undefined|TypeError|\.ts/)
    expect(result).toMatchObject({ ok: false, problems: [{ code: 'unexpected', field: '' }] })
    expect(context.logged.join('\n')).toMatch(
      /^[A-Z\d]{6} papers\.draft: TypeError: reading … of undefined\n\s+at /,
    )
  })
})

describe('the requests for jobs, customers, sections and settings', () => {
  it('take a job in, in the workshop’s unit and with its own tools copied into the gate', async () => {
    const { ask } = opened()
    const { workshop } = (await ask('book.summary', {})).settings
    await ask('settings.change', {
      unit: 'in',
      workshop: { ...workshop, drills: [3, 5.5, 10] },
      name: 'Test bench',
    })
    const job = await ask('jobs.create', { ...wanted, customerName: '  Peg Sash ' })
    expect(job).toMatchObject({
      number: '2026-001',
      unit: 'in',
      stage: 'enquiry',
      customer: { name: 'Peg Sash' },
      version: 1,
    })
    expect(job.entry.spec.workshop?.drills).toEqual([3, 5.5, 10])
    expect(job.entry.spec.size).toEqual({ from: 'leaf', width: null, height: null })
    await ask('settings.change', { workshop })
    expect((await ask('jobs.open', { id: job.id })).entry.spec.workshop?.drills).toEqual([3, 5.5, 10])
    expect(await ask('book.summary', {})).toMatchObject({
      workshopName: 'Test bench',
      jobs: 1,
      sampleJobs: 0,
    })
  })

  it('take in a job about which nothing is known yet', async () => {
    const { ask } = opened()
    const job = await ask('jobs.create', { customerName: '', town: '', phone: '', title: '', due: null })
    expect(await ask('jobs.open', { id: job.id })).toEqual(job)
  })

  it('find customers and list jobs', async () => {
    const { ask } = opened()
    const { id } = await ask('jobs.create', wanted)
    expect(await ask('customers.find', { search: 'sash' })).toMatchObject([
      { name: 'Peg Sash', town: 'Nether Test' },
    ])
    expect(await ask('jobs.list', { search: 'nether', stage: 'enquiry' })).toMatchObject({
      rows: [{ id, papers: 0 }],
      limited: false,
    })
    expect(await ask('jobs.repeat', { id })).toMatchObject({ number: '2026-002' })
  })

  it('keep a section with a known timber and refuse one without', async () => {
    const { ask, refused } = opened()
    const section = { ...standardSections.ledges, name: 'ex 50 × 150', thickness: 44 }
    expect(await ask('sections.add', { use: 'ledges', section })).toHaveLength(13)
    expect(
      await refused('sections.add', { use: 'ledges', section: { ...section, species: 'moonwood' } }),
    ).toEqual(['unknown section.species'])
    const kept = (await ask('sections.list', {})).find((one) => one.section.name === 'ex 50 × 150')
    const changed = await ask('sections.change', {
      id: kept?.id ?? 0,
      section: { ...section, thickness: 45 },
    })
    expect(changed.find((one) => one.id === kept?.id)?.section.thickness).toBe(45)
    expect(await ask('sections.remove', { id: kept?.id ?? 0 })).toHaveLength(12)
  })

  it('leave a job’s own section alone when the kept one changes', async () => {
    const { ask } = opened()
    const job = await ask('jobs.create', wanted)
    await ask('sections.change', { id: 1, section: { ...standardSections.boards, width: 100 } })
    await ask('sections.remove', { id: 1 })
    expect((await ask('jobs.open', { id: job.id })).entry).toEqual(job.entry)
  })
})
