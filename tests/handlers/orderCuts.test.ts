import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import type { Order, OrderLength } from '../../shared/ordering/orderModel.ts'
import { mostLeft, readyToCut } from '../../shared/ordering/orderRules.ts'
import { idsOf, orderingBook, placed, placing, receivedWhole, type OrderingBook } from './anOrder.ts'

const cutOn = '2026-03-11'

const lengthWith = (order: Order, mark: string, from: OrderLength['from'] = 'merchant'): OrderLength => {
  const found = order.lengths.find(
    (length) => length.from === from && length.cuts.some((cut) => cut.mark.includes(mark)),
  )
  if (!found) throw new Error(`no length from the ${from} for ${mark}`)
  return found
}

const onRack = async ({ ask }: OrderingBook) =>
  (await ask('rack.list', {})).map(({ length, place, jobNumber, keptFor }) => [
    length,
    place,
    jobNumber,
    keptFor,
  ])

const putOnRack = ({ ask, items }: OrderingBook, length: number, count: number) =>
  ask('rack.add', {
    ...{ itemId: items['boards'] ?? 0, length, count, place: 'door', jobId: null, note: '' },
  })

describe('cutting lengths of an order', () => {
  it('needs them to have come, counted over every way of cutting one length', async () => {
    const book = await orderingBook(3)
    const { ask, refused } = book
    const order = await placed(book, book.jobs)
    const length = lengthWith(order, 'board')
    const line = order.lines.find((one) => one.itemId === length.itemId && one.length === length.length)
    const cut = { id: order.id, lengthId: length.id, count: 1, offcuts: [], cutOn }
    expect(await refused('orders.cut', cut)).toEqual(['refused count'])
    const came = { id: order.id, lines: [{ lineId: line?.id ?? 0, count: 2 }], receivedOn: '2026-03-06' }
    const some = await ask('orders.receive', came)
    const alike = some.lengths.filter((one) => one.length === length.length && one.itemId === length.itemId)
    expect(alike.length).toBeGreaterThan(1)
    expect(alike.map((one) => readyToCut(some, one))).toEqual(alike.map(({ count }) => Math.min(2, count)))
    await ask('orders.cut', cut)
    const [, other] = alike
    expect(await refused('orders.cut', { ...cut, lengthId: other?.id, count: 2 })).toEqual(['refused count'])
    const after = await ask('orders.cut', { ...cut, lengthId: other?.id ?? 0, count: 1 })
    expect(after.lengths.reduce((sum, { done }) => sum + done, 0)).toBe(2)
    expect(await refused('orders.cut', cut)).toEqual(['refused count'])
    expect(await refused('orders.cut', { ...cut, lengthId: 99 })).toEqual(['refused lengthId'])
  })

  it('puts the offcuts on the rack, with the place and the job they are left from', async () => {
    const book = await orderingBook(1)
    const { ask, refused } = book
    const order = await receivedWhole(book, await placed(book, book.jobs))
    const length = lengthWith(order, 'board')
    const left = mostLeft(length)
    // Two boards of 1823.5 from 4200: what the plan leaves, 525, and 28 that trim and saw may take.
    expect([length.length, length.offcut, left]).toEqual([4200, 525, 553])
    const cut = { id: order.id, lengthId: length.id, count: 2, cutOn }
    const places = (lengths: number[]) => lengths.map((one) => ({ length: one, place: ' long wall ' }))
    expect(await refused('orders.cut', { ...cut, offcuts: places([521, 553.1]) })).toEqual([
      'refused offcuts[1].length',
    ])
    expect(await refused('orders.cut', { ...cut, offcuts: places([500, 500, 107]) })).toEqual([
      'refused offcuts',
    ])
    expect(await onRack(book)).toEqual([])
    await ask('orders.cut', { ...cut, offcuts: places([521, 553]) })
    expect(await onRack(book)).toEqual([
      [553, 'long wall', '2026-001', null],
      [521, 'long wall', '2026-001', null],
    ])
    expect((await ask('rack.list', {}))[0]).toMatchObject({
      ...{ itemId: length.itemId, name: 'ex 25 × 125 T&G V', species: 'European redwood' },
      ...{ addedOn: cutOn, note: '', jobId: book.jobs[0]?.id },
    })
  })

  it('to the last makes the order cut', async () => {
    const book = await orderingBook(2)
    const order = await receivedWhole(book, await placed(book, book.jobs))
    expect(order.state).toBe('received')
    const states: string[] = []
    for (const { id, count } of order.lengths) {
      const cut = { id: order.id, lengthId: id, count, offcuts: [], cutOn }
      states.push((await book.ask('orders.cut', cut)).state)
    }
    expect(states).toEqual([...order.lengths.slice(1).map(() => 'received'), 'cut'])
  })
})

