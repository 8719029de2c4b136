import Sqlite, { type Database } from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { fillSampleBook } from '../../db/demo/fillSampleBook.ts'
import { atOnce } from '../../db/prices.ts'
import { migrate, readMigrations } from '../../db/migrate.ts'
import { nextOrderNumber } from '../../db/orderNumber.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import type { Book } from '../../db/open.ts'
import { bookPath, newJob, openedBook } from './temporaryBook.ts'

/** A book by hand: a sample order (1) and one of the workshop's own (2), each for a job, with a row, a length, a piece of the rack. */
function ordersBook(): Database {
  const db = new Sqlite(':memory:')
  migrate(db, readMigrations())
  db.pragma('recursive_triggers = ON')
  const facts = '{"species":"European redwood"}'
  db.exec(`
    INSERT INTO customers (id, name, created_at) VALUES (3, 'Peg Sash', '2026-01-05T09:00:00Z');
    INSERT INTO items (id, kind, name, facts) VALUES (6, 'timber', 'ex 32 × 150', '${facts}'), (7, 'timber', 'ex 32 × 100', '${facts}');
    INSERT INTO rises (id, origin, added_at, lines, finished_at) VALUES (3, 'by hand', '2026-01-21', 1, '2026-01-21');
    INSERT INTO prices (id, item_id, unit, size, price_pence, starts_on, rise_id) VALUES (40, 6, 'length', 4800, 1650, '2026-01-21', 3);`)
  for (const [id, sample] of [
    [1, 1],
    [2, 0],
  ])
    db.exec(`
      INSERT INTO jobs (id, number, customer_id, title, stage, unit, entry, created_at, updated_at, sample)
        VALUES (${id}, 'J-${id}', 3, 'Gate', 'quoted', 'mm', '{"spec":{"construction":"ledged","size":{"width":900,"height":1800}}}', '', '', ${sample});
      INSERT INTO rack_pieces (id, item_id, length_mm, added_on, job_id, sample) VALUES (${10 + Number(id)}, 6, 1300, '2026-01-22', ${id}, ${sample});
      INSERT INTO rack_moves (piece_id, what, length_mm, place, moved_on, added_at) VALUES (${10 + Number(id)}, 'in', 1300, '', '2026-01-22', '');
      INSERT INTO orders (id, number, placed_on, cost_pence, request, plan, pairs, added_at, sample)
        VALUES (${id}, '${sample ? 'S' : '2026'}-T01', '2026-01-23', 3300, '{}', '{}', '[]', '', ${sample});
      INSERT INTO order_jobs (order_id, job_id, stage_before) VALUES (${id}, ${id}, 'quoted');
      INSERT INTO order_lines (id, order_id, item_id, price_id, length_mm, count, price_pence) VALUES (${20 + Number(id)}, ${id}, 6, 40, 4800, 2, 1650);
      INSERT INTO order_lengths (id, order_id, item_id, source, length_mm, count, cuts, offcut_mm)
        VALUES (${30 + Number(id)}, ${id}, 6, 'merchant', 4800, 2, '[]', 310);
      INSERT INTO order_rack (length_id, piece_id) VALUES (${30 + Number(id)}, ${10 + Number(id)});
      INSERT INTO order_receipts (line_id, count, received_on, added_at) VALUES (${20 + Number(id)}, 1, '2026-01-24', '');
      INSERT INTO order_cuts (length_id, count, cut_on, added_at) VALUES (${30 + Number(id)}, 1, '2026-01-25', '');`)
  return db
}

