import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import {
  idsOf,
  orderingBook,
  placed,
  placing,
  raiseBoards,
  receivedWhole,
  type OrderingBook,
} from './anOrder.ts'
import { makeableJob, opened } from './opened.ts'

const stageOf = async ({ ask }: OrderingBook, id: number) => (await ask('jobs.open', { id })).stage

/** All that an order could leave behind. */
const rowsOf = (path: string): number[] => {
  const db = new Sqlite(path, { readonly: true })
  const tables = ['orders', 'order_jobs', 'order_lines', 'order_lengths', 'order_rack']
  const counts = tables.map((table) => Number(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get()))
  db.close()
  return counts
}

describe('placing an order', () => {
  it('keeps the plan as it came, asks the yard for its lengths, and moves the jobs on, said in their log', async () => {
    const book = await orderingBook(3)
    const { ask, jobs, supplier } = book
    await ask('jobs.change', { id: jobs[2]?.id ?? 0, changes: [{ path: 'stage', value: 'making' }] })
    const sent = await placing(book, jobs)
    const order = await ask('orders.place', sent)
    expect(order).toMatchObject({
      number: '2026-T01',
      placedOn: '2026-03-02',
      state: 'placed',
      sample: false,
    })
    expect(order).toMatchObject({ note: 'ring before they come', suppliers: ['Alder Yard'] })
    expect(order.jobs.map(({ number }) => number)).toEqual(['2026-001', '2026-002', '2026-003'])
    expect(order.plan).toEqual(sent.plan)
    expect(checkPlan(order.request, order.plan).faults).toEqual([])
    expect(order.pairs).toHaveLength(3)
    expect(order.lines.reduce((sum, { count, pence }) => sum + count * pence, 0)).toBe(order.cost)
    expect(order.lines.every((line) => line.supplierId === supplier && line.received === 0)).toBe(true)
    const metres = order.lengths.reduce((sum, { length, count }) => sum + length * count, 0)
    expect(metres).toBe(order.lines.reduce((sum, { length, count }) => sum + length * count, 0))
    expect(await Promise.all(jobs.map(({ id }) => stageOf(book, id)))).toEqual([
      'ordered',
      'ordered',
      'making',
    ])
    expect(book.book.jobs.changes(jobs[0]?.id ?? 0).at(-1)).toMatchObject({
      path: 'stage',
      before: 'enquiry',
      after: 'ordered',
    })
    expect(await ask('orders.open', { id: order.id })).toEqual(order)
    const {
      note: _note,
      plan: _plan,
      request: _request,
      pairs: _pairs,
      lines: _lines,
      lengths: _l,
      ...row
    } = order
    expect(await ask('orders.list', {})).toEqual([row])
  })

  it('stands as it was when the price list, the merchant and the settings have changed since', async () => {
    const book = await orderingBook()
    const { ask, supplier } = book
    const order = await placed(book, book.jobs)
    raiseBoards(book)
    await ask('settings.change', { cutting: { kerf: 2.5, endTrim: 15, leastOffcut: 300 } })
    expect(await ask('orders.open', { id: order.id })).toEqual(order)
    await ask('prices.changeSupplier', {
      id: supplier,
      supplier: { name: 'Alder & Son', phone: '', notes: '' },
    })
    expect((await ask('orders.open', { id: order.id })).suppliers).toEqual(['Alder & Son'])
  })

  it('without braces in pairs has none', async () => {
    const book = await orderingBook()
    expect((await placed(book, book.jobs, false)).pairs).toEqual([])
  })

  it('is refused when the book moved meanwhile: a price, the rack, a gate, the saw', async () => {
    const moves: ((book: OrderingBook) => unknown)[] = [
      raiseBoards,
      ({ ask, items }) =>
        ask('rack.add', {
          ...{ itemId: items['ledges'] ?? 0, length: 1400, count: 1, place: 'door', jobId: null, note: '' },
        }),
      ({ ask, jobs }) =>
        ask('jobs.change', { id: jobs[1]?.id ?? 0, changes: [{ path: 'spec.size.height', value: 1790 }] }),
      ({ ask }) => ask('settings.change', { cutting: { kerf: 3, endTrim: 20, leastOffcut: 450 } }),
    ]
    for (const move of moves) {
      const book = await orderingBook()
      const sent = await placing(book, book.jobs)
      await move(book)
      expect(await book.refused('orders.place', sent)).toEqual(['changed-meanwhile stamp'])
      expect(rowsOf(book.book.path)).toEqual([0, 0, 0, 0, 0])
      expect(await stageOf(book, book.jobs[0]?.id ?? 0)).toBe('enquiry')
    }
  })

  it('is refused for a plan that doesn’t hold, and nothing is written', async () => {
    const book = await orderingBook()
    const sent = await placing(book, book.jobs)
    const plan = sent.plan as BuyingPlan
    const tampered = (change: (plan: BuyingPlan) => unknown): BuyingPlan => {
      const copy = structuredClone(plan)
      change(copy)
      return copy
    }
    const first = (copy: BuyingPlan) => copy.lengths[0] as BuyingPlan['lengths'][0]
    const unsound: [string, BuyingPlan][] = [
      ['cheaper than it is', tampered((copy) => void (copy.cost -= 100))],
      ['a cut too long', tampered((copy) => void ((first(copy).cuts[0] ?? { length: 0 }).length += 900))],
      ['a part missing', tampered((copy) => void first(copy).cuts.pop())],
      ['a length missing', tampered((copy) => void copy.lengths.shift())],
      ['one more than needed', tampered((copy) => void (first(copy).count += 1))],
      ['a price of its own', tampered((copy) => void (first(copy).pence -= 1))],
      ['a length nobody sells', tampered((copy) => void (first(copy).stock += 10))],
      ['from the rack that is bare', tampered((copy) => void (first(copy).from = 'rack'))],
      [
        'a bound that isn’t shown',
        tampered(({ certificate: [one] }) => one && (one.proof = [{ duals: [] }])),
      ],
    ]
    for (const [what, wrong] of unsound) {
      const problems = await book.refused('orders.place', { ...sent, plan: wrong })
      expect([what, new Set(problems)]).toEqual([what, new Set(['unsound plan'])])
    }
    const nonsense = tampered((copy) => {
      const [certificate] = copy.certificate
      if (certificate) certificate.offers = [[]]
    })
    expect(await book.refused('orders.place', { ...sent, plan: nonsense })).toContain('unsound plan')
    const malformed = [null, {}, { ...plan, lengths: 7 }, { ...plan, extra: 1 }, 'a plan']
    for (const wrong of malformed) {
      const problems = await book.refused('orders.place', { ...sent, plan: wrong })
      expect(problems.length).toBeGreaterThan(0)
      expect(problems.every((problem) => problem.includes(' plan.'))).toBe(true)
    }
    expect(rowsOf(book.book.path)).toEqual([0, 0, 0, 0, 0])
    expect(book.logged).toEqual([])
    await book.ask('orders.place', sent)
  })

  it('is refused for a plan of the other request, or one job more or less', async () => {
    const book = await orderingBook()
    const sent = await placing(book, book.jobs)
    expect(await book.refused('orders.place', { ...sent, paired: false })).toContain('unsound plan')
    expect(await book.refused('orders.place', { ...sent, jobIds: sent.jobIds.slice(1) })).toEqual([
      'changed-meanwhile stamp',
    ])
  })

  it('is refused for a job on another order, until that is cancelled', async () => {
    const book = await orderingBook(3)
    const [a, b, c] = book.jobs as [(typeof book.jobs)[0], (typeof book.jobs)[0], (typeof book.jobs)[0]]
    const first = await placed(book, [a, b])
    const sent = await placing(book, [b, c])
    expect(await book.refused('orders.place', sent)).toEqual(['ordered-before jobIds'])
    expect(await stageOf(book, c.id)).toBe('enquiry')
    await book.ask('orders.cancel', { id: first.id })
    expect((await book.ask('orders.place', sent)).number).toBe('2026-T02')
  })

  it('that breaks off half-way leaves nothing', async () => {
    const book = await orderingBook(2)
    await book.ask('rack.add', {
      ...{ itemId: book.items['boards'] ?? 0, length: 1900, count: 2, place: 'door', jobId: null, note: '' },
    })
    const sent = await placing(book, book.jobs)
    const other = new Sqlite(book.book.path)
    for (const table of ['order_lengths', 'order_rack', 'order_lines']) {
      other.exec(`CREATE TRIGGER trouble AFTER INSERT ON ${table} BEGIN SELECT RAISE (ABORT, 'trouble'); END`)
      expect((await book.refused('orders.place', sent)).length).toBe(1)
      other.exec('DROP TRIGGER trouble')
      expect(rowsOf(book.book.path)).toEqual([0, 0, 0, 0, 0])
      expect(await stageOf(book, book.jobs[0]?.id ?? 0)).toBe('enquiry')
      expect(book.book.jobs.changes(book.jobs[0]?.id ?? 0).filter(({ path }) => path === 'stage')).toEqual([])
    }
    other.close()
    expect((await book.ask('orders.place', sent)).number).toBe('2026-T01')
  })

  it('takes no jobs of the sample together with the workshop’s own', async () => {
    const book = await orderingBook(1)
    const sample = book.book.jobs.create({
      customer: { name: 'Ann Muntin', address: '', town: '', phone: '', email: '' },
      ...{ title: 'Side gate', due: null, unit: 'mm', sample: true },
      spec: (await makeableJob(book)).entry.spec,
    })
    const sent = await placing(book, [...book.jobs, sample])
    expect(await book.refused('orders.place', sent)).toEqual(['refused jobIds'])
    expect((await placed(book, [sample])).number).toBe('S-T01')
    expect((await placed(book, book.jobs)).number).toBe('2026-T01')
  })
})

