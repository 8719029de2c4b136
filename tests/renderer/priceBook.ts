import type { PriceBook } from '../../shared/pricing/book.ts'
import type { PriceItem, Supplier, Supply } from '../../shared/pricing/item.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { Price, PriceUnit } from '../../shared/pricing/price.ts'
import { good } from '../../shared/problem.ts'

/** An invented price book to hold things against: two suppliers, a board sold two ways, a hinge, screws, an hour. */
const fact = { retired: false, sample: false }
const items: PriceItem[] = [
  {
    id: 1,
    kind: 'timber',
    name: 'ex 25 × 125 T&G V',
    ...fact,
    facts: {
      use: 'boards',
      species: 'European redwood',
      exThickness: 25,
      exWidth: 125,
      thickness: 20,
      width: 112,
      tongue: 7,
      groove: 8,
      treated: false,
    },
  },
  { id: 2, kind: 'ironmongery', name: 'Tee hinge 18", black', facts: { piece: null }, ...fact },
  {
    id: 3,
    kind: 'fixing',
    name: 'Screw 5 × 50',
    facts: { form: 'screw', diameter: 5, length: 50 },
    ...fact,
  },
  { id: 4, kind: 'work', name: 'Bench hour', facts: { rate: 'hour' }, ...fact },
  { id: 5, kind: 'finish', name: 'Mélange brun', facts: { coverage: 9, coats: 2 }, ...fact, retired: true },
]
const suppliers: Supplier[] = [
  { id: 11, name: 'Much Mallet Timber', phone: '', notes: '', sample: false },
  { id: 12, name: 'Nether Bolt & Hinge', phone: '', notes: '', sample: false },
]
const supply = (itemId: number, supplierId: number, code: string): Supply => ({
  itemId,
  supplierId,
  code,
  lengths: [],
  usual: true,
})

type Line = [itemId: number, supplierId: number | null, unit: PriceUnit, size: number | null]
const price = (id: number, [itemId, supplierId, unit, size]: Line, sum: number, startsOn: string): Price => ({
  id,
  itemId,
  supplierId,
  unit,
  size,
  pence: pence(sum),
  startsOn,
  origin: 'by hand',
  riseId: null,
  addedAt: `${startsOn}T08:00:00.000Z`,
})

export const today = '2026-06-15'

export const priceBook = (): PriceBook => ({
  items,
  suppliers,
  supplies: [supply(1, 11, 'RW-25125'), supply(2, 12, 'TH18'), supply(3, 12, ''), supply(1, 12, '=2+5')],
  prices: [
    price(1, [1, 11, 'metre', null], 215, '2024-03-01'),
    price(2, [1, 11, 'metre', null], 240, '2026-02-01'),
    price(3, [1, 11, 'metre', null], 262, '2026-09-01'),
    price(4, [1, 11, 'length', 3600], 840, '2025-11-03'),
    price(5, [2, 12, 'pair', null], 1875, '2025-05-06'),
    price(6, [2, 12, 'pair', null], 1899, '2025-05-06'),
    price(7, [3, 12, 'box', 200], 1120, '2026-01-07'),
    price(8, [4, null, 'hour', null], 3200, '2026-01-02'),
    price(9, [5, 12, 'tin', 2.5], 4150, '2023-01-02'),
    price(10, [1, 12, 'metre', null], 251, '2026-05-20'),
  ],
})

/** What a carrier with that book behind it answers when the book is read: its prices two at a time. */
export const bookAnswers = (book: () => PriceBook) => ({
  'prices.lines': async () => {
    const { items, suppliers, supplies } = book()
    return good({ items, suppliers, supplies })
  },
  'prices.some': async ({ after }: { after: number }) => {
    const left = book()
      .prices.filter(({ id }) => id > after)
      .sort((a, b) => a.id - b.id)
    return good({ prices: left.slice(0, 2), more: left.length > 2, stamp: 'as it stands' })
  },
})
