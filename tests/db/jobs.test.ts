import fc from 'fast-check'
import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { bookPath, newJob, openedBook, tickingClock, valueOf } from './temporaryBook.ts'

describe('job numbers', () => {
  it('run through the year of creation without a gap and begin anew with the next', () => {
    const book = openedBook()
    const at = (day: string) => book.jobs.create(newJob({ at: `${day}T10:00:00.000Z` })).number
    expect([
      at('2026-01-02'),
      at('2026-12-31'),
      at('2027-01-01'),
      at('2026-12-31'),
      at('2027-02-03'),
    ]).toEqual(['2026-001', '2026-002', '2027-001', '2026-003', '2027-002'])
  })

  it('go on past 999 in their order', () => {
    const path = bookPath()
    const book = openedBook(path)
    book.jobs.create(newJob())
    const db = new Sqlite(path)
    db.exec("UPDATE jobs SET number = '2026-999'")
    db.close()
    expect([book.jobs.create(newJob()).number, book.jobs.create(newJob()).number]).toEqual([
      '2026-1000',
      '2026-1001',
    ])
  })

  it('leave no gap where making a job fails', () => {
    const book = openedBook()
    const failing = () =>
      book.together(() => {
        book.jobs.create(newJob())
        throw new Error('the power went')
      })
    expect(failing).toThrow('the power went')
    expect(book.jobs.create(newJob()).number).toBe('2026-001')
  })

  it('of samples run apart, so that removing them leaves no gap', () => {
    const book = openedBook()
    const numbers = [true, false, true, false].map((sample) => book.jobs.create(newJob({ sample })).number)
    expect(numbers).toEqual(['S-001', '2026-001', 'S-002', '2026-002'])
  })
})

describe('changing a job', () => {
  it('raises the version with each call and logs every field, what stood before and after', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    valueOf(book.jobs.change(id, [{ path: 'spec.size.width', value: 915, typed: '915' }]))
    const { job } = valueOf(
      book.jobs.change(id, [
        { path: 'spec.size.width', value: 1016, typed: '40"' },
        { path: 'customer.phone', value: '01632 960002' },
      ]),
    )
    expect(job).toMatchObject({
      version: 3,
      customer: { phone: '01632 960002' },
      entry: { spec: { size: { width: 1016 } } },
    })
    expect(book.jobs.changes(id).map(({ path, before, after }) => [path, before, after])).toEqual([
      ['spec.size.width', null, 915],
      ['typed.size.width', null, '915'],
      ['spec.size.width', 915, 1016],
      ['customer.phone', '01632 960001', '01632 960002'],
      ['typed.size.width', '915', '40"'],
    ])
  })

  it('writes nothing when one of the changes is refused', () => {
    const book = openedBook()
    const before = book.jobs.create(newJob())
    const refused = book.jobs.change(before.id, [
      { path: 'title', value: 'Another' },
      { path: 'spec.size.width', value: -3 },
    ])
    expect(refused).toMatchObject({ ok: false, problems: [{ field: 'spec.size.width' }] })
    expect(book.jobs.open(before.id)).toEqual(before)
    expect(book.jobs.changes(before.id)).toEqual([])
  })

  it('of a customer shows on all their jobs, and makes windows on those read again', () => {
    const book = openedBook()
    const first = book.jobs.create(newJob())
    const second = book.jobs.create(newJob({ title: 'Back gate' }))
    const stranger = book.jobs.create(newJob({ customer: { ...newJob().customer, phone: '01632 960009' } }))
    expect(second.customer.id).toBe(first.customer.id)
    valueOf(book.jobs.change(first.id, [{ path: 'customer.name', value: 'Peg Mullion' }]))
    expect(
      [first, second, stranger]
        .map(({ id }) => book.jobs.open(id))
        .map((job) => [job?.customer.name, job?.version]),
    ).toEqual([
      ['Peg Mullion', 2],
      ['Peg Mullion', 2],
      ['Peg Sash', 1],
    ])
    expect(
      book.jobs
        .list('mullion', null)
        .rows.map((row) => row.id)
        .sort(),
    ).toEqual([first.id, second.id])
  })

  it('of a job that isn’t there answers nothing', () => {
    expect(openedBook().jobs.change(77, [{ path: 'title', value: 'x' }])).toBeUndefined()
  })

  it('loses nothing whatever is typed in whatever order (200 seeded runs)', () => {
    const book = openedBook()
    const edit = fc.record({
      path: fc.constantFrom(
        'title',
        'notes',
        'spec.size.width',
        'spec.size.height',
        'spec.boards.gap',
        'customer.town',
      ),
      words: fc.string({ maxLength: 30 }),
      mm: fc.double({ min: 0.5, max: 40, noNaN: true }),
    })
    const run = (edits: { path: string; words: string; mm: number }[]) => {
      const { id } = book.jobs.create(newJob())
      const values = edits.map(({ path, words, mm }) => ({
        path,
        value: path.startsWith('spec.') ? mm : words,
      }))
      for (const change of values) valueOf(book.jobs.change(id, [change]))
      const job = book.jobs.open(id)
      const logged = book.jobs.changes(id)
      for (const { path } of values) {
        const last = values.filter((change) => change.path === path).at(-1)?.value
        const steps = logged.filter((line) => line.path === path)
        if (steps.length > 0) expect(steps.at(-1)?.after).toEqual(last)
        steps.slice(1).forEach((step, index) => expect(step.before).toEqual(steps[index]?.after))
      }
      expect(job?.version).toBe(values.length + 1)
    }
    fc.assert(fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), run), {
      seed: 20260302,
      numRuns: 200,
    })
  })
})

