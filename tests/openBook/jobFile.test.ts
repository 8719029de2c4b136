import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jobFileName } from '../../shared/openBook/jobFile.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { openedBook } from '../db/temporaryBook.ts'
import { fillPrices } from '../fixtures/prices.ts'
import { smallPhotograph } from '../fixtures/photograph.ts'
import { seed } from '../fixtures/sample.ts'
import { makeableJob, opened, type Opened } from '../handlers/opened.ts'
import { everyRow } from './everyRow.ts'
import { scriptWords } from './hostileWords.ts'
import { seededBook } from './seededBook.ts'

const elsewhere = (): Opened => opened({ book: openedBook() })

/** A job with an option, a card, notes and what it took. */
async function fullJob(context: Opened) {
  const { ask } = context
  const { items } = fillPrices(context.book)
  const { id } = await makeableJob(context)
  const { job } = await ask('jobs.change', { id, changes: [{ path: 'notes', value: 'Mind the dog.' }] })
  const boards = items['boards'] ?? 0
  const entry = {
    ...plainEntry,
    chosen: { 'timber.boards': boards, 'fixings.screw': items['screw 40'] ?? 0 },
  }
  await ask('options.add', { jobId: id, option: { name: 'As drawn', spec: null, entry } })
  const card = await ask('papers.issue', { jobId: id, format: 'a4', version: job.version })
  await ask('workDone.add', {
    ...{
      jobId: id,
      what: 'hours',
      group: 'making',
      operation: 'rip',
      quantity: 2.25,
      note: '',
      on: '2026-03-05',
    },
  })
  const note = { words: 'Ring before coming to the ferret shed.', on: '2026-03-04', at: '14:05' }
  await ask('notes.add', { jobId: id, ...note })
  await ask('photographs.add', { jobId: id, ...smallPhotograph, words: 'the leaning post' })
  return { job, card, boards }
}

type Written = Record<string, unknown> & {
  jobs: Record<string, unknown>[]
  papers: Record<string, unknown>[]
  pdfs: string[]
  customers: Record<string, unknown>[]
}
const changed = (text: string, change: (file: Written) => void): string => {
  const file = JSON.parse(text) as Written
  change(file)
  return JSON.stringify(file)
}

