import { createHash } from 'node:crypto'
import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { addSample } from '../../electron/handlers/sampleCards.ts'
import { cardIn, makeableJob, opened, plainCard, wanted } from './opened.ts'

const hash = (base64: string): string =>
  createHash('sha256').update(Buffer.from(base64, 'base64')).digest('hex')

describe('issuing a card', () => {
  it('freezes it: the same bytes after any later change to the job, the sections or the settings', async () => {
    const context = opened()
    const { ask } = context
    const job = await makeableJob(context)
    const paper = await ask('papers.issue', { jobId: job.id, format: 'a4', version: job.version })
    const first = await ask('papers.bytes', { id: paper.id })
    await ask('jobs.change', {
      id: job.id,
      changes: [
        { path: 'spec.size.width', value: 1000 },
        { path: 'customer.name', value: 'Another' },
      ],
    })
    await ask('settings.change', { name: 'New name' })
    await ask('sections.remove', { id: 1 })
    const again = await ask('papers.bytes', { id: paper.id })
    expect(again).toEqual(first)
    expect(again.paper).toMatchObject({ revision: 1, format: 'a4', pages: 2, sha256: hash(first.base64) })
    expect(cardIn(again.base64)).toMatchObject({
      draft: false,
      unit: 'in',
      header: {
        number: job.number,
        revision: 1,
        due: '2026-05-31',
        issuedAt: paper.issuedAt,
        customer: { name: 'Peg Sash' },
      },
      spec: { size: { from: 'leaf', width: 930.275, height: 1803.4 } },
    })
  })

  it('again makes revision 2, and both stay', async () => {
    const context = opened()
    const { ask } = context
    const { id: jobId, version } = await makeableJob(context)
    await ask('papers.issue', { jobId, format: 'a4', version })
    const second = await ask('papers.issue', { jobId, format: 'letter', version })
    expect(cardIn((await ask('papers.bytes', { id: second.id })).base64).header.revision).toBe(2)
    expect((await ask('papers.list', { jobId })).map(({ revision, format }) => [revision, format])).toEqual([
      [2, 'letter'],
      [1, 'a4'],
    ])
    expect((await ask('jobs.list', { search: '', stage: null })).rows[0]?.papers).toBe(2)
  })

  it('is refused naming each missing size', async () => {
    const { ask, refused } = opened()
    const { id: jobId, version } = await ask('jobs.create', wanted)
    expect(await refused('papers.issue', { jobId, format: 'a4', version })).toEqual([
      'missing spec.size.width',
      'missing spec.size.height',
    ])
    expect(await refused('papers.draft', { jobId, format: 'a4' })).toEqual([
      'missing spec.size.width',
      'missing spec.size.height',
    ])
  })

  it('is refused with the stop and its remedy when the gate can’t be made, and nothing is kept', async () => {
    const context = opened()
    const { ask, refused } = context
    const { id, version } = await makeableJob(context)
    const { job } = await ask('jobs.change', { id, changes: [{ path: 'spec.boards.rip', value: 'closing' }] })
    expect(job.version).toBe(version + 1)
    expect(await refused('papers.issue', { jobId: id, format: 'a4', version: job.version })).toEqual([
      'stop spec.boards.rip',
    ])
    expect(await ask('papers.list', { jobId: id })).toEqual([])
  })

  it('is refused when the window’s job is an older one', async () => {
    const context = opened()
    const { ask, refused } = context
    const { id, version } = await makeableJob(context)
    await ask('jobs.change', { id, changes: [{ path: 'notes', value: 'oak' }] })
    expect(await refused('papers.issue', { jobId: id, format: 'a4', version })).toEqual(['changed-meanwhile'])
  })

  it('is refused when the job is changed, or the card issued, while the card is being painted', async () => {
    let meanwhile = async (): Promise<unknown> => undefined
    const context = opened({
      makeCard: async (input) => {
        await meanwhile()
        return plainCard(input)
      },
    })
    const { ask, refused } = context
    const { id, version } = await makeableJob(context)
    const issue = { jobId: id, format: 'a4' as const, version }
    meanwhile = () => {
      meanwhile = async () => undefined
      return ask('papers.issue', issue)
    }
    expect(await refused('papers.issue', issue)).toEqual(['changed-meanwhile'])
    meanwhile = () => ask('jobs.change', { id, changes: [{ path: 'title', value: 'Another' }] })
    expect(await refused('papers.issue', issue)).toEqual(['changed-meanwhile'])
    expect((await ask('papers.list', { jobId: id })).map((paper) => paper.revision)).toEqual([1])
  })
})

describe('a damaged card', () => {
  it('is reported by the request and never handed out', async () => {
    const context = opened()
    const { ask, refused, book } = context
    const { id, version } = await makeableJob(context)
    const paper = await ask('papers.issue', { jobId: id, format: 'a4', version })
    const db = new Sqlite(book.path)
    db.exec('DROP TRIGGER papers_stand')
    db.exec("UPDATE papers SET bytes = CAST(replace(CAST(bytes AS TEXT), 'Peg Sash', 'Peg Sush') AS BLOB)")
    db.close()
    expect(await refused('papers.bytes', { id: paper.id })).toEqual(['damaged'])
    expect(await ask('papers.list', { jobId: id })).toEqual([paper])
  })
})