describe('an order’s numbers', () => {
  it('begin anew with each year', async () => {
    const looks = { year: 2026 }
    const context = opened({ now: () => `${looks.year}-06-01T09:00:00.000Z` })
    const book = await orderingBook(3, context)
    const [a, b, c] = book.jobs as [(typeof book.jobs)[0], (typeof book.jobs)[0], (typeof book.jobs)[0]]
    const numbers = [(await placed(book, [a])).number, (await placed(book, [b])).number]
    looks.year = 2027
    expect([...numbers, (await placed(book, [c])).number]).toEqual(['2026-T01', '2026-T02', '2027-T01'])
  })
})

describe('booking in what came', () => {
  it('counts up to what was asked for, and the order is received once all came', async () => {
    const book = await orderingBook()
    const { ask, refused } = book
    const order = await placed(book, book.jobs)
    const [line, ...others] = order.lines as [(typeof order.lines)[0], ...typeof order.lines]
    const some = { id: order.id, receivedOn: '2026-03-06' }
    const after = await ask('orders.receive', { ...some, lines: [{ lineId: line.id, count: 2 }] })
    expect([after.state, after.lines[0]?.received]).toEqual(['placed', 2])
    const tooMany = [
      { lineId: others[0]?.id ?? 0, count: 1 },
      { lineId: line.id, count: line.count - 2 },
      { lineId: line.id, count: 1 },
    ]
    expect(await refused('orders.receive', { ...some, lines: tooMany })).toEqual(['refused lines[2].count'])
    expect(await ask('orders.open', { id: order.id })).toEqual(after)
    const rest = [{ lineId: line.id, count: line.count - 2 }]
    for (const { id, count } of others) rest.push({ lineId: id, count })
    expect((await ask('orders.receive', { ...some, lines: rest })).state).toBe('received')
    expect(await refused('orders.receive', { ...some, lines: [{ lineId: line.id, count: 1 }] })).toEqual([
      'refused lines[0].count',
    ])
    expect(await refused('orders.receive', { ...some, lines: [{ lineId: 999, count: 1 }] })).toEqual([
      'refused lines[0].lineId',
    ])
  })
})