describe('one job taken out and brought into another book', () => {
  it('keeps its number where that is free, and is the same job with its card byte for byte', async () => {
    const from = opened()
    const { job, card } = await fullJob(from)
    const { name, text } = await from.ask('job.takeOut', { jobId: job.id, papers: true })
    expect(name).toBe('2026-001 Peg Sash.gate-job')
    expect(await from.ask('job.takeOut', { jobId: job.id, papers: true })).toEqual({ name, text })
    const to = elsewhere()
    fillPrices(to.book)
    expect(await to.ask('job.lookInto', { text })).toEqual({
      ...{ number: '2026-001', customer: 'Peg Sash', title: 'Side gate', papers: 1, taken: false },
      photographs: 1,
    })
    const brought = await to.ask('job.bringIn', { text })
    expect(brought).toMatchObject({ oldNumber: null, leftOut: [] })
    const { entry, notes, stage, due, unit, title, number, createdAt } = job
    expect(brought.job).toMatchObject({
      entry,
      notes,
      stage,
      due,
      unit,
      title,
      number,
      createdAt,
      sample: false,
    })
    const [paper] = await to.ask('papers.list', { jobId: brought.job.id })
    expect(paper).toMatchObject({ sha256: card.sha256, revision: 1, issuedAt: card.issuedAt })
    const [there, here] = await Promise.all([
      from.ask('papers.bytes', { id: card.id }),
      to.ask('papers.bytes', { id: paper?.id ?? 0 }),
    ])
    expect(here.base64).toBe(there.base64)
    expect(to.book.papers.frozen(paper?.id ?? 0)?.header).toEqual(from.book.papers.frozen(card.id)?.header)
    const [own, log] = [to.book.jobs.changes(brought.job.id), from.book.jobs.changes(job.id)]
    expect(own.slice(0, -1)).toEqual(log)
    expect(own.at(-1)).toMatchObject({ path: 'broughtIn', before: null, after: '2026-001' })
    expect(await to.ask('workDone.list', { jobId: brought.job.id })).toMatchObject([
      { quantity: 2.25, operation: 'rip' },
    ])
    expect((await to.ask('jobs.list', { search: 'peg dog', stage: null })).rows).toHaveLength(1)
    expect((await to.ask('jobs.list', { search: 'ferret leaning', stage: null })).rows).toHaveLength(1)
    const { notes: dated } = await to.ask('notes.list', { jobId: brought.job.id, all: true })
    expect(dated).toMatchObject([
      { words: 'Ring before coming to the ferret shed.', on: '2026-03-04', at: '14:05' },
    ])
    const [photograph] = await to.ask('photographs.list', { jobId: brought.job.id })
    expect(photograph).toMatchObject({ words: 'the leaning post', thumbnail: smallPhotograph.thumbnail })
    const picture = await to.ask('photographs.bytes', { id: photograph?.id ?? 0 })
    expect(picture.base64).toBe(smallPhotograph.base64)
  })

  it('gets the next free number where its own is taken, the old one in its notes and its log', async () => {
    const from = opened()
    const { job } = await fullJob(from)
    const { text } = await from.ask('job.takeOut', { jobId: job.id, papers: true })
    expect((await from.ask('job.lookInto', { text })).taken).toBe(true)
    const { job: again, oldNumber } = await from.ask('job.bringIn', { text })
    expect([again.number, oldNumber]).toEqual(['2026-002', '2026-001'])
    expect(again.notes).toBe('Was job 2026-001 in the book it came from.\nMind the dog.')
    expect(from.book.jobs.changes(again.id).at(-1)).toMatchObject({
      path: 'number',
      before: '2026-001',
      after: '2026-002',
    })
    expect(again.customer.id).toBe(job.customer.id)
    expect((await makeableJob(from)).number).toBe('2026-003')
  })

  it('finds the price lines its options name by kind and name, and says which aren’t there', async () => {
    const from = opened()
    const { job, boards } = await fullJob(from)
    const { text } = await from.ask('job.takeOut', { jobId: job.id, papers: false })
    const to = elsewhere()
    to.book.prices.addItem({ kind: 'work', name: 'first of another kind', facts: { rate: 'visit' } })
    const { items } = fillPrices(to.book)
    const brought = await to.ask('job.bringIn', { text })
    const [option] = await to.ask('options.list', { jobId: brought.job.id })
    expect(option?.entry.chosen).toEqual({
      'timber.boards': items['boards'],
      'fixings.screw': items['screw 40'],
    })
    expect(items['boards']).not.toBe(boards)
    const bare = await elsewhere().ask('job.bringIn', { text })
    expect(bare.leftOut).toEqual(['ex 25 × 125 T&G V', 'screw 40'])
  })

  it('leaves quotations in their own book, and cards where they aren’t asked for', async () => {
    const from = await seededBook(seed)
    const [quoted] = from.jobs
    const jobId = quoted?.id ?? 0
    expect((await from.ask('papers.list', { jobId })).map(({ kind }) => kind)).toContain('quotation')
    const { text } = await from.ask('job.takeOut', { jobId, papers: true })
    expect(text).not.toContain('"quotation"')
    expect((await elsewhere().ask('job.bringIn', { text })).job.number).toBe('2026-001')
    const full = await fullJob(opened())
    expect(full.card.revision).toBe(1)
  })

  it('of the sample becomes a job of the book’s own', async () => {
    const from = opened()
    const { job } = await fullJob(from)
    const { text } = await from.ask('job.takeOut', { jobId: job.id, papers: false })
    const sample = changed(text, ({ jobs }) =>
      Object.assign(jobs[0] ?? {}, { number: 'S-004', sample: true }),
    )
    const brought = await elsewhere().ask('job.bringIn', { text: sample })
    expect(brought.job).toMatchObject({ number: '2026-001', sample: false })
    expect(brought.oldNumber).toBe('S-004')
  })

  it('carries any words as they are', async () => {
    const from = opened()
    const { id } = await makeableJob(from)
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 60 }), async (words) => {
        await from.ask('jobs.change', { id, changes: [{ path: 'notes', value: words }] })
        const { text } = await from.ask('job.takeOut', { jobId: id, papers: false })
        const { job, oldNumber } = await from.ask('job.bringIn', { text })
        const stands = (await from.ask('jobs.open', { id })).notes
        expect(job.notes).toBe(
          `Was job ${oldNumber} in the book it came from.${stands === '' ? '' : `\n${stands}`}`,
        )
      }),
      { numRuns: 25, seed },
    )
  })
})

