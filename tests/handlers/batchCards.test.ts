import { PDFDocument } from 'pdf-lib'
import { setTimeout as pause } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { makeCard } from '../../electron/makeCard.ts'
import type { Job } from '../../shared/job/job.ts'
import { makeableJob, opened, type Opened } from './opened.ts'

const pagesOf = async (base64: string) =>
  (await PDFDocument.load(Buffer.from(base64, 'base64'), { updateMetadata: false })).getPageCount()

/** A Wednesday, at noon. */
const wednesday = () => '2026-03-04T12:00:00.000Z'

/** A job whose gate can be made, promised for a day. */
async function promised(
  context: Opened,
  due: string | null,
  more: { path: string; value: unknown }[] = [],
): Promise<Job> {
  const { id } = await makeableJob(context)
  const changes = [{ path: 'due', value: due }, ...more]
  return (await context.ask('jobs.change', { id, changes })).job
}
const made = (context: Opened, jobId: number, issue: boolean) =>
  context.ask('papers.dueCard', { jobId, format: 'a4', issue })

describe('the jobs promised soon', () => {
  it('are those up to next Sunday that aren’t hung, the earliest first, each with how its card stands', async () => {
    const context = opened({ now: wednesday })
    const days = ['2026-03-16', '2026-03-15', '2026-03-09', '2026-03-08', '2026-03-04', '2026-03-03', null]
    const jobs: Job[] = []
    for (const day of days) jobs.push(await promised(context, day))
    await promised(context, '2026-03-05', [{ path: 'stage', value: 'hung' }])
    const issued = jobs[3]
    if (!issued) throw new Error('no job')
    await context.ask('papers.issue', { jobId: issued.id, format: 'letter', version: issued.version })
    const changed = jobs[4]
    if (!changed) throw new Error('no job')
    await context.ask('papers.issue', { jobId: changed.id, format: 'a4', version: changed.version })
    await context.ask('jobs.change', { id: changed.id, changes: [{ path: 'spec.size.width', value: 1016 }] })
    const stopped = jobs[5]
    if (!stopped) throw new Error('no job')
    await context.ask('jobs.change', { id: stopped.id, changes: [{ path: 'spec.size.width', value: 60 }] })

    const { today, cards, more } = await context.ask('papers.due', {})
    expect([today, more]).toEqual(['2026-03-04', false])
    expect(cards.map(({ due, span }) => [due, span])).toEqual([
      ['2026-03-03', 'late'],
      ['2026-03-04', 'this week'],
      ['2026-03-08', 'this week'],
      ['2026-03-09', 'next week'],
      ['2026-03-15', 'next week'],
    ])
    expect(cards.map(({ card }) => card)).toEqual([
      null,
      { revision: 1, format: 'a4', current: false },
      { revision: 1, format: 'letter', current: true },
      null,
      null,
    ])
    expect(cards.map(({ hindrance }) => hindrance !== null)).toEqual([true, false, false, false, false])
  })
})