describe('cancelling an order', () => {
  it('puts jobs back where they stood, unless they went on meanwhile, and frees the rack', async () => {
    const book = await orderingBook(3)
    const { ask, items, jobs } = book
    const [a, b, c] = idsOf(jobs) as [number, number, number]
    await ask('jobs.change', { id: a, changes: [{ path: 'stage', value: 'designed' }] })
    const piece = { length: 1900, count: 1, place: 'door', jobId: null, note: '' }
    await ask('rack.add', { itemId: items['boards'] ?? 0, ...piece })
    const order = await placed(book, jobs)
    expect((await ask('rack.list', {}))[0]?.keptFor).toBe('2026-T01')
    await ask('jobs.change', { id: b, changes: [{ path: 'stage', value: 'making' }] })
    expect((await ask('orders.cancel', { id: order.id })).state).toBe('cancelled')
    expect(await Promise.all([a, b, c].map((id) => stageOf(book, id)))).toEqual([
      'designed',
      'making',
      'enquiry',
    ])
    expect((await ask('rack.list', {}))[0]?.keptFor).toBeNull()
    expect((await ask('orders.candidates', {})).map(({ orderedOn }) => orderedOn)).toEqual([null, null, null])
    expect(await book.refused('orders.cancel', { id: order.id })).toEqual(['refused id'])
    const [line] = order.lines
    expect(
      await book.refused('orders.receive', {
        ...{ id: order.id, receivedOn: '2026-03-06', lines: [{ lineId: line?.id, count: 1 }] },
      }),
    ).toEqual(['refused id'])
  })

  it('is refused once something came or was cut', async () => {
    const book = await orderingBook()
    const order = await placed(book, book.jobs)
    await receivedWhole(book, order)
    expect(await book.refused('orders.cancel', { id: order.id })).toEqual(['refused id'])
    expect(await book.refused('orders.cancel', { id: 77 })).toEqual(['not-found id'])
  })
})
