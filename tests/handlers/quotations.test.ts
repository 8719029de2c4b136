import { createHash } from 'node:crypto'
import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { makeQuotation } from '../../electron/makeQuotation.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { specOf } from '../../shared/gate/parseSpec.ts'
import type { Job } from '../../shared/job/job.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { fillPrices, metrePrice } from '../fixtures/prices.ts'
import { makeableJob, opened, plainQuotation, quotationIn, wanted, type Opened } from './opened.ts'

async function pricedJob(context: Opened) {
  const prices = fillPrices(context.book)
  const job = await makeableJob(context)
  return { ...prices, job, issue: { jobId: job.id, format: 'a4' as const, version: job.version } }
}

const specIn = (job: Job): GateSpec => {
  const spec = specOf(job.entry.spec)
  if (!spec) throw new Error('the job’s gate has no sizes')
  return spec
}

/** Every price of the book half as much again from a day. */
async function riseAll({ ask, book }: Opened, startsOn: string): Promise<void> {
  const prices = book.prices.book().prices.map(({ itemId, supplierId, unit, size, pence: amount }) => ({
    ...{ itemId, supplierId, unit, size, startsOn },
    pence: pence(Math.round(amount * 1.5)),
  }))
  const { stamp } = await ask('prices.preview', { prices })
  await ask('prices.apply', { prices, origin: 'half as much again', stamp })
}