describe('a job’s file that is wrong', () => {
  const wrongs: [string, (text: string) => string, string[]][] = [
    ['cut short', (text) => text.slice(0, 500), ['refused']],
    ['a picture', () => '\u0089PNG', ['refused']],
    ['of another program', () => '{"format":"x"}', ['refused format']],
    ['from a newer program', (text) => changed(text, (file) => (file['layout'] = 999)), ['newer layout']],
    ['100,000 lists deep', () => `${'['.repeat(100_000)}${']'.repeat(100_000)}`, ['refused']],
    [
      'with a name past an object’s own',
      (text) => text.replace('"format"', '"__proto__": {"x": 1}, "format"'),
      ['refused __proto__'],
    ],
    [
      'with such a name deep within',
      (text) => text.replace('"typed": {', '"typed": {"constructor": "1",'),
      ['refused jobs[0].entry.typed.constructor'],
    ],
    [
      'with a number past any',
      (text) => text.replace(/"endTrim": [\d.]+/, '"endTrim": 1e999'),
      ['refused jobs[0].entry.spec.boards.endTrim'],
    ],
    [
      'with 1e308 for a length',
      (text) => text.replace(/"endTrim": [\d.]+/, '"endTrim": 1e308'),
      ['refused jobs[0].entry.spec.boards.endTrim'],
    ],
    [
      'with U+0000 in a title',
      (text) => changed(text, ({ jobs }) => Object.assign(jobs[0] ?? {}, { title: 'Side\0gate' })),
      ['refused jobs[0].title'],
    ],
    [
      'with a stage that is none',
      (text) => changed(text, ({ jobs }) => Object.assign(jobs[0] ?? {}, { stage: 'lost' })),
      ['refused jobs[0].stage'],
    ],
    ['with two jobs', (text) => changed(text, (file) => file.jobs.push({})), ['refused jobs']],
    [
      'of a job of someone else',
      (text) => changed(text, ({ jobs }) => Object.assign(jobs[0] ?? {}, { customerId: 77 })),
      ['refused jobs[0].customerId'],
    ],
    [
      'with a paper whose bytes were changed',
      (text) => changed(text, ({ pdfs }) => (pdfs[0] = Buffer.from('%PDF-other').toString('base64'))),
      ['refused pdfs[0]'],
    ],
    ['with a paper’s bytes missing', (text) => changed(text, (file) => (file.pdfs = [])), ['refused pdfs']],
    [
      'with a column that nobody knows',
      (text) => changed(text, ({ customers }) => Object.assign(customers[0] ?? {}, { password: 'x' })),
      ['unknown-key customers[0].password'],
    ],
    [
      'with a name of a million signs',
      (text) =>
        changed(text, ({ customers }) => Object.assign(customers[0] ?? {}, { name: 'x'.repeat(1_000_000) })),
      ['refused customers[0].name'],
    ],
  ]

  it(`is refused with the field named, and the book stays as it is: ${wrongs.map(([title]) => title).join('; ')}`, async () => {
    const from = opened()
    const { job } = await fullJob(from)
    const { text } = await from.ask('job.takeOut', { jobId: job.id, papers: true })
    const before = everyRow(from.book.path)
    for (const [title, spoil, said] of wrongs) {
      const spoilt = spoil(text)
      expect(spoilt, title).not.toBe(text)
      expect(await from.refused('job.lookInto', { text: spoilt }), title).toEqual(said)
      expect(await from.refused('job.bringIn', { text: spoilt }), title).toEqual(said)
      expect(everyRow(from.book.path), title).toEqual(before)
    }
    expect(from.logged).toEqual([])
  })

  it('says what came and what is accepted', async () => {
    const from = opened()
    const { job } = await fullJob(from)
    const { text } = await from.ask('job.takeOut', { jobId: job.id, papers: false })
    const stage = changed(text, ({ jobs }) => Object.assign(jobs[0] ?? {}, { stage: 'lost' }))
    const { answer } = await import('../../electron/handlers/answer.ts')
    const result = await answer(from, 'job.lookInto', { text: stage })
    expect(result).toMatchObject({
      problems: [
        { message: expect.stringMatching(/^got 'lost', accepted is one of enquiry, surveyed/) as string },
      ],
    })
  })
})

describe('words that might run', () => {
  it(`stay words in a job’s file and in the book it comes to: ${scriptWords.length} of them`, async () => {
    const [from, to] = [opened(), elsewhere()]
    for (const words of scriptWords) {
      const { id } = await from.ask('jobs.create', {
        ...{ customerName: words, town: words, phone: words, title: words, due: null },
      })
      await from.ask('jobs.change', { id, changes: [{ path: 'notes', value: words }] })
      const { customer, title, notes } = await from.ask('jobs.open', { id })
      const { name, text } = await from.ask('job.takeOut', { jobId: id, papers: false })
      expect(name).toMatch(/^2026-\d{3}[^<>:"/\\|?*\u202a-\u202e\u2028]*\.gate-job$/u)
      const { job } = await to.ask('job.bringIn', { text })
      expect(job).toMatchObject({ title, notes, customer: { ...customer, id: job.customer.id } })
    }
  })

  it('give a file of the customer’s name where it is a plain one', () => {
    expect(jobFileName('2026-014', 'Isolde Hartwhistle')).toBe('2026-014 Isolde Hartwhistle.gate-job')
    expect(createHash('sha256').update(jobFileName('2026-014', '../../x')).digest('hex')).toHaveLength(64)
  })
})