describe('the book’s own guards', () => {
  it.each([
    ['UPDATE orders SET plan = \'{"cost":1}\' WHERE id = 2', 'never altered'],
    ["UPDATE orders SET request = '[]' WHERE id = 2", 'never altered'],
    ['UPDATE orders SET cost_pence = 1 WHERE id = 2', 'never altered'],
    ["UPDATE orders SET cancelled_at = '2026-02-01' WHERE id = 2", 'is not cancelled'],
    ['UPDATE order_jobs SET stage_before = NULL WHERE order_id = 2', 'never altered'],
    ['UPDATE order_lines SET count = 9 WHERE order_id = 2', 'never altered'],
    ['UPDATE order_lengths SET offcut_mm = 9 WHERE order_id = 2', 'never altered'],
    ['UPDATE order_rack SET piece_id = 11 WHERE length_id = 32', 'never altered'],
    ['UPDATE order_receipts SET count = 2 WHERE line_id = 22', 'never altered'],
    ['UPDATE order_cuts SET count = 2 WHERE length_id = 32', 'never altered'],
    ['UPDATE rack_moves SET why = 9 WHERE piece_id = 12', 'never altered'],
    ['UPDATE rack_pieces SET item_id = 7 WHERE id = 12', 'stays what it is'],
    ['UPDATE rack_pieces SET sample = 1 WHERE id = 12', 'stays what it is'],
    ["UPDATE rack_pieces SET left_on = '2026-02-01' WHERE id = 12", 'CHECK'],
    ['DELETE FROM order_cuts WHERE length_id = 32', 'never leaves the book'],
    ['DELETE FROM order_receipts WHERE line_id = 22', 'never leaves the book'],
    ['DELETE FROM order_rack WHERE length_id = 32', 'never leave the book'],
    ['DELETE FROM order_lengths WHERE id = 32', 'never leaves the book'],
    ['DELETE FROM order_lines WHERE id = 22', 'never leaves the book'],
    ['DELETE FROM order_jobs WHERE order_id = 2', 'never leave the book'],
    ['DELETE FROM orders WHERE id = 2', 'never leaves the book'],
    ['DELETE FROM rack_moves WHERE piece_id = 12', 'never leaves the book'],
    ['DELETE FROM rack_pieces WHERE id = 12', 'never leaves the book'],
    ['INSERT OR REPLACE INTO orders SELECT * FROM orders WHERE id = 2', 'never leaves the book'],
    ['INSERT INTO order_jobs (order_id, job_id) VALUES (1, 2)', 'one order at a time'],
    ['INSERT INTO order_rack (length_id, piece_id) VALUES (31, 12)', 'one order at a time'],
    [
      "INSERT INTO order_receipts (line_id, count, received_on, added_at) VALUES (22, 2, '2026-01-26', '')",
      'no more comes',
    ],
    [
      "INSERT INTO order_cuts (length_id, count, cut_on, added_at) VALUES (32, 2, '2026-01-26', '')",
      'no more is cut',
    ],
    ["INSERT INTO order_cuts (length_id, count, cut_on, added_at) VALUES (32, 1, 'Monday', '')", 'CHECK'],
  ])('refuse: %s', (sql, says) => {
    const db = ordersBook()
    expect(() => db.exec(sql)).toThrow(says)
    db.close()
  })

  it('let a piece leave the rack, come back only as if it never left, and be taken by no order meanwhile', () => {
    const db = ordersBook()
    const leave = "UPDATE rack_pieces SET left_on = '2026-02-01', left_why = 'cut up' WHERE id = 12"
    db.exec(leave)
    expect(() => db.exec("UPDATE rack_pieces SET left_why = 'scrapped' WHERE id = 12")).toThrow('has left it')
    expect(() => db.exec('UPDATE rack_pieces SET left_on = NULL WHERE id = 12')).toThrow('CHECK')
    db.exec('UPDATE rack_pieces SET left_on = NULL, left_why = NULL WHERE id = 12')
    db.exec(leave)
    db.exec('DELETE FROM order_rack WHERE length_id = 31')
    expect(() => db.exec('INSERT INTO order_rack (length_id, piece_id) VALUES (31, 12)')).toThrow('one order')
    db.close()
  })

  it('let an order nothing came of be cancelled once, and its jobs and pieces be taken by another', () => {
    const db = ordersBook()
    db.exec(`INSERT INTO orders (id, number, placed_on, cost_pence, request, plan, pairs, added_at)
        VALUES (5, '2026-T02', '2026-01-23', 3300, '{}', '{}', '[]', ''), (6, '2026-T03', '2026-01-23', 3300, '{}', '{}', '[]', '');
      INSERT INTO jobs (id, number, customer_id, title, stage, unit, entry, created_at, updated_at)
        SELECT 9, 'J-9', customer_id, title, stage, unit, entry, created_at, updated_at FROM jobs WHERE id = 2;
      INSERT INTO order_jobs (order_id, job_id) VALUES (5, 9);`)
    const again = () => db.exec('INSERT INTO order_jobs (order_id, job_id) VALUES (6, 9)')
    expect(again).toThrow('one order at a time')
    db.exec("UPDATE orders SET cancelled_at = '2026-02-01' WHERE id = 5")
    again()
    expect(() => db.exec("UPDATE orders SET cancelled_at = '2026-02-02' WHERE id = 5")).toThrow(
      'never altered',
    )
    expect(() => db.exec('UPDATE orders SET cancelled_at = NULL WHERE id = 5')).toThrow('never altered')
    db.close()
  })
})

describe('an order’s number', () => {
  it('is the year and its place in it, samples apart, past 99 too', () => {
    const db = ordersBook()
    const next = (on: string, sample = false) => nextOrderNumber(db, on, sample)
    const place = (number: string) =>
      db
        .prepare(
          `INSERT INTO orders (number, placed_on, cost_pence, request, plan, pairs, added_at) VALUES (?, '2026-01-23', 0, '{}', '{}', '[]', '')`,
        )
        .run(number)
    expect([next('2026-06-01'), next('2027-01-02'), next('2026-06-01', true)]).toEqual([
      ...['2026-T02', '2027-T01', 'S-T02'],
    ])
    for (const number of ['2026-T99', '2026-T100', '2025-T140']) place(number)
    expect(next('2026-06-01')).toBe('2026-T101')
    db.close()
  })
})