describe('a quotation', () => {
  it('is a paper with a number of its own kind, its money frozen with it, and moves its job on to quoted', async () => {
    const context = opened()
    const { ask } = context
    const { job, issue } = await pricedJob(context)
    await ask('papers.issue', issue)
    const paper = await ask('quotations.issue', issue)
    expect(paper).toMatchObject({ kind: 'quotation', revision: 1, pages: 3, jobId: job.id })
    expect((await ask('jobs.open', { id: job.id })).stage).toBe('quoted')
    expect(
      (await ask('papers.list', { jobId: job.id })).map(({ kind, revision }) => [kind, revision]),
    ).toEqual([
      ['quotation', 1],
      ['job-card', 1],
    ])
    const input = quotationIn((await ask('papers.bytes', { id: paper.id })).base64)
    const { money, acceptance } = await ask('quotations.money', { paperId: paper.id })
    expect(acceptance).toBeNull()
    expect(input).toMatchObject({
      draft: false,
      unit: 'in',
      header: { revision: 1, issuedAt: paper.issuedAt },
    })
    expect(input.money).toEqual(money)
    expect(money).toMatchObject({ on: '2026-03-02', validUntil: '2026-04-01' })
    expect(money.options.map(({ name }) => name)).toEqual(['As drawn'])
    const [option] = money.options
    expect(option?.estimate.missing).toEqual([])
    expect(option?.offer.reduce((sum, line) => sum + line.net, 0)).toBe(option?.estimate.net)
    expect(option?.description.length).toBeGreaterThan(3)
  })

  it('that is accepted shows in the job’s line of the list, whichever of the job’s quotations it was', async () => {
    const { ask, ...context } = opened()
    const { job, issue } = await pricedJob({ ask, ...context })
    const stands = async () =>
      (await ask('jobs.list', { search: '', stage: null })).rows.map((row) => row.accepted)
    const paper = await ask('quotations.issue', issue)
    const { version } = await ask('jobs.open', { id: job.id })
    await ask('quotations.issue', { ...issue, version })
    await ask('jobs.create', wanted)
    expect(await stands()).toEqual([false, false])
    await ask('quotations.accept', { paperId: paper.id, option: 0, acceptedOn: '2026-03-04', note: '' })
    expect(await stands()).toEqual([false, true])
    expect(await ask('jobs.list', { search: 'peg', stage: 'quoted' })).toMatchObject({
      rows: [{ accepted: true }],
    })
  })

  it('stays what it was, byte for byte, after every price has risen; the next one doesn’t', async () => {
    const context = opened({ makeQuotation })
    const { ask } = context
    const { job, issue } = await pricedJob(context)
    const paper = await ask('quotations.issue', issue)
    const [bytes, money] = [
      await ask('papers.bytes', { id: paper.id }),
      await ask('quotations.money', { paperId: paper.id }),
    ]
    await riseAll(context, '2026-03-01')
    expect(await ask('papers.bytes', { id: paper.id })).toEqual(bytes)
    expect(await ask('quotations.money', { paperId: paper.id })).toEqual(money)
    expect(createHash('sha256').update(Buffer.from(bytes.base64, 'base64')).digest('hex')).toBe(paper.sha256)
    const { version } = await ask('jobs.open', { id: job.id })
    const next = await ask('quotations.issue', { ...issue, version })
    const dearer = await ask('quotations.money', { paperId: next.id })
    expect(dearer.money.options[0]?.estimate.net).toBeGreaterThan(
      (money.money.options[0]?.estimate.net ?? 0) * 1.3,
    )
    expect(next.sha256).not.toBe(paper.sha256)
  })

  it('is refused naming each line without a price, drafted or issued, and nothing is kept', async () => {
    const context = opened()
    const { ask, refused } = context
    const { items, job, issue } = await pricedJob(context)
    const item = context.book.prices.item(items['boards'] ?? 0)
    await ask('prices.retireItem', { id: item?.id ?? 0, retired: true })
    const problem = 'no-price options[0].timber.ex 25 × 125 T&G V'
    expect(await refused('quotations.issue', issue)).toEqual([problem])
    expect(await refused('quotations.draft', { jobId: job.id, format: 'a4' })).toEqual([problem])
    expect(await ask('papers.list', { jobId: job.id })).toEqual([])
    expect((await ask('jobs.open', { id: job.id })).stage).toBe('enquiry')
  })

  it('is refused with the stop of any option’s gate, or a missing size', async () => {
    const context = opened()
    const { ask, refused } = context
    const { job, issue } = await pricedJob(context)
    const spec = specIn(job)
    const stopped = { ...spec, boards: { ...spec.boards, rip: 'closing' as const } }
    await ask('options.add', { jobId: job.id, option: { name: 'As drawn', spec: null, entry: plainEntry } })
    await ask('options.add', { jobId: job.id, option: { name: 'Sliver', spec: stopped, entry: plainEntry } })
    expect(await refused('quotations.issue', issue)).toEqual(['stop spec.boards.rip'])
    const empty = await ask('jobs.create', wanted)
    expect(await refused('quotations.draft', { jobId: empty.id, format: 'a4' })).toEqual([
      'missing spec.size.width',
      'missing spec.size.height',
    ])
  })

  it('is refused when the job is an older one, or job or option change while it is being painted', async () => {
    let meanwhile = async (): Promise<unknown> => undefined
    const context = opened({
      makeQuotation: async (input) => {
        await meanwhile()
        return plainQuotation(input)
      },
    })
    const { ask, refused } = context
    const { job, issue } = await pricedJob(context)
    expect(await refused('quotations.issue', { ...issue, version: 1 })).toEqual(['changed-meanwhile'])
    const option = { name: 'As drawn', spec: null, entry: plainEntry }
    meanwhile = () => ask('options.add', { jobId: job.id, option })
    expect(await refused('quotations.issue', issue)).toEqual(['changed-meanwhile'])
    meanwhile = () => ask('jobs.change', { id: job.id, changes: [{ path: 'title', value: 'Another' }] })
    expect(await refused('quotations.issue', issue)).toEqual(['changed-meanwhile'])
    expect(await ask('papers.list', { jobId: job.id })).toEqual([])
  })

  it('drafted says so, carries the number it would get, and leaves nothing behind', async () => {
    const context = opened()
    const { ask } = context
    const { job, issue } = await pricedJob(context)
    await ask('quotations.issue', issue)
    await ask('settings.change', {
      business: { ...context.book.settings.read().business, phone: '01632 960999' },
    })
    const { base64 } = await ask('quotations.draft', { jobId: job.id, format: 'letter' })
    expect(quotationIn(base64)).toMatchObject({
      draft: true,
      format: 'letter',
      business: { phone: '01632 960999' },
      header: { revision: 2, issuedAt: null },
    })
    expect(await ask('papers.list', { jobId: job.id })).toHaveLength(1)
  })

  it('that was tampered with on the disk is damage, and is called by its own name', async () => {
    const context = opened()
    const { ask, refused, book } = context
    const { issue } = await pricedJob(context)
    const { id } = await ask('quotations.issue', issue)
    const db = new Sqlite(book.path)
    db.exec('DROP TRIGGER papers_stand')
    db.exec("UPDATE papers SET bytes = CAST('x' || CAST(bytes AS TEXT) AS BLOB)")
    db.close()
    expect(await refused('papers.bytes', { id })).toEqual(['damaged'])
    expect(() => book.papers.bytes(id)).toThrow('Quotation 1 is damaged')
  })
})

