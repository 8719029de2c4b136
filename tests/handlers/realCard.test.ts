import { PDFDocument } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { makeCard } from '../../electron/makeCard.ts'
import { addSample } from '../../electron/handlers/sampleCards.ts'
import { makeableJob, opened } from './opened.ts'

const pdf = (base64: string) => PDFDocument.load(Buffer.from(base64, 'base64'), { updateMetadata: false })

describe('the real card', () => {
  it('is kept as the PDF that was painted, its pages counted right, and reprinted byte for byte', async () => {
    const context = opened({ makeCard })
    const { ask } = context
    const { id: jobId, version } = await makeableJob(context)
    const paper = await ask('papers.issue', { jobId, format: 'a4', version })
    const first = await ask('papers.bytes', { id: paper.id })
    expect((await pdf(first.base64)).getPageCount()).toBe(paper.pages)
    expect(paper.size).toBe(Buffer.from(first.base64, 'base64').length)
    await ask('jobs.change', { id: jobId, changes: [{ path: 'spec.size.width', value: 1016 }] })
    expect((await ask('papers.bytes', { id: paper.id })).base64).toBe(first.base64)
  })

  it('of a draft is the same each time, and another than the issued one', async () => {
    const context = opened({ makeCard })
    const { ask } = context
    const { id: jobId, version } = await makeableJob(context)
    const draft = async () => (await ask('papers.draft', { jobId, format: 'letter' })).base64
    const drafts = [await draft(), await draft()]
    expect(drafts[0]).toBe(drafts[1])
    const paper = await ask('papers.issue', { jobId, format: 'letter', version })
    expect((await ask('papers.bytes', { id: paper.id })).base64).not.toBe(drafts[0])
  })

  it('is another paper than the worked figures and the fitting sheet of the same gate', async () => {
    const context = opened({ makeCard })
    const { ask } = context
    const { id: jobId } = await makeableJob(context)
    const sheets = await Promise.all([
      ask('papers.sheet', { jobId, format: 'a4', sheet: 'worked figures' }),
      ask('papers.sheet', { jobId, format: 'a4', sheet: 'fitting sheet' }),
    ])
    const titles = await Promise.all(sheets.map(async ({ base64 }) => (await pdf(base64)).getTitle()))
    expect(titles.map((title) => title?.split(' ').slice(1).join(' '))).toEqual([
      'worked figures',
      'fitting sheet',
    ])
  })

  it('can be painted for every sample job that can be made', async () => {
    const context = opened({ makeCard })
    const { ask, refused } = context
    await addSample(context)
    const { rows } = await ask('jobs.list', { search: '', stage: null })
    const refusals: string[] = []
    for (const { id: jobId } of rows)
      refusals.push(...(await refused('papers.draft', { jobId, format: 'a4' })))
    expect(refusals.filter((problem) => !/^(stop|missing) /.test(problem))).toEqual([])
    expect(context.logged).toEqual([])
  })
})
