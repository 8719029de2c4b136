import * as v from 'valibot'
import type { PriceItem, Supplier, Supply } from '../shared/pricing/item.ts'
import { pence } from '../shared/pricing/pence.ts'
import type { Price, Rise } from '../shared/pricing/price.ts'
import { itemFacts } from '../shared/pricing/shapes.ts'
import { BookProblem } from './bookProblem.ts'
import type { Connection } from './connection.ts'

type StoredItem = { id: number; kind: string; name: string; facts: string; retired: number; sample: number }
type StoredSupplier = Omit<Supplier, 'sample'> & { sample: number }
type StoredSupply = Omit<Supply, 'lengths' | 'usual'> & { lengths: string; usual: number }
type StoredPrice = Omit<Price, 'pence' | 'origin' | 'addedAt'> & { pence: number; riseId: number }

const damagedLine = (name: string, cause: unknown): BookProblem =>
  new BookProblem(
    'damaged',
    `‘${name}’ in the price book can’t be read: the job book is damaged there. Bring back a copy of the book.`,
    cause,
  )

/** A line of the price book from its row. Throws BookProblem 'damaged' when its facts can't be read any more. */
export function itemFrom({ id, kind, name, facts, retired, sample }: StoredItem): PriceItem {
  const read = v.safeParse(itemFacts, { kind, name, facts: JSON.parse(facts) as unknown })
  if (!read.success) throw damagedLine(name, read.issues)
  return { ...read.output, id, retired: retired === 1, sample: sample === 1 }
}

export const supplierFrom = (stored: StoredSupplier): Supplier => ({ ...stored, sample: stored.sample === 1 })

export const supplyFrom = (stored: StoredSupply): Supply => ({
  ...stored,
  lengths: JSON.parse(stored.lengths) as number[],
  usual: stored.usual === 1,
})

/** A price from its row; where it came from and when stands with its rise. */
export const priceFrom = (
  stored: StoredPrice,
  { origin, addedAt }: Pick<Rise, 'origin' | 'addedAt'>,
): Price => ({
  ...stored,
  pence: pence(stored.pence),
  origin,
  addedAt,
})

const riseColumns = 'id, origin, added_at AS addedAt, undone_at AS undoneAt, lines'

/** Every question that reads the price book, made ready once. */
export const priceQuestions = ({ db }: Connection) => ({
  items: db.prepare<[], StoredItem>(
    'SELECT id, kind, name, facts, retired, sample FROM items WHERE put_away = 0 ORDER BY id',
  ),
  item: db.prepare<[number], StoredItem>(
    'SELECT id, kind, name, facts, retired, sample FROM items WHERE id = ? AND put_away = 0',
  ),
  suppliers: db.prepare<[], StoredSupplier>(
    'SELECT id, name, phone, notes, sample FROM suppliers WHERE put_away = 0 ORDER BY id',
  ),
  supplier: db.prepare<[number], StoredSupplier>(
    'SELECT id, name, phone, notes, sample FROM suppliers WHERE id = ? AND put_away = 0',
  ),
  supplies: db.prepare<[], StoredSupply>(
    `SELECT item_id AS itemId, supplier_id AS supplierId, code, lengths_mm AS lengths, usual FROM supplies
     ORDER BY item_id, supplier_id`,
  ),
  rises: db.prepare<[], Rise>(
    `SELECT ${riseColumns} FROM rises WHERE finished_at IS NOT NULL ORDER BY id DESC`,
  ),
  rise: db.prepare<[number], Rise>(
    `SELECT ${riseColumns} FROM rises WHERE id = ? AND finished_at IS NOT NULL`,
  ),
  standingPrices: db.prepare<[number, number], StoredPrice & Pick<Rise, 'origin' | 'addedAt'>>(
    `SELECT prices.id, item_id AS itemId, supplier_id AS supplierId, unit, size, price_pence AS pence, starts_on AS startsOn, rise_id AS riseId,
       origin, added_at AS addedAt
     FROM prices JOIN rises ON rises.id = rise_id
     WHERE prices.id > ? AND finished_at IS NOT NULL AND undone_at IS NULL ORDER BY prices.id LIMIT ?`,
  ),
  pricesOfRise: db.prepare<[number, number, number], StoredPrice>(
    `SELECT id, item_id AS itemId, supplier_id AS supplierId, unit, size, price_pence AS pence, starts_on AS startsOn, rise_id AS riseId
     FROM prices WHERE rise_id = ? AND id > ? ORDER BY id LIMIT ?`,
  ),
})

export type PriceQuestions = ReturnType<typeof priceQuestions>