describe('cards printed together', () => {
  it('are the very bytes issued before where nothing changed, and drafts otherwise; nothing is kept by it', async () => {
    const context = opened({ makeCard, now: wednesday })
    const [kept, fresh] = [await promised(context, '2026-03-05'), await promised(context, '2026-03-06')]
    const paper = await context.ask('papers.issue', { jobId: kept.id, format: 'a4', version: kept.version })
    const cards = [await made(context, kept.id, false), await made(context, fresh.id, false)]
    expect(cards.map((card) => card.made)).toEqual(['issued before', 'draft'])
    expect(cards[0]).toMatchObject({ sha256: paper.sha256, revision: 1, pages: paper.pages })
    const gathered = await context.ask('papers.gather', { cards: cards.map(({ sha256 }) => sha256) })
    expect(gathered.pages).toBe(paper.pages + (cards[1]?.pages ?? 0))
    expect(await pagesOf(gathered.base64)).toBe(gathered.pages)
    expect(await context.ask('papers.list', { jobId: fresh.id })).toEqual([])
  })

  it('are issued all in one writing, each just as it lies in the paper gathered', async () => {
    const context = opened({ makeCard, now: wednesday })
    const jobs = [await promised(context, '2026-03-05'), await promised(context, '2026-03-06')]
    const cards = []
    for (const { id } of jobs) cards.push((await made(context, id, true)).sha256)
    for (const { id } of jobs) expect(await context.ask('papers.list', { jobId: id })).toEqual([])
    const issued = await context.ask('papers.issueTogether', { cards })
    expect(issued.map(({ sha256 }) => sha256)).toEqual(cards)
    for (const { id } of jobs) expect(await context.ask('papers.list', { jobId: id })).toHaveLength(1)
    const again = await Promise.all(jobs.map(({ id }) => made(context, id, true)))
    expect(again.map((card) => [card.made, card.sha256])).toEqual(
      cards.map((mark) => ['issued before', mark]),
    )
  })

  it('are issued none of them where one job was changed meanwhile, or one was issued by another window', async () => {
    const context = opened({ makeCard, now: wednesday })
    const [first, second] = [await promised(context, '2026-03-05'), await promised(context, '2026-03-06')]
    const cards = [
      (await made(context, first.id, true)).sha256,
      (await made(context, second.id, true)).sha256,
    ]
    await context.ask('papers.issue', { jobId: second.id, format: 'a4', version: second.version })
    expect(await context.refused('papers.issueTogether', { cards })).toEqual(['changed-meanwhile cards'])
    expect(await context.ask('papers.list', { jobId: first.id })).toEqual([])
    await context.ask('jobs.change', { id: second.id, changes: [{ path: 'notes', value: 'ring first' }] })
    expect(await context.refused('papers.issueTogether', { cards })).toEqual(['changed-meanwhile cards'])
    expect(await context.ask('papers.list', { jobId: first.id })).toEqual([])
  })

  it('are refused where a stop stands, where too many are asked for, and where they were put away', async () => {
    const context = opened({ now: wednesday })
    const job = await promised(context, '2026-03-05', [{ path: 'spec.size.width', value: 60 }])
    const problems = await context.refused('papers.dueCard', { jobId: job.id, format: 'a4', issue: false })
    expect(problems[0]).toMatch(/^stop /)
    const cards = Array.from({ length: 201 }, (_, i) => i.toString(16).padStart(64, '0'))
    expect(await context.refused('papers.gather', { cards })).toEqual(['refused cards'])
    expect(await context.refused('papers.gather', { cards: cards.slice(0, 2) })).toEqual(['not-found cards'])
  })

  it('take time in step with their number, and other requests are answered meanwhile', async () => {
    const context = opened({ makeCard, now: wednesday })
    const marks: string[] = []
    for (let at = 0; at < 50; at += 1) {
      const { id } = await promised(context, '2026-03-05', [{ path: 'spec.size.width', value: 900 + at }])
      marks.push((await made(context, id, false)).sha256)
    }
    const took = async (cards: string[]) => {
      const began = performance.now()
      await context.ask('papers.gather', { cards })
      return (performance.now() - began) / cards.length
    }
    await took(marks.slice(0, 10))
    const few = Math.min(await took(marks.slice(0, 10)), await took(marks.slice(10, 20)))
    const many = Math.min(await took(marks), await took(marks))
    const ended: string[] = []
    const gathering = context.ask('papers.gather', { cards: marks }).then(() => ended.push('gathered'))
    await pause(5)
    await context.ask('jobs.list', { search: '', stage: null }).then(() => ended.push('listed'))
    await gathering
    expect(ended).toEqual(['listed', 'gathered'])
    process.stdout.write(`gathering a card: ${few.toFixed(1)} ms of 10, ${many.toFixed(1)} ms of 50\n`)
    expect(many).toBeLessThan(3 * few)
  })
})
