import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import type { Book } from '../../db/open.ts'
import { atOnce } from '../../db/prices.ts'
import { standardSections } from '../../shared/gate/standardSpec.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { priceOn } from '../../shared/pricing/standing.ts'
import { fillPrices, metrePrice, timberItem } from '../fixtures/prices.ts'
import { bookPath, openedBook } from './temporaryBook.ts'

const boards = timberItem(standardSections.boards, 'boards')

/** An item by the metre at one supplier, with a price of 3.45 from 5 January. */
function oneLine(book: Book) {
  const supplierId = book.prices.addSupplier({ name: 'Alder Yard', phone: '01632 960301', notes: '' }).id
  const itemId = book.prices.addItem(boards).id
  const rise = (amount: number, startsOn: string, origin = 'by hand') =>
    book.rises.add({
      prices: [metrePrice(itemId, supplierId, { pence: pence(amount), startsOn })],
      origin,
      stamp: null,
    })
  rise(345, '2026-01-05')
  const on = (day: string) => priceOn(book.prices.book().prices, metrePrice(itemId, supplierId), day)?.pence
  return { itemId, supplierId, rise, on }
}

describe('the price of a line on a day', () => {
  it('is what started last by then; of two that start on one day the one added later; nothing before the first', () => {
    const { rise, on } = oneLine(openedBook())
    rise(410, '2026-07-01')
    rise(372, '2026-04-01')
    rise(379, '2026-04-01')
    expect(
      ['2026-01-04', '2026-01-05', '2026-03-31', '2026-04-01', '2026-06-30', '2026-07-01'].map(on),
    ).toEqual([undefined, 345, 345, 379, 379, 410])
  })

  it('says where it came from, when, and with which rise, over a restart', () => {
    const path = bookPath()
    const first = openedBook(path)
    const { itemId, supplierId, rise } = oneLine(first)
    const made = rise(372, '2026-04-01', 'Alder’s spring list')
    first.close()
    const { prices, items, suppliers } = openedBook(path).prices.book()
    expect(prices[1]).toEqual({
      ...metrePrice(itemId, supplierId, { pence: pence(372), startsOn: '2026-04-01' }),
      id: 2,
      origin: 'Alder’s spring list',
      riseId: made?.id,
      addedAt: made?.addedAt,
    })
    expect(items).toEqual([{ ...boards, id: itemId, retired: false, sample: false }])
    expect(suppliers.map(({ phone }) => phone)).toEqual(['01632 960301'])
  })
})

describe('undoing a rise', () => {
  it('leaves its prices in the book, where they count for nothing, and can be done once, latest first', () => {
    const path = bookPath()
    const book = openedBook(path)
    const { rise, on } = oneLine(book)
    const before = book.prices.book()
    const [middle, last] = [rise(372, '2026-04-01'), rise(390, '2026-05-01')]
    expect(book.rises.undo(middle?.id ?? 0)).toBe(false)
    expect(book.rises.undo(last?.id ?? 0)).toBe(true)
    expect(book.rises.undo(last?.id ?? 0)).toBe(false)
    expect([on('2026-05-01'), book.rises.latest()?.id]).toEqual([372, middle?.id])
    expect(book.rises.undo(middle?.id ?? 0)).toBe(true)
    expect(book.prices.book()).toEqual(before)
    expect(book.rises.list().map(({ undoneAt }) => undoneAt === null)).toEqual([false, false, true])
    const db = new Sqlite(path, { readonly: true })
    expect(db.prepare('SELECT price_pence FROM prices').pluck().all()).toEqual([345, 372, 390])
    db.close()
  })
})

describe('a rise', () => {
  it('that breaks off in the middle leaves nothing, neither in the book nor on the disk', () => {
    const path = bookPath()
    const book = openedBook(path)
    const { itemId, supplierId } = oneLine(book)
    const [before, stamp] = [book.prices.book(), book.rises.stamp()]
    const prices = Array.from({ length: 4000 }, (_, place) =>
      metrePrice(place === 3700 ? itemId + 1 : itemId, supplierId, { pence: pence(400 + place) }),
    )
    const steps = book.rises.addSteps({ prices, origin: 'broken list', stamp })
    expect(steps.next().done).toBe(false)
    expect(book.prices.book()).toEqual(before)
    expect(() => atOnce(steps)).toThrow('FOREIGN KEY')
    expect([book.prices.book(), book.rises.stamp(), book.rises.list().length]).toEqual([before, stamp, 1])
    const db = new Sqlite(path, { readonly: true })
    expect(db.prepare('SELECT count(*) FROM prices').pluck().get()).toBe(1)
    db.close()
  })

  it('that a power cut broke off counts for nothing, and is cleared away when the book is opened again', () => {
    const path = bookPath()
    const book = openedBook(path)
    const { itemId, supplierId } = oneLine(book)
    const before = book.prices.book()
    const prices = Array.from({ length: 3000 }, (_, place) =>
      metrePrice(itemId, supplierId, { pence: pence(400 + place) }),
    )
    book.rises.addSteps({ prices, origin: 'cut off', stamp: null }).next()
    const db = new Sqlite(path, { readonly: true })
    const rows = () => db.prepare('SELECT count(*) FROM prices').pluck().get()
    expect(rows()).toBeGreaterThan(1000)
    expect(openedBook(path).prices.book()).toEqual(before)
    expect(rows()).toBe(1)
    db.close()
  })

  it('is refused, and leaves nothing, when prices came in since its stamp or while it was being written', () => {
    const book = openedBook()
    const { itemId, supplierId, rise, on } = oneLine(book)
    const prices = Array.from({ length: 3000 }, (_, place) =>
      metrePrice(itemId, supplierId, { pence: pence(400 + place) }),
    )
    const stamp = book.rises.stamp()
    const steps = book.rises.addSteps({ prices, origin: 'slow list', stamp })
    steps.next()
    rise(372, '2026-04-01')
    expect(atOnce(steps)).toBeUndefined()
    expect(book.rises.add({ prices, origin: 'late list', stamp })).toBeUndefined()
    expect([on('2026-04-01'), book.rises.list().length, book.prices.book().prices.length]).toEqual([
      372, 2, 2,
    ])
  })
})

