import { describe, expect, it } from 'vitest'
import type { Stage } from '../../shared/job/job.ts'
import type { Book } from '../../db/open.ts'
import { newJob, openedBook, valueOf } from './temporaryBook.ts'

const today = '2026-03-04'

function jobAt(book: Book, stage: Stage, due: string | null, title = stage): number {
  const { id } = book.jobs.create(newJob({ due, title }))
  if (stage !== 'enquiry') valueOf(book.jobs.change(id, [{ path: 'stage', value: stage }]))
  return id
}

describe('the board of the work in hand', () => {
  it('has a column for each stage but hung: promised ones first by their day, then the newest, and says how many are late', () => {
    const book = openedBook()
    const [old, soon, late, fresh] = [
      jobAt(book, 'designed', null),
      jobAt(book, 'designed', '2026-03-06'),
      jobAt(book, 'designed', '2026-03-01'),
      jobAt(book, 'designed', null),
    ]
    jobAt(book, 'hung', '2026-03-01')
    const { columns, inHand, empty } = book.board.read('stage', today)
    expect(columns.map(({ of }) => of)).toEqual([
      'enquiry',
      'surveyed',
      'designed',
      'quoted',
      'ordered',
      'making',
    ])
    expect(columns[2]).toMatchObject({ count: 4, late: 1 })
    expect(columns[2]?.cards.map(({ id }) => id)).toEqual([late, soon, fresh, old])
    expect([inHand, empty]).toEqual([4, false])
  })

  it('has a column for each span of days, and the same counts either way', () => {
    const book = openedBook()
    const dues = ['2026-03-03', '2026-03-04', '2026-03-08', '2026-03-09', '2026-03-16', '2026-05-31', null]
    const ids = dues.map((due) => jobAt(book, 'making', due))
    const { columns, spans } = book.board.read('day', today)
    expect(spans).toEqual({ late: 1, 'this week': 2, 'next week': 1, later: 2, 'no day': 1 })
    expect(columns.map(({ of, cards }) => [of, cards.map(({ id }) => ids.indexOf(id))])).toEqual([
      ['late', [0]],
      ['this week', [1, 2]],
      ['next week', [3]],
      ['later', [4, 5]],
      ['no day', [6]],
    ])
    expect(book.board.read('stage', today).spans).toEqual(spans)
  })

  it('holds 200 cards a column at most and counts the rest', () => {
    const book = openedBook()
    book.together(() => {
      for (let n = 0; n < 207; n += 1) book.jobs.create(newJob({ due: n % 2 ? null : '2026-04-01' }))
    })
    const [column] = book.board.read('stage', today).columns
    expect([column?.count, column?.cards.length]).toEqual([207, 200])
    expect(column?.cards.filter(({ due }) => due === null)).toHaveLength(96)
  })

  it('is empty before the first job', () => {
    expect(openedBook().board.read('day', today)).toMatchObject({ empty: true, inHand: 0 })
  })
})