describe('the rack’s pieces in orders', () => {
  it('are set aside for the order that uses them, and never offered to another', async () => {
    const book = await orderingBook(3)
    const { ask } = book
    await putOnRack(book, 1900, 3)
    const [a, b, c] = book.jobs as [(typeof book.jobs)[0], (typeof book.jobs)[0], (typeof book.jobs)[0]]
    const both = await ask('orders.task', { jobIds: idsOf([b, c]) })
    expect(both.rack).toHaveLength(3)
    const early = await placing(book, [b])
    const order = await placed(book, [a])
    const length = lengthWith(order, 'board', 'rack')
    expect(length).toMatchObject({ count: 3, length: 1900, offcut: 72.5 })
    expect(length.rackPieceIds).toHaveLength(3)
    expect((await onRack(book)).map(([, , , keptFor]) => keptFor)).toEqual(Array(3).fill('2026-T01'))
    expect(await book.refused('orders.place', early)).toEqual(['changed-meanwhile stamp'])
    expect((await ask('orders.task', { jobIds: idsOf([b, c]) })).rack).toEqual([])
    await ask('orders.cancel', { id: order.id })
    expect((await ask('orders.task', { jobIds: idsOf([b, c]) })).rack).toHaveLength(3)
  })

  it('go when they are cut, and what is left of the new lengths is used by the next order', async () => {
    const book = await orderingBook(3)
    const { ask } = book
    const [a, b, c] = book.jobs as [(typeof book.jobs)[0], (typeof book.jobs)[0], (typeof book.jobs)[0]]
    await putOnRack(book, 1900, 2)
    const order = await receivedWhole(book, await placed(book, [a, b]))
    const fromRack = lengthWith(order, 'board', 'rack')
    const cut = { id: order.id, offcuts: [], cutOn }
    const half = await ask('orders.cut', { ...cut, lengthId: fromRack.id, count: 1 })
    expect(half.lengths.find(({ id }) => id === fromRack.id)).toMatchObject({ count: 2, done: 1 })
    expect(await onRack(book)).toEqual([[1900, 'door', null, '2026-T01']])
    await ask('orders.cut', { ...cut, lengthId: fromRack.id, count: 1 })
    expect(await onRack(book)).toEqual([])
    expect(await book.refused('orders.cut', { ...cut, lengthId: fromRack.id, count: 1 })).toEqual([
      'refused count',
    ])
    const ledges = lengthWith(order, 'ledge')
    await ask('orders.cut', {
      ...{ ...cut, lengthId: ledges.id, count: 1 },
      offcuts: [{ length: Math.min(930, mostLeft(ledges)), place: 'door' }],
    })
    const brace = lengthWith(order, 'brace')
    const place = 'on the beam'
    await ask('orders.cut', { ...cut, lengthId: brace.id, count: 1, offcuts: [{ length: 282, place }] })
    const task = await ask('orders.task', { jobIds: [c.id] })
    expect(task.rack.map(({ length }) => length)).toContain(282)
    expect(task.requests.plain.rack).toContainEqual({
      section: 'ex 32 × 100 planed, European redwood',
      length: 282,
      pence: 0,
    })
  })

  it('bring the cost of the next order down by the lengths they spare', async () => {
    const book = await orderingBook(1)
    const before = (await placing(book, book.jobs)).plan as { cost: number }
    await putOnRack(book, 3700, 2)
    const after = await placed(book, book.jobs)
    expect(after.cost).toBeLessThan(before.cost)
    // 9 boards: two of 3700 mm give four of them.
    expect(after.lengths.filter(({ from }) => from === 'rack')).toMatchObject([{ count: 2, length: 3700 }])
  })

  it('that were not found in a stock-take don’t keep the order from being cut', async () => {
    const book = await orderingBook(1)
    const { ask } = book
    const pieces = await putOnRack(book, 1900, 2)
    const order = await placed(book, book.jobs)
    const length = lengthWith(order, 'board', 'rack')
    await ask('rack.count', { seen: [], notFound: [pieces[0]?.id ?? 0] })
    const cut = { id: order.id, lengthId: length.id, count: 2, offcuts: [], cutOn }
    expect((await ask('orders.cut', cut)).lengths.find(({ id }) => id === length.id)?.done).toBe(2)
    expect(await onRack(book)).toEqual([])
  })

  it('stay where they were when cutting breaks off half-way', async () => {
    const book = await orderingBook(1)
    await putOnRack(book, 1900, 1)
    const order = await placed(book, book.jobs)
    const length = lengthWith(order, 'board', 'rack')
    const cut = {
      ...{ id: order.id, lengthId: length.id, count: 1, cutOn },
      offcuts: [{ length: 70, place: 'door' }],
    }
    const before = await onRack(book)
    const other = new Sqlite(book.book.path)
    other.exec(
      `CREATE TRIGGER trouble AFTER INSERT ON rack_pieces BEGIN SELECT RAISE (ABORT, 'trouble'); END`,
    )
    expect(await book.refused('orders.cut', cut)).toHaveLength(1)
    other.exec('DROP TRIGGER trouble')
    expect([await onRack(book), await book.ask('orders.open', { id: order.id })]).toEqual([before, order])
    expect(other.prepare('SELECT count(*) FROM order_cuts').pluck().get()).toBe(0)
    other.close()
    await book.ask('orders.cut', cut)
    expect(await onRack(book)).toEqual([[70, 'door', '2026-001', null]])
  })
})