describe('the book itself', () => {
  it('refuses to alter or drop a price, a finished rise, an item, a supplier, whoever writes', () => {
    const path = bookPath()
    const { rise } = oneLine(openedBook(path))
    rise(372, '2026-04-01')
    const db = new Sqlite(path)
    db.pragma('recursive_triggers = ON')
    db.pragma('foreign_keys = OFF')
    const refusal = (sql: string): string => {
      try {
        db.exec(sql)
        return 'allowed'
      } catch (error) {
        return error instanceof Error ? error.message : ''
      }
    }
    expect(
      [
        'UPDATE prices SET price_pence = 1',
        'DELETE FROM prices',
        'INSERT OR REPLACE INTO prices SELECT * FROM prices',
        "UPDATE rises SET origin = 'other'",
        'UPDATE rises SET finished_at = NULL',
        'DELETE FROM rises',
        'DELETE FROM items',
        'UPDATE items SET sample = 1',
        "UPDATE items SET kind = 'work'",
        'DELETE FROM suppliers',
        'UPDATE suppliers SET sample = 1',
      ].map(refusal),
    ).toEqual([
      'a price is never altered',
      'a price never leaves the book',
      'a price never leaves the book',
      ...Array(2).fill('a rise is undone or it stands, and is never altered'),
      'a rise never leaves the book',
      'an item never leaves the book',
      'an item is a sample from the first or never',
      'an item stays of its kind: its prices are for that',
      'a supplier never leaves the book',
      'a supplier is a sample from the first or never',
    ])
    db.close()
  })

  it.each([
    ['a price below nothing', "5, 3, 'metre', NULL, -1, '2026-01-05'"],
    ['part of a penny', "5, 3, 'metre', NULL, 12.5, '2026-01-05'"],
    ['a box of no size', "5, 3, 'box', NULL, 900, '2026-01-05'"],
    ['a metre with a size', "5, 3, 'metre', 2, 900, '2026-01-05'"],
    ['a day that isn’t one', "5, 3, 'metre', NULL, 900, 'spring'"],
    ['a unit nobody sells by', "5, 3, 'stone', NULL, 900, '2026-01-05'"],
  ])('refuses %s', (_, cells) => {
    const path = bookPath()
    oneLine(openedBook(path))
    const db = new Sqlite(path)
    expect(() =>
      db.exec(
        `INSERT INTO prices (item_id, supplier_id, unit, size, price_pence, starts_on, rise_id) VALUES (${cells}, 1)`,
      ),
    ).toThrow(/CHECK|cannot store/)
    db.close()
  })

  it('says plainly that a line is damaged when its facts can’t be read', () => {
    const path = bookPath()
    const { itemId } = oneLine(openedBook(path))
    const db = new Sqlite(path)
    db.prepare("UPDATE items SET facts = '{}' WHERE id = ?").run(itemId)
    db.close()
    const book = openedBook(path)
    expect(() => book.prices.book()).toThrow(
      expect.objectContaining({ code: 'damaged', message: expect.stringContaining(boards.name) }),
    )
  })
})

describe('lines and suppliers', () => {
  it('are set right, retired and offered again; prices and kind stay', () => {
    const book = openedBook()
    const { itemId } = oneLine(book)
    const renamed = { ...boards, name: 'ex 25 × 125 T&G V, kiln dried' }
    expect(book.prices.changeItem(itemId, renamed)).toMatchObject({ ...renamed, id: itemId })
    expect(
      book.prices.changeItem(itemId, { kind: 'work', name: 'x', facts: { rate: 'hour' } }),
    ).toBeUndefined()
    expect(book.prices.retireItem(itemId, true)?.retired).toBe(true)
    expect(book.prices.retireItem(itemId, false)?.retired).toBe(false)
    expect(book.prices.retireItem(99, true)).toBeUndefined()
    expect(book.prices.book().prices).toHaveLength(1)
  })

  it('have one usual supplier at most, and lengths kept shortest first', () => {
    const book = openedBook()
    const { itemId, supplierId } = oneLine(book)
    const other = book.prices.addSupplier({ name: 'Birch Wharf', phone: '', notes: '' }).id
    const supply = { itemId, code: 'T1', usual: true }
    book.prices.supply({ ...supply, supplierId, lengths: [4800, 3000, 4800] })
    book.prices.supply({ ...supply, supplierId: other, lengths: [] })
    expect(book.prices.book().supplies).toEqual([
      { ...supply, supplierId, lengths: [3000, 4800], usual: false },
      { ...supply, supplierId: other, lengths: [] },
    ])
  })

  it('are read anew after another window wrote, and after a writing that was taken back', () => {
    const path = bookPath()
    const [one, two] = [openedBook(path), openedBook(path)]
    oneLine(one)
    expect(two.prices.book().prices).toHaveLength(1)
    fillPrices(one)
    expect(two.prices.book()).toEqual(one.prices.book())
    const before = one.prices.book()
    expect(() =>
      one.together(() => {
        one.prices.addItem(boards)
        expect(one.prices.book().items).toHaveLength(before.items.length + 1)
        throw new Error('taken back')
      }),
    ).toThrow('taken back')
    expect(one.prices.book()).toEqual(before)
  })
})
