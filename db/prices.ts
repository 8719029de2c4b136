import type * as v from 'valibot'
import type { PriceBook } from '../shared/pricing/book.ts'
import type { PriceItem, Supplier, Supply } from '../shared/pricing/item.ts'
import type { Price } from '../shared/pricing/price.ts'
import type { itemFacts, supplierShape } from '../shared/pricing/shapes.ts'
import type { Connection } from './connection.ts'
import { itemFrom, priceFrom, supplierFrom, type PriceQuestions } from './priceRows.ts'
import type { PriceReading } from './priceReading.ts'

/** A line of the price book as it is entered, and a supplier. */
export type ItemEntry = v.InferOutput<typeof itemFacts>
export type SupplierEntry = v.InferOutput<typeof supplierShape>

export type PricesRoom = {
  /** The whole price book: every line, supplier and standing price. */
  book: () => PriceBook
  /** The same a step at a time, for a window that mustn't wait. */
  bookSteps: () => Generator<void, PriceBook>
  /** Some of the prices that count, in the order they were added: at most so many, after the one with that id. */
  some: (after: number, most: number) => Price[]
  /** The same without its prices. */
  lineSteps: () => Generator<void, Omit<PriceBook, 'prices'>>
  item: (id: number) => PriceItem | undefined
  supplier: (id: number) => Supplier | undefined
  addItem: (entry: ItemEntry, sample?: boolean) => PriceItem
  /** Sets a line right; one of the sample is the workshop's own from then on. undefined when there is none, or it is of another kind. */
  changeItem: (id: number, entry: ItemEntry) => PriceItem | undefined
  /** Takes a line out of what is offered, or back in; its prices stay. */
  retireItem: (id: number, retired: boolean) => PriceItem | undefined
  addSupplier: (entry: SupplierEntry, sample?: boolean) => Supplier
  changeSupplier: (id: number, entry: SupplierEntry) => Supplier | undefined
  /** How a supplier keeps an item, put down or set right. Made the usual one, it takes that from another. Item and supplier must be there. */
  supply: (supply: Supply) => Supply
}

const statements = ({ db }: Connection) => ({
  addItem: db.prepare('INSERT INTO items (kind, name, facts, sample) VALUES (?, ?, ?, ?)'),
  changeItem: db.prepare('UPDATE items SET name = ?, facts = ?, sample = 0 WHERE id = ? AND kind = ?'),
  retire: db.prepare('UPDATE items SET retired = ? WHERE id = ?'),
  addSupplier: db.prepare('INSERT INTO suppliers (name, phone, notes, sample) VALUES (?, ?, ?, ?)'),
  changeSupplier: db.prepare('UPDATE suppliers SET name = ?, phone = ?, notes = ?, sample = 0 WHERE id = ?'),
  noOtherUsual: db.prepare('UPDATE supplies SET usual = 0 WHERE item_id = ? AND supplier_id <> ?'),
  supply: db.prepare(
    `INSERT INTO supplies (item_id, supplier_id, code, lengths_mm, usual) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (item_id, supplier_id) DO UPDATE SET code = excluded.code, lengths_mm = excluded.lengths_mm, usual = excluded.usual`,
  ),
})

/** Runs a generator to its end at once. */
export function atOnce<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

const rowOf = ({ lastInsertRowid }: { lastInsertRowid: number | bigint }): number => Number(lastInsertRowid)

function lineWriting({ read, write }: Connection, ask: PriceQuestions, run: ReturnType<typeof statements>) {
  const item = (id: number): PriceItem | undefined => {
    const found = read(() => ask.item.get(id))
    return found && itemFrom(found)
  }
  const supplier = (id: number): Supplier | undefined => {
    const found = read(() => ask.supplier.get(id))
    return found && supplierFrom(found)
  }
  const there = <T>(found: T | undefined): T => {
    if (found === undefined) throw new Error('a line of the price book was written and can’t be read')
    return found
  }
  return {
    item,
    supplier,
    addItem: ({ kind, name, facts }: ItemEntry, sample = false) =>
      write(() => there(item(rowOf(run.addItem.run(kind, name, JSON.stringify(facts), sample ? 1 : 0))))),
    changeItem: (id: number, { kind, name, facts }: ItemEntry) =>
      write(() =>
        run.changeItem.run(name, JSON.stringify(facts), id, kind).changes > 0 ? item(id) : undefined,
      ),
    retireItem: (id: number, retired: boolean) =>
      write(() => (run.retire.run(retired ? 1 : 0, id).changes > 0 ? item(id) : undefined)),
    addSupplier: ({ name, phone, notes }: SupplierEntry, sample = false) =>
      write(() => there(supplier(rowOf(run.addSupplier.run(name, phone, notes, sample ? 1 : 0))))),
    changeSupplier: (id: number, { name, phone, notes }: SupplierEntry) =>
      write(() => (run.changeSupplier.run(name, phone, notes, id).changes > 0 ? supplier(id) : undefined)),
    supply: ({ lengths, ...supply }: Supply): Supply =>
      write(() => {
        const { itemId, supplierId, code, usual } = supply
        const kept = { ...supply, lengths: [...new Set(lengths)].sort((a, b) => a - b) }
        if (usual) run.noOtherUsual.run(itemId, supplierId)
        run.supply.run(itemId, supplierId, code, JSON.stringify(kept.lengths), usual ? 1 : 0)
        return kept
      }),
  }
}

/** The price book's room: lines, suppliers, how one keeps the other. Prices are only ever added, by a rise. */
export function pricesRoom(connection: Connection, ask: PriceQuestions, reading: PriceReading): PricesRoom {
  const writing = lineWriting(connection, ask, statements(connection))
  const noted =
    <A extends unknown[], T>(work: (...given: A) => T) =>
    (...given: A): T => {
      reading.linesWritten()
      return work(...given)
    }
  return {
    ...writing,
    book: () => atOnce(reading.steps()),
    bookSteps: reading.steps,
    lineSteps: reading.lineSteps,
    some: (after, most) =>
      connection.read(() => ask.standingPrices.all(after, most)).map((row) => priceFrom(row, row)),
    addItem: noted(writing.addItem),
    changeItem: noted(writing.changeItem),
    retireItem: noted(writing.retireItem),
    addSupplier: noted(writing.addSupplier),
    changeSupplier: noted(writing.changeSupplier),
    supply: noted(writing.supply),
  }
}