describe('a draft', () => {
  it('is painted as one, carries the revision it would get, and leaves nothing behind', async () => {
    const context = opened()
    const { ask } = context
    const { id: jobId } = await makeableJob(context)
    const { base64 } = await ask('papers.draft', { jobId, format: 'letter' })
    expect(cardIn(base64)).toMatchObject({
      draft: true,
      format: 'letter',
      header: { revision: 1, issuedAt: null },
    })
    expect(await ask('papers.list', { jobId })).toEqual([])
  })
})

describe('a sheet beside the card', () => {
  it('is painted of the gate as it stands, on the paper asked for, and leaves nothing behind', async () => {
    const painted: (string | undefined)[] = []
    const context = opened({
      makeCard: async (input, sheet) => {
        painted.push(sheet)
        return plainCard(input)
      },
    })
    const { ask } = context
    const { id: jobId } = await makeableJob(context)
    for (const sheet of ['worked figures', 'fitting sheet'] as const) {
      const { base64 } = await ask('papers.sheet', { jobId, format: 'letter', sheet })
      expect(cardIn(base64)).toMatchObject({ draft: false, format: 'letter', header: { issuedAt: null } })
    }
    expect(painted).toEqual(['worked figures', 'fitting sheet'])
    expect(await ask('papers.list', { jobId })).toEqual([])
  })

  it('is refused without the gate’s sizes, without the job, and by another name', async () => {
    const { ask, refused } = opened()
    const { id: jobId } = await ask('jobs.create', wanted)
    const sheet = 'worked figures'
    expect(await refused('papers.sheet', { jobId, format: 'a4', sheet })).toEqual([
      'missing spec.size.width',
      'missing spec.size.height',
    ])
    expect(await refused('papers.sheet', { jobId: 999, format: 'a4', sheet })).toEqual(['not-found jobId'])
    expect(await refused('papers.sheet', { jobId, format: 'a4', sheet: 'job card' })).toHaveLength(1)
  })
})

describe('comparing', () => {
  it('an issued card with the job as it stands, and with the next revision, says the same', async () => {
    const context = opened()
    const { ask } = context
    const { id, version } = await makeableJob(context)
    const first = await ask('papers.issue', { jobId: id, format: 'a4', version })
    expect(await ask('papers.compare', { earlier: first.id, later: null })).toEqual([])
    const { job } = await ask('jobs.change', { id, changes: [{ path: 'spec.size.width', value: 1016 }] })
    const stands = await ask('papers.compare', { earlier: first.id, later: null })
    expect(stands).toContainEqual({ what: 'leaf width', before: '36 ⅝″ · 930.3 mm', after: '40″ · 1016 mm' })
    const second = await ask('papers.issue', { jobId: id, format: 'a4', version: job.version })
    expect(await ask('papers.compare', { earlier: first.id, later: second.id })).toEqual(stands)
  })

  it('with a job that can’t be made any more still says what was entered otherwise', async () => {
    const context = opened()
    const { ask } = context
    const { id, version } = await makeableJob(context)
    const first = await ask('papers.issue', { jobId: id, format: 'a4', version })
    await ask('jobs.change', { id, changes: [{ path: 'spec.size.height', value: null }] })
    expect(await ask('papers.compare', { earlier: first.id, later: null })).toEqual([
      { what: 'gate', before: 'can be made', after: 'can’t be made as entered' },
      { what: 'leaf height', before: '71″ · 1803.4 mm', after: 'not given' },
    ])
  })

  it('of two jobs’ cards is refused', async () => {
    const context = opened()
    const { ask, refused } = context
    const papers = await Promise.all(
      [await makeableJob(context), await makeableJob(context)].map(({ id, version }) =>
        ask('papers.issue', { jobId: id, format: 'a4', version }),
      ),
    )
    expect(await refused('papers.compare', { earlier: papers[0]?.id, later: papers[1]?.id })).toEqual([
      'refused later',
    ])
  })
})

describe('the sample', () => {
  it('comes with two cards issued the usual way, and goes with one request', async () => {
    const context = opened()
    const { ask } = context
    const jobs = await addSample(context)
    const { rows } = await ask('jobs.list', { search: '', stage: null })
    const papers = await Promise.all(rows.map(({ id: jobId }) => ask('papers.list', { jobId })))
    const cards = papers.flat().filter(({ kind }) => kind === 'job-card')
    expect(cards).toHaveLength(2)
    const [paper] = cards
    expect(cardIn((await ask('papers.bytes', { id: paper?.id ?? 0 })).base64).header.workshop).toBe(
      'A made-up workshop',
    )
    expect(await ask('book.summary', {})).toMatchObject({
      jobs,
      sampleJobs: jobs,
      workshopName: 'A made-up workshop',
    })
    expect(await ask('sample.remove', {})).toEqual({ removed: jobs })
    expect(await ask('book.summary', {})).toMatchObject({ jobs: 0, sampleJobs: 0, workshopName: '' })
    expect(await addSample(context)).toBe(jobs)
  })
})
