import { PDFDocument } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { makeCard } from '../../electron/makeCard.ts'
import type { PaperToPrint, Printed } from '../../electron/printing/printPaper.ts'
import { hashOf, makeShelf } from '../../electron/printing/shelf.ts'
import { opened as openedPdf, pixels } from '../papers/paperReading.ts'
import { makeableJob, opened } from './opened.ts'

const bytesOf = (base64: string): Uint8Array => new Uint8Array(Buffer.from(base64, 'base64'))
const read = (bytes: Uint8Array) => PDFDocument.load(bytes, { updateMetadata: false })

/** A draft card of a makeable gate, as a window holds it. */
async function draft(given: Parameters<typeof opened>[0] = { makeCard }) {
  const context = opened(given)
  const { id: jobId } = await makeableJob(context)
  const { base64 } = await context.ask('papers.draft', { jobId, format: 'a4' })
  const bytes = bytesOf(base64)
  return { context, jobId, bytes, base64, sha256: hashOf(bytes) }
}

describe('pages chosen of a paper', () => {
  it('are the very pages: the same dots, and all of them once is the paper itself byte for byte', async () => {
    const { context, bytes, base64, sha256 } = await draft()
    const whole = await context.ask('papers.part', { sha256, pages: [1, 2, 3], copies: 1 })
    expect(whole).toEqual({ base64, sha256 })
    const part = await context.ask('papers.part', { sha256, pages: [3, 1], copies: 1 })
    const partBytes = bytesOf(part.base64)
    expect(part.sha256).toBe(hashOf(partBytes))
    const [before, after] = await Promise.all([openedPdf(bytes), openedPdf(partBytes)])
    expect([before.numPages, after.numPages]).toEqual([3, 2])
    for (const [own, was] of [
      [1, 1],
      [2, 3],
    ] as const) {
      const [one, other] = [await pixels(after, own, 3), await pixels(before, was, 3)]
      expect(Buffer.compare(Buffer.from(one.data), Buffer.from(other.data))).toBe(0)
    }
  })

  it('come out the same each time, ask for true size and say how many copies to start with', async () => {
    const { context, sha256 } = await draft()
    const twice = await Promise.all(
      [1, 2].map(() => context.ask('papers.part', { sha256, pages: [2], copies: 4 })),
    )
    expect(twice[0]).toEqual(twice[1])
    const paper = await read(bytesOf(twice[0]?.base64 ?? ''))
    const wishes = paper.catalog.getViewerPreferences()
    expect([wishes?.getPrintScaling(), wishes?.getNumCopies()]).toEqual(['None', 4])
    expect(paper.getTitle()).toBe('2026-001 job card')
    expect(paper.getPage(0).getSize().height).toBeCloseTo(841.89, 2)
  })

  it('are refused where the paper has no such page, or isn’t at hand any more', async () => {
    const { context, sha256 } = await draft()
    expect(await context.refused('papers.part', { sha256, pages: [4], copies: 1 })).toEqual(['refused pages'])
    expect(await context.refused('papers.part', { sha256: 'ab'.repeat(32), pages: [1], copies: 1 })).toEqual([
      'not-found sha256',
    ])
    expect(await context.refused('papers.part', { sha256, pages: [1], copies: 100 })).toEqual([
      'refused copies',
    ])
    expect(await context.refused('papers.part', { sha256: '../x', pages: [0], copies: 0 })).toHaveLength(3)
  })
})

describe('printing from the program’s own window', () => {
  const printer = (ends: Printed) => {
    const taken: PaperToPrint[] = []
    return { taken, print: async (paper: PaperToPrint) => (taken.push(paper), ends) }
  }

  it('hands on the paper that is shown, its copies and its sheet', async () => {
    const { taken, print } = printer({ ended: 'printed' })
    const { context, jobId, sha256 } = await draft({ makeCard, print })
    expect(await context.ask('papers.print', { sha256, copies: 3 })).toEqual({ ended: 'printed' })
    expect(taken[0]).toMatchObject({ sha256, copies: 3 })
    expect(taken[0]?.width).toBeCloseTo(210, 2)
    expect(taken[0]?.height).toBeCloseTo(297, 2)
    const letter = bytesOf((await context.ask('papers.draft', { jobId, format: 'letter' })).base64)
    await context.ask('papers.print', { sha256: hashOf(letter), copies: 1 })
    expect(taken[1]?.width).toBeCloseTo(215.9, 2)
  })

  it('says what the printer said, and is refused where a browser prints', async () => {
    const failing = await draft({ print: printer({ ended: 'failed', said: 'no paper' }).print, makeCard })
    expect(await failing.context.refused('papers.print', { sha256: failing.sha256, copies: 1 })).toEqual([
      'refused',
    ])
    const plain = await draft()
    expect(await plain.context.refused('papers.print', { sha256: plain.sha256, copies: 1 })).toEqual([
      'refused',
    ])
  })
})

describe('the shelf of papers shown', () => {
  const paper = (letter: string) => new TextEncoder().encode(letter.repeat(10))

  it('lets the oldest go first, keeps what is put there again, and always holds the last', () => {
    const shelf = makeShelf({ bytes: 25, papers: 9 })
    const [a, b] = [shelf.put(paper('a')), shelf.put(paper('b'))]
    shelf.put(paper('a'))
    const c = shelf.put(paper('c'))
    expect([a, b, c].map(({ sha256 }) => shelf.find(sha256) !== undefined)).toEqual([true, false, true])
    const huge = shelf.put(new Uint8Array(100))
    expect(shelf.find(huge.sha256)).toBeDefined()
    expect(shelf.find(c.sha256)).toBeUndefined()
  })
})