describe('accepting', () => {
  it('is put down once, and no later price moves what was accepted', async () => {
    const context = opened()
    const { ask, refused } = context
    const { issue } = await pricedJob(context)
    const { id: paperId } = await ask('quotations.issue', issue)
    const accept = { paperId, option: 0, acceptedOn: '2026-03-09', note: 'by telephone' }
    expect(await refused('quotations.accept', { ...accept, option: 1 })).toEqual(['refused option'])
    const accepted = await ask('quotations.accept', accept)
    expect(accepted.acceptance).toEqual(accept)
    expect(await refused('quotations.accept', { ...accept, note: 'again' })).toEqual([
      'accepted-before paperId',
    ])
    await riseAll(context, '2026-03-01')
    expect(await ask('quotations.money', { paperId })).toEqual(accepted)
    expect(await refused('quotations.accept', { ...accept, paperId: 77 })).toEqual(['not-found paperId'])
    const db = new Sqlite(context.book.path)
    expect(() => db.exec("UPDATE acceptances SET note = ''")).toThrow('never altered')
    expect(() => db.exec('DELETE FROM acceptances')).toThrow('never leaves')
    db.close()
  })

  async function twoGates(context: Opened) {
    const priced = await pricedJob(context)
    const { job, issue } = priced
    const spec = specIn(job)
    const wide = {
      ...spec,
      ledges: { ...spec.ledges, count: 3 as const },
      size: { from: 'leaf' as const, width: 1000, height: 1700 },
    }
    for (const [name, own] of [
      ['As drawn', null],
      ['Three ledges', wide],
    ] as const)
      await context.ask('options.add', { jobId: job.id, option: { name, spec: own, entry: plainEntry } })
    const paper = await context.ask('quotations.issue', issue)
    return {
      ...priced,
      spec,
      wide,
      paper,
      accept: { paperId: paper.id, option: 1, acceptedOn: '2026-03-09', note: '' },
    }
  }
  const gateOf = async ({ ask }: Opened, id: number) => (await ask('jobs.open', { id })).entry

  it('another of the gates that were quoted makes it the job’s, and forgets the words of the sizes it had', async () => {
    const context = opened()
    const { job, wide, accept } = await twoGates(context)
    await context.ask('quotations.accept', accept)
    expect(await gateOf(context, job.id)).toEqual({ spec: wide, typed: {} })
    const logged = context.book.jobs.changes(job.id).map(({ path }) => path)
    expect(logged).toEqual(expect.arrayContaining(['spec.size', 'spec.ledges', 'typed.size.width']))
  })

  it('leaves a gate alone that was drawn on since: it is none of those quoted', async () => {
    const context = opened()
    const { job, accept } = await twoGates(context)
    await context.ask('jobs.change', {
      id: job.id,
      changes: [{ path: 'spec.size.width', value: 925, typed: '925' }],
    })
    const before = await gateOf(context, job.id)
    await context.ask('quotations.accept', accept)
    expect(await gateOf(context, job.id)).toEqual(before)
  })
})

describe('quoting again', () => {
  it('shows each line then and now, and changes nothing', async () => {
    const context = opened()
    const { ask } = context
    const { items, supplier, issue } = await pricedJob(context)
    const { id: paperId } = await ask('quotations.issue', issue)
    const same = await ask('quotations.requote', { paperId })
    expect(same.filter(({ before, after }) => before !== after)).toEqual([])
    const prices = [metrePrice(items['ledges'] ?? 0, supplier, { pence: pence(542), startsOn: '2026-03-01' })]
    const { stamp } = await ask('prices.preview', { prices })
    await ask('prices.apply', { prices, origin: 'twice', stamp })
    const moved = (await ask('quotations.requote', { paperId })).filter(
      ({ before, after }) => before !== after,
    )
    const [ledges] = moved
    expect(ledges?.words).toContain('ex 32 × 150 planed')
    expect(ledges?.after).toBeCloseTo((ledges?.before ?? 0) * 2, -1)
    expect(moved.map(({ words }) => words).slice(1)).toEqual([
      'Overhead',
      'Profit',
      'Total before VAT',
      'VAT',
      'Total with VAT',
    ])
  })
})
