import { describe, expect, it } from 'vitest'
import { mostOptions } from '../../db/options.ts'
import { specOf } from '../../shared/gate/parseSpec.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { makeableJob, opened } from './opened.ts'

const option = (name: string) => ({ name, spec: null, entry: plainEntry })

describe('options of a job', () => {
  it('stand in the order they were added, and close up when one goes; what it said stays in the log', async () => {
    const context = opened()
    const { ask, book } = context
    const { id: jobId } = await makeableJob(context)
    for (const name of ['Redwood', 'Larch', 'Oak']) await ask('options.add', { jobId, option: option(name) })
    const [, larch] = await ask('options.list', { jobId })
    const left = await ask('options.remove', { id: larch?.id ?? 0 })
    expect(left.map(({ name, position }) => [name, position])).toEqual([
      ['Redwood', 1],
      ['Oak', 2],
    ])
    expect(book.jobs.changes(jobId).at(-1)).toMatchObject({
      path: `option.${larch?.id}`,
      before: option('Larch'),
      after: null,
    })
  })

  it('changed in two windows: the later one is refused, reads again, and then goes through', async () => {
    const context = opened()
    const { ask, refused, book } = context
    const { id: jobId } = await makeableJob(context)
    const { id, version } = await ask('options.add', { jobId, option: option('Oak') })
    const mine = { ...option('Oak'), entry: { ...plainEntry, kilometres: 14 } }
    const theirs = { ...option('Oak'), entry: { ...plainEntry, siteVisits: 3 } }
    const changed = await ask('options.change', { id, version, option: theirs })
    expect(changed.version).toBe(version + 1)
    expect(await refused('options.change', { id, version, option: mine })).toEqual(['changed-meanwhile'])
    expect(book.options.one(id)?.entry).toEqual(theirs.entry)
    await ask('options.change', { id, version: changed.version, option: mine })
    expect(book.options.one(id)?.entry).toEqual(mine.entry)
    const kept = book.jobs.changes(jobId).filter(({ path }) => path === `option.${id}`)
    expect(kept.map(({ before }) => before)).toEqual([option('Oak'), theirs])
  })

  it('have a gate that keeps the rules between its fields, or it is refused by field', async () => {
    const context = opened()
    const { ask, refused } = context
    const job = await makeableJob(context)
    const spec = specOf(job.entry.spec)
    const unbraced = { ...spec, braces: undefined }
    expect(
      await refused('options.add', { jobId: job.id, option: { ...option('x'), spec: unbraced } }),
    ).toEqual(['missing option.spec.braces'])
    expect(await ask('options.list', { jobId: job.id })).toEqual([])
  })

  it(`are ${mostOptions} at most, and belong to a job that is there`, async () => {
    const context = opened()
    const { ask, refused } = context
    const { id: jobId } = await makeableJob(context)
    for (let place = 0; place < mostOptions; place += 1)
      await ask('options.add', { jobId, option: option(`${place}`) })
    expect(await refused('options.add', { jobId, option: option('one more') })).toEqual(['refused'])
    expect(await refused('options.add', { jobId: 88, option: option('x') })).toEqual(['not-found jobId'])
    expect(await refused('options.list', { jobId: 88 })).toEqual(['not-found jobId'])
    expect(await refused('options.change', { id: 88, version: 1, option: option('x') })).toEqual([
      'not-found id',
    ])
    expect(await refused('options.remove', { id: 88 })).toEqual(['not-found id'])
  })
})
