import type { PriceBook } from '../../shared/pricing/book.ts'
import type { FactsOf, ItemKind, PriceItem } from '../../shared/pricing/item.ts'
import type { Needs } from '../../shared/pricing/needs.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { Price, PriceLine } from '../../shared/pricing/price.ts'

/** A book that is put together line by line; ids count from 1 in each list. */
export type BookInHand = PriceBook & {
  addItem: <K extends ItemKind>(kind: K, name: string, facts: FactsOf[K]) => number
  addPrice: (
    line: Partial<PriceLine> & { itemId: number; unit: PriceLine['unit'] },
    sum: number,
    startsOn?: string,
  ) => Price
}

/** A book with two suppliers, 1 Alder Yard and 2 Birch Wharf, both invented, and nothing else yet. */
export function emptyBook(): BookInHand {
  const supplier = (id: number, name: string) => ({ id, name, phone: '', notes: '', sample: true })
  const book: PriceBook = {
    items: [],
    suppliers: [supplier(1, 'Alder Yard'), supplier(2, 'Birch Wharf')],
    supplies: [],
    prices: [],
  }
  return {
    ...book,
    addItem: (kind, name, facts) => {
      const id = book.items.length + 1
      book.items.push({ id, kind, name, facts, retired: false, sample: true } as PriceItem)
      return id
    },
    addPrice: (line, sum, startsOn = '2026-01-05') => {
      const price: Price = {
        supplierId: 1,
        size: null,
        ...line,
        id: book.prices.length + 1,
        pence: pence(sum),
        startsOn,
        origin: 'by hand',
        riseId: null,
        addedAt: '2026-01-05T09:00:00Z',
      }
      book.prices.push(price)
      return price
    },
  }
}

/** The workshop's four rates: £38.00 an hour at the bench, £44.00 on site, 45p a kilometre, no call-out sum. */
export function addRates({ addItem, addPrice }: BookInHand): void {
  const own = { supplierId: null }
  addPrice({ itemId: addItem('work', 'Bench', { rate: 'hour' }), unit: 'hour', ...own }, 3800)
  addPrice({ itemId: addItem('work', 'Site', { rate: 'site hour' }), unit: 'hour', ...own }, 4400)
  addPrice({ itemId: addItem('work', 'Van', { rate: 'kilometre' }), unit: 'kilometre', ...own }, 45)
}

/** Puts an item and a price into a book for everything that a gate needs and the book hasn't yet: every one at a price of its own. */
export function stock(book: BookInHand, needs: Needs): void {
  const has = (name: string) => book.items.some((item) => item.name === name)
  const next = () => 137 + 13 * book.prices.length
  for (const { section, use } of needs.timber) {
    const { species, thickness, width, tongue = null, groove = null } = section
    const name = `${section.name} ${species} ${thickness} × ${width}`
    if (has(name)) continue
    const facts = {
      use,
      species,
      exThickness: thickness + 5,
      exWidth: width + 6,
      thickness,
      width,
      tongue,
      groove,
    }
    const itemId = book.addItem('timber', name, { ...facts, treated: false })
    if (book.items.length % 3 === 0)
      for (const size of [3000, 3900, 4800, 6000])
        book.addPrice({ itemId, unit: 'length', size }, next() * (size / 300))
    else book.addPrice({ itemId, unit: 'metre' }, next())
  }
  for (const { form, diameter, length } of needs.fixings) {
    const name = `${form} ${diameter} × ${length}`
    if (has(name)) continue
    book.addPrice(
      { itemId: book.addItem('fixing', name, { form, diameter, length }), unit: 'box', size: 200 },
      next(),
    )
  }
  for (const { piece, name } of needs.ironmongery) {
    if (has(name)) continue
    const itemId = book.addItem('ironmongery', name, { piece })
    book.addPrice({ itemId, unit: book.items.length % 2 === 0 ? 'pair' : 'each' }, next())
  }
}

/** Adds a finish in tins of 1, 2.5 and 5 litres, 12 m² a litre, two coats; gives its item's id. */
export function addFinish({ addItem, addPrice }: BookInHand): number {
  const itemId = addItem('finish', 'Fern oil', { coverage: 12, coats: 2 })
  addPrice({ itemId, unit: 'tin', size: 1 }, 1400)
  addPrice({ itemId, unit: 'tin', size: 2.5 }, 3000)
  addPrice({ itemId, unit: 'tin', size: 5 }, 5500)
  return itemId
}