describe('two windows on one job', () => {
  it('changing different fields lose nothing, also from two connections', () => {
    const path = bookPath()
    const [left, right] = [openedBook(path), openedBook(path)]
    const { id } = left.jobs.create(newJob())
    const one = valueOf(left.jobs.change(id, [{ path: 'spec.size.width', value: 915, was: null }]))
    const other = valueOf(right.jobs.change(id, [{ path: 'spec.size.height', value: 1800, was: null }]))
    expect([one.overlaps, other.overlaps]).toEqual([[], []])
    expect(left.jobs.open(id)?.entry.spec.size).toEqual({ from: 'leaf', width: 915, height: 1800 })
    expect(left.jobs.open(id)).toEqual(right.jobs.open(id))
  })

  it('changing one field are told, the later stands, the earlier stays in the log', () => {
    const path = bookPath()
    const [left, right] = [openedBook(path), openedBook(path)]
    const { id } = left.jobs.create(newJob())
    valueOf(left.jobs.change(id, [{ path: 'notes', value: 'oak, please', was: '' }]))
    const later = valueOf(right.jobs.change(id, [{ path: 'notes', value: 'larch, please', was: '' }]))
    expect(later.overlaps).toEqual([{ path: 'notes', theirs: 'oak, please', mine: 'larch, please' }])
    expect(later.job.notes).toBe('larch, please')
    expect(right.jobs.changes(id).map(({ before, after }) => [before, after])).toEqual([
      ['', 'oak, please'],
      ['oak, please', 'larch, please'],
    ])
  })

  it('making jobs turn about never share or skip a number', () => {
    const path = bookPath()
    const books = [openedBook(path), openedBook(path)]
    const numbers = Array.from({ length: 20 }, (_, turn) => books[turn % 2]?.jobs.create(newJob()).number)
    expect(numbers).toEqual(
      Array.from({ length: 20 }, (_, turn) => `2026-${String(turn + 1).padStart(3, '0')}`),
    )
  })
})

describe('making the same again', () => {
  it('takes customer, title, unit and gate with the words typed, as a new enquiry without a date', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob({ due: '2026-04-01', unit: 'in' }))
    valueOf(
      book.jobs.change(id, [
        { path: 'spec.size.width', value: 930.275, typed: '36 5/8"' },
        { path: 'stage', value: 'hung' },
        { path: 'notes', value: 'rang twice' },
      ]),
    )
    const first = book.jobs.open(id)
    const again = book.jobs.repeat(id)
    expect(again).toMatchObject({
      number: '2026-002',
      stage: 'enquiry',
      due: null,
      version: 1,
      unit: 'in',
      title: 'Side gate',
      notes: '',
      sample: false,
      customer: first?.customer,
      entry: first?.entry,
    })
    expect(book.jobs.repeat(999)).toBeUndefined()
  })
})

describe('the list', () => {
  it('shows the newest job first, with the leaf’s sizes, and keeps to a stage', () => {
    const book = openedBook(bookPath(), { now: tickingClock() })
    const [first, second] = [
      book.jobs.create(newJob({ title: 'first' })),
      book.jobs.create(newJob({ title: 'second' })),
    ]
    valueOf(
      book.jobs.change(first.id, [
        { path: 'stage', value: 'making' },
        { path: 'spec.size.width', value: 915 },
      ]),
    )
    expect(book.jobs.list('', null).rows.map((row) => [row.title, row.width, row.height, row.stage])).toEqual(
      [
        ['second', null, null, 'enquiry'],
        ['first', 915, null, 'making'],
      ],
    )
    expect(book.jobs.list('', 'making').rows.map((row) => row.id)).toEqual([first.id])
    expect(book.jobs.list('gate', 'making').rows).toEqual([])
    expect(book.jobs.list('second', 'enquiry').rows.map((row) => row.id)).toEqual([second.id])
    expect(book.jobs.count()).toEqual({ jobs: 2, sampleJobs: 0 })
  })
})

describe('the guards of the book', () => {
  it('let no job and no change leave or be altered, whoever writes', () => {
    const path = bookPath()
    const book = openedBook(path)
    const { id } = book.jobs.create(newJob())
    valueOf(book.jobs.change(id, [{ path: 'title', value: 'Another' }]))
    const db = new Sqlite(path)
    const refused: [string, string][] = [
      ['DELETE FROM jobs', 'never leaves the book'],
      ['UPDATE jobs SET sample = 1', 'from the first or never'],
      ['DELETE FROM changes', 'never leaves the book'],
      [`UPDATE changes SET after = '0'`, 'never altered'],
      [`UPDATE jobs SET entry = 'no gate'`, 'malformed JSON'],
      [`UPDATE jobs SET stage = 'sold'`, 'CHECK constraint'],
      [`UPDATE jobs SET number = 5.5, version = 'two'`, 'cannot store TEXT value in INTEGER'],
    ]
    for (const [sql, message] of refused) expect(() => db.exec(sql), sql).toThrow(message)
    db.close()
    expect(book.jobs.changes(id)).toHaveLength(1)
  })
})
