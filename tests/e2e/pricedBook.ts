import { openBook } from '../../db/open.ts'
import type { PriceUnit } from '../../shared/pricing/price.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { FactsOf, ItemKind } from '../../shared/pricing/item.ts'

type Line<K extends ItemKind = ItemKind> = {
  kind: K
  name: string
  facts: FactsOf[K]
  unit: PriceUnit
  size: number | null
  pence: number
}

const planed = (thickness: number, width: number, exThickness: number, exWidth: number) => ({
  species: 'European redwood',
  exThickness,
  exWidth,
  thickness,
  width,
  tongue: null,
  groove: null,
  treated: false,
})

const screw = (length: number, sum: number): Line<'fixing'> => ({
  kind: 'fixing',
  name: `Screw 5 × ${length}`,
  facts: { form: 'screw', diameter: 5, length },
  unit: 'box',
  size: 200,
  pence: sum,
})

/** The board that a standard gate is made of, by its line's name. */
export const boardName = 'ex 25 × 125 T&G V'

const lines: (Line<'timber'> | Line<'fixing'> | Line<'ironmongery'> | Line<'finish'> | Line<'work'>)[] = [
  {
    kind: 'timber',
    name: boardName,
    facts: { ...planed(20, 112, 25, 125), use: 'boards', tongue: 7, groove: 8 },
    unit: 'metre',
    size: null,
    pence: 245,
  },
  {
    kind: 'timber',
    name: 'ex 32 × 150 planed',
    facts: { ...planed(28, 145, 32, 150), use: 'ledges' },
    unit: 'metre',
    size: null,
    pence: 410,
  },
  {
    kind: 'timber',
    name: 'ex 32 × 100 planed',
    facts: { ...planed(28, 95, 32, 100), use: 'braces' },
    unit: 'metre',
    size: null,
    pence: 285,
  },
  ...[30, 35, 40, 45, 50, 60, 70].map((length) => screw(length, 600 + length * 10)),
  {
    kind: 'finish',
    name: 'Clear oil',
    facts: { coverage: 12, coats: 2 },
    unit: 'tin',
    size: 2.5,
    pence: 4895,
  },
  { kind: 'work', name: 'Bench hour', facts: { rate: 'hour' }, unit: 'hour', size: null, pence: 3800 },
  { kind: 'work', name: 'Site hour', facts: { rate: 'site hour' }, unit: 'hour', size: null, pence: 4200 },
  {
    kind: 'work',
    name: 'Kilometre',
    facts: { rate: 'kilometre' },
    unit: 'kilometre',
    size: null,
    pence: 45,
  },
]

/** The lengths that the merchant keeps of the boards; of the other timber nobody has said. */
const boardLengths = [2400, 3000, 3600, 4200, 4800]

/** Puts invented prices for all that a standard gate takes into a book that nobody has open. */
export function priceStandardGate(path: string): void {
  const book = openBook(path, { now: () => '2026-01-05T09:00:00.000Z' })
  book.together(() => {
    const merchant = book.prices.addSupplier({ name: 'Much Mallet Timber (invented)', phone: '', notes: '' })
    const prices = lines.map(({ unit, size, pence: sum, ...item }) => {
      const { id } = book.prices.addItem(item)
      const supplierId = item.kind === 'work' ? null : merchant.id
      const lengths = item.name === boardName ? boardLengths : []
      if (supplierId !== null)
        book.prices.supply({ itemId: id, supplierId, code: `M${id}`, lengths, usual: true })
      return { itemId: id, supplierId, unit, size, pence: pence(sum), startsOn: '2026-01-05' }
    })
    book.rises.add({ prices, origin: 'first prices', stamp: null })
  })
  book.close()
}
