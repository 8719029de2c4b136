import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { orderingBook, placed, type OrderingBook } from './anOrder.ts'

const piece = ({ items }: OrderingBook, given = {}) => ({
  ...{
    itemId: items['ledges'] ?? 0,
    length: 1312.5,
    count: 1,
    place: ' by the door ',
    jobId: null,
    note: '',
  },
  ...given,
})

const movesIn = (path: string): unknown[] => {
  const db = new Sqlite(path, { readonly: true })
  const rows = db
    .prepare('SELECT what, length_mm, place, why, job_number, order_number FROM rack_moves ORDER BY id')
    .raw()
    .all()
  db.close()
  return rows
}

describe('the rack', () => {
  it('lists its pieces by section, the longest first, with the job they are left from', async () => {
    const book = await orderingBook(1)
    const { ask, items, jobs } = book
    await ask('rack.add', piece(book))
    await ask('rack.add', piece(book, { length: 1790, count: 2, jobId: jobs[0]?.id, note: ' one knot ' }))
    const list = await ask('rack.add', piece(book, { itemId: items['boards'], length: 655 }))
    expect(list.map(({ name, length, jobNumber, note }) => [name, length, jobNumber, note])).toEqual([
      ['ex 25 × 125 T&G V', 655, null, ''],
      ['ex 32 × 150 planed', 1790, '2026-001', 'one knot'],
      ['ex 32 × 150 planed', 1790, '2026-001', 'one knot'],
      ['ex 32 × 150 planed', 1312.5, null, ''],
    ])
    expect(list.at(-1)).toMatchObject({ place: 'by the door', addedOn: '2026-03-02', keptFor: null })
    expect(await ask('rack.list', {})).toEqual(list)
  })

  it('takes no pieces of what isn’t timber, nor from a job that is gone', async () => {
    const book = await orderingBook(1)
    expect(await book.refused('rack.add', piece(book, { itemId: book.items['hour'] }))).toEqual([
      'not-found itemId',
    ])
    expect(await book.refused('rack.add', piece(book, { jobId: 88 }))).toEqual(['not-found jobId'])
    expect(await book.refused('rack.add', piece(book, { length: 40 }))).toEqual(['refused length'])
  })

  it('keeps what became of each piece: in, moved, measured again, counted, out', async () => {
    const book = await orderingBook(1)
    const { ask } = book
    const [made] = await ask('rack.add', piece(book))
    const id = made?.id ?? 0
    await ask('rack.change', { id, length: 1310, place: 'long wall', note: 'planed' })
    await ask('rack.change', { id, length: 1310, place: 'long wall', note: 'planed twice' })
    await ask('rack.count', { seen: [{ id, place: 'long wall, foot' }], notFound: [] })
    expect((await ask('rack.list', {}))[0]).toMatchObject({
      ...{ length: 1310, place: 'long wall, foot', note: 'planed twice' },
    })
    expect(await ask('rack.take', { ids: [id, id], why: 'given away' })).toEqual([])
    expect(movesIn(book.book.path)).toEqual([
      ['in', 1312.5, 'by the door', '', null, null],
      ['measured', 1310, 'long wall', '1312.5 before', null, null],
      ['moved', 1310, 'long wall', 'by the door', null, null],
      ['counted', 1310, 'long wall, foot', '', null, null],
      ['out', 1310, 'long wall, foot', 'given away', null, null],
    ])
    expect(await book.refused('rack.take', { ids: [id], why: 'scrapped' })).toEqual(['not-found ids[0]'])
    expect(await book.refused('rack.change', { id, length: 900, place: '', note: '' })).toEqual([
      'not-found id',
    ])
  })

  it('is counted all or not at all', async () => {
    const book = await orderingBook(1)
    const { ask, refused } = book
    const list = await ask('rack.add', piece(book, { count: 3 }))
    const [a, b, c] = list.map(({ id }) => id) as [number, number, number]
    const seen = [{ id: a, place: 'beam' }]
    expect(await refused('rack.count', { seen, notFound: [b, 77] })).toEqual(['not-found notFound[1]'])
    expect(await refused('rack.count', { seen, notFound: [a, b] })).toEqual(['refused notFound'])
    expect(await ask('rack.list', {})).toEqual(list)
    const after = await ask('rack.count', { seen, notFound: [b] })
    expect(after.map(({ id, place }) => [id, place])).toEqual([
      [a, 'beam'],
      [c, 'by the door'],
    ])
    expect(movesIn(book.book.path).slice(3)).toEqual([
      ['counted', 1312.5, 'beam', '', null, null],
      ['out', 1312.5, 'by the door', 'not found', null, null],
    ])
  })

  it('holds on to what is kept for an order, all of a request or none of it, and says for which', async () => {
    const book = await orderingBook(1)
    const { ask, refused, items } = book
    await ask('rack.add', piece(book, { itemId: items['boards'], length: 1900 }))
    await ask('rack.add', piece(book, { itemId: items['boards'], length: 300 }))
    await placed(book, book.jobs)
    const [kept] = await ask('rack.list', {})
    expect(kept).toMatchObject({ length: 1900, keptFor: '2026-T01' })
    const id = kept?.id ?? 0

    const free = (await ask('rack.list', {})).find(({ keptFor }) => keptFor === null)?.id ?? 0
    expect(await refused('rack.take', { ids: [free, id], why: 'scrapped' })).toEqual(['kept ids[1]'])
    expect(await ask('rack.list', {})).toHaveLength(2)
    expect(await refused('rack.change', { id, length: 1850, place: 'beam', note: '' })).toEqual([
      'kept length',
    ])
    const moved = await ask('rack.change', { id, length: 1900, place: 'beam', note: '' })
    expect(moved.find((one) => one.id === id)?.place).toBe('beam')
  })

  it('says which job and order a piece was cut up for, and an offcut came from', async () => {
    const book = await orderingBook(1)
    await book.ask('rack.add', piece(book, { itemId: book.items['boards'], length: 1900 }))
    const order = await placed(book, book.jobs)
    const length = order.lengths.find(({ from }) => from === 'rack')
    await book.ask('orders.cut', {
      ...{ id: order.id, lengthId: length?.id ?? 0, count: 1, cutOn: '2026-03-12' },
      offcuts: [{ length: 74, place: 'kindling' }],
    })
    expect(movesIn(book.book.path).slice(1)).toEqual([
      ['out', 1900, 'by the door', 'cut up', '2026-001', '2026-T01'],
      ['in', 74, 'kindling', '', '2026-001', '2026-T01'],
    ])
  })
})