const emptyPlan: BuyingPlan = {
  ...{
    version: 1,
    status: 'proven',
    cost: 1240,
    bound: 1240,
    waste: 0,
    patterns: 1,
    lengths: [],
    certificate: [],
  },
  shown: { cost: true, waste: false, patterns: false },
}

/** An order for one job, of one length from the merchant and one piece of the rack. */
function placeFor(book: Book, jobId: number, sample: boolean) {
  const { items, prices } = book.prices.book()
  const price = prices.find(({ unit, itemId }) => unit === 'metre' && items.some(({ id }) => id === itemId))
  const piece = book.rack.list().find(({ keptFor, itemId }) => keptFor === null && itemId === price?.itemId)
  if (!price || !piece) throw new Error('the sample has no timber on its rack')
  const cuts = [{ length: 1000, mark: 'board' }]
  const length = { itemId: price.itemId, count: 1, cuts, offcut: 0, leftFrom: jobId }
  return book.orders.place({
    ...{
      jobs: [{ jobId, stageBefore: null }],
      placedOn: '2026-03-02',
      note: '',
      plan: emptyPlan,
      pairs: [],
      sample,
    },
    request: { version: 1, kerf: 4, endTrim: 20, leastOffcut: 450, parts: [], stock: [] },
    lines: [
      {
        ...{ itemId: price.itemId, supplierId: price.supplierId, priceId: price.id },
        ...{ length: 3000, pence: 1240, count: 1 },
      },
    ],
    lengths: [
      { ...length, from: 'merchant', length: 3000, rackPieceIds: [] },
      { ...length, from: 'rack', length: piece.length, rackPieceIds: [piece.id] },
    ],
  })
}

const counted = (path: string, tables: string[]): Record<string, number> => {
  const db = new Sqlite(path, { readonly: true })
  const rows = tables.map((table) => [
    table,
    Number(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get()),
  ])
  const wrong = db.pragma('foreign_key_check')
  db.close()
  expect(wrong).toEqual([])
  return Object.fromEntries(rows) as Record<string, number>
}

describe('the sample’s rack and orders', () => {
  const tables = [
    ...['orders', 'order_jobs', 'order_lines', 'order_lengths', 'order_receipts', 'order_cuts', 'order_rack'],
    ...['rack_pieces', 'rack_moves', 'items', 'prices', 'suppliers', 'jobs'],
  ]

  it('is a rack of invented offcuts, some left from its jobs', () => {
    const book = openedBook()
    fillSampleBook(book, { today: '2026-03-02' })
    const rack = book.rack.list()
    expect(rack.length).toBeGreaterThanOrEqual(8)
    expect(new Set(rack.map(({ itemId }) => itemId)).size).toBeGreaterThanOrEqual(5)
    expect(rack.filter(({ jobNumber }) => jobNumber?.startsWith('S-')).length).toBeGreaterThan(3)
    expect(rack.every(({ addedOn }) => addedOn < '2026-03-02')).toBe(true)
  })

  it('leaves with it, with what came and what was cut', () => {
    const path = bookPath()
    const book = openedBook(path)
    fillSampleBook(book, { today: '2026-03-02' })
    const job = book.jobs.list('', 'quoted').rows[0]?.id ?? 0
    const { lines, lengths } = placeFor(book, job, true)
    book.orders.receive(lines[0]?.id ?? 0, 1, '2026-03-05')
    for (const { id } of lengths) book.orders.cut(id, 1, '2026-03-06')
    book.sample.remove()
    expect(counted(path, tables)).toEqual(Object.fromEntries(tables.map((table) => [table, 0])))
  })

  it('leaves what the workshop’s own orders rest on: the item with its prices, the merchant, the piece', () => {
    const path = bookPath()
    const book = openedBook(path)
    fillSampleBook(book, { today: '2026-03-02' })
    const own = book.jobs.create(newJob())
    const order = placeFor(book, own.id, false)
    book.sample.remove()
    expect(book.orders.open(order.id)).toEqual(order)
    const left = counted(path, tables)
    expect(left).toMatchObject({ orders: 1, order_rack: 1, rack_pieces: 1, items: 1, suppliers: 2, jobs: 1 })
    expect(book.rack.list()[0]).toMatchObject({ jobId: null, keptFor: order.number })
    expect(atOnce(book.prices.lineSteps()).items[0]?.sample).toBe(false)
    book.sample.remove()
    expect(counted(path, tables)).toEqual(left)
  })

  it('leaves a piece that the workshop put on the rack itself, and the line of the price book it is of', () => {
    const path = bookPath()
    const book = openedBook(path)
    fillSampleBook(book, { today: '2026-03-02' })
    const [piece] = book.rack.list()
    const itemId = piece?.itemId ?? 0
    book.rack.add({ itemId, length: 812, place: 'beam', jobId: null, note: '', addedOn: '2026-03-02' })
    book.sample.remove()
    expect(book.rack.list().map(({ length, place }) => [length, place])).toEqual([[812, 'beam']])
    expect(counted(path, ['rack_moves', 'items'])).toEqual({ rack_moves: 1, items: 1 })
  })
})
