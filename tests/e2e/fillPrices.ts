import { openBook, type Book } from '../../db/open.ts'
import type { PriceUnit } from '../../shared/pricing/price.ts'
import { pence } from '../../shared/pricing/pence.ts'

export const supplierName = 'Nether Ledge Merchants (invented)'

const goods = (book: Book, n: number): { id: number; unit: PriceUnit; size: number | null } => {
  const kind = n % 4
  if (kind === 1)
    return {
      id: book.prices.addItem({
        kind: 'ironmongery',
        name: `Tee hinge ${10 + n}", black`,
        facts: { piece: null },
      }).id,
      unit: 'pair',
      size: null,
    }
  if (kind === 2) {
    const facts = { form: 'screw', diameter: 5, length: 40 + (n % 80) } as const
    return {
      id: book.prices.addItem({ kind: 'fixing', name: `Screw 5 × ${n}`, facts }).id,
      unit: 'box',
      size: 200,
    }
  }
  if (kind === 3)
    return {
      id: book.prices.addItem({ kind: 'finish', name: `Oil number ${n}`, facts: { coverage: 9, coats: 2 } })
        .id,
      unit: 'tin',
      size: 2.5,
    }
  const facts = {
    use: 'boards',
    species: 'European larch',
    exThickness: 25,
    exWidth: 125,
    thickness: 20,
    width: 112,
    tongue: 7,
    groove: 8,
    treated: false,
  } as const
  return {
    id: book.prices.addItem({ kind: 'timber', name: `Board number ${n}`, facts }).id,
    unit: 'metre',
    size: null,
  }
}

/** Puts so many invented lines into a book that nobody has open, each with a code and two prices, the last of them over six months old. */
export function fillPrices(path: string, lines: number): void {
  const book = openBook(path, { now: () => '2026-01-05T09:00:00.000Z' })
  book.together(() => {
    const supplierId = book.prices.addSupplier({ name: supplierName, phone: '01632 960 111', notes: '' }).id
    const all = Array.from({ length: lines }, (_, n) => {
      const { id, unit, size } = goods(book, n)
      const code = `C${String(n).padStart(5, '0')}`
      book.prices.supply({ itemId: id, supplierId, code, lengths: [], usual: true })
      return { itemId: id, supplierId, unit, size, pence: pence(500 + ((n * 37) % 4000)) }
    })
    book.rises.add({
      prices: all.flatMap((one) => [
        { ...one, startsOn: '2024-02-01' },
        { ...one, pence: pence(one.pence + 25), startsOn: '2025-02-03' },
      ]),
      origin: 'first prices',
      stamp: null,
    })
  })
  book.close()
}
