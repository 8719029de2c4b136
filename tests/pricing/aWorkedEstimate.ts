import type { Estimate } from '../../shared/pricing/estimate.ts'
import type { Needs } from '../../shared/pricing/needs.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { plainEntry, type EstimateEntry, type MoneySettings } from '../../shared/pricing/terms.ts'
import { estimate } from '../../shared/pricing/workEstimate.ts'
import { addFinish, addRates, emptyBook, type BookInHand } from './aBook.ts'

export const section = { name: 'ex 32 × 150', species: 'European redwood', thickness: 28, width: 145 }
export const needs: Needs = {
  timber: [
    {
      kind: 'timber',
      section,
      use: 'ledges',
      pieces: [
        { mark: 'ledge', length: 926, quantity: 2 },
        { mark: 'single brace', length: 1350, quantity: 1 },
      ],
    },
  ],
  fixings: [{ kind: 'fixing', form: 'screw', diameter: 5, length: 40, count: 68 }],
  ironmongery: [{ kind: 'ironmongery', piece: 'tee-450', name: 'Tee hinge 450', count: 3 }],
  finish: { kind: 'finish', areaM2: 9.46 },
  work: [
    { kind: 'work', operation: 'fixing', count: 68 },
    { kind: 'work', operation: 'finish square metre', count: 9.46 },
    { kind: 'work', operation: 'site visit', count: 1 },
    { kind: 'work', operation: 'hang leaf', count: 1 },
  ],
}

const facts = {
  use: 'ledges',
  exThickness: 32,
  exWidth: 150,
  tongue: null,
  groove: null,
  treated: false,
  ...section,
} as const
export const timberFacts = (({ name: _name, ...rest }) => rest)(facts)

/** A book for these needs: redwood £3.45 a metre, screws £9.50 a box of 200, hinges £21.00 a pair, oil, rates. */
export function aBook(without: string[] = []): BookInHand & { finish: number } {
  const book = emptyBook()
  addRates(book)
  const finish = addFinish(book)
  const items = {
    timber: () =>
      book.addPrice({ itemId: book.addItem('timber', section.name, timberFacts), unit: 'metre' }, 345),
    screws: () =>
      book.addPrice(
        {
          itemId: book.addItem('fixing', 'Screws 5 × 40', { form: 'screw', diameter: 5, length: 40 }),
          unit: 'box',
          size: 200,
        },
        950,
      ),
    hinges: () =>
      book.addPrice({ itemId: book.addItem('ironmongery', 'Tee', { piece: 'tee-450' }), unit: 'pair' }, 2100),
  }
  for (const [name, add] of Object.entries(items)) if (!without.includes(name)) add()
  return { ...book, finish }
}

export const day = '2026-06-15'
export const work = (
  book: BookInHand,
  entry: Partial<EstimateEntry> = {},
  settings: Partial<MoneySettings> = {},
  of: Partial<Needs> = {},
): Estimate =>
  estimate({
    needs: { ...needs, ...of },
    entry: { ...plainEntry, ...entry },
    book,
    settings: { ...standardMoney, ...settings },
    times: standardTimes,
    day,
  })

export const line = ({ lines }: Estimate, id: string) => {
  const found = lines.find((one) => one.id === id)
  if (!found) throw new Error(`no line ${id} in ${lines.map((one) => one.id).join(', ')}`)
  return found
}
