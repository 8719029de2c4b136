import type { PriceItem } from '../../shared/pricing/item.ts'
import { pence, toPence } from '../../shared/pricing/pence.ts'
import type { NewPrice } from '../../shared/pricing/price.ts'
import type { Book } from '../open.ts'
import { dayFrom } from './dayFrom.ts'
import {
  sampleFinishes,
  sampleFixings,
  sampleIronmongery,
  sampleLengths,
  sampleRates,
  sampleSuppliers,
  sampleTimberPrices,
  type SampleSupplier,
  type SampleTimber,
} from './samplePriceList.ts'

/** A price of the opening list, with its item and who sells it. */
type Opening = Omit<NewPrice, 'startsOn'> & { kind: PriceItem['kind']; sells: SampleSupplier | null }

/** A rise of the made-up merchants: how long ago it started (days), on what, by how many hundredths of a percent. */
type SampleRise = { ago: number; origin: string; on: (line: Opening) => boolean; bp: number }

const ofSawmill = ({ sells }: Opening): boolean => sells === 'sawmill'
const ofYard = ({ sells }: Opening): boolean => sells === 'yard'
const ofSmith = ({ sells }: Opening): boolean => sells === 'smith'
const ofWork = ({ kind }: Opening): boolean => kind === 'work'

/** Two years of rises, one fall among them, one still ahead. */
const sampleRises: SampleRise[] = [
  { ago: 610, origin: 'Sawmill’s autumn list', on: ofSawmill, bp: 450 },
  { ago: 540, origin: 'Ironmongers’ list', on: ofSmith, bp: 380 },
  { ago: 480, origin: '6 % on all work', on: ofWork, bp: 600 },
  { ago: 390, origin: 'Yard’s new list', on: ofYard, bp: 700 },
  { ago: 300, origin: 'Sawmill’s summer list', on: ofSawmill, bp: -220 },
  { ago: 215, origin: 'Ironmongers’ list', on: ofSmith, bp: 290 },
  { ago: 120, origin: 'Sawmill’s spring list', on: ofSawmill, bp: 640 },
  { ago: 100, origin: '5 % on all work', on: ofWork, bp: 500 },
  { ago: -25, origin: 'Yard’s list, as announced', on: ofYard, bp: 480 },
]

type Sellers = Record<SampleSupplier, number>

function timberLines(book: Book, sellers: Sellers, timber: SampleTimber): Opening[] {
  const { section, use, ex, pence: asked } = timber
  const { name, species, thickness, width, tongue = null, groove = null } = section
  const sizes = { exThickness: ex[0], exWidth: ex[1], thickness, width, tongue, groove }
  const facts = { use, species, ...sizes, treated: false }
  const itemId = book.prices.addItem({ kind: 'timber', name, facts }, true).id
  return asked.map(([sells, amount], place) => {
    const supplierId = sellers[sells]
    book.prices.supply({ itemId, supplierId, code: '', lengths: sampleLengths, usual: place === 0 })
    return { itemId, supplierId, unit: 'metre', size: null, pence: pence(amount), kind: 'timber', sells }
  })
}

function smithLines(book: Book, { smith: supplierId }: Sellers): Opening[] {
  const sold = { supplierId, sells: 'smith' as const }
  const pieces = sampleIronmongery.map(({ name, piece, unit, pence: amount }): Opening => {
    const { id: itemId } = book.prices.addItem({ kind: 'ironmongery', name, facts: { piece } }, true)
    return { ...sold, itemId, unit, size: null, pence: pence(amount), kind: 'ironmongery' }
  })
  const fixings = sampleFixings.map(({ name, inBox, pence: amount, ...facts }): Opening => {
    const { id: itemId } = book.prices.addItem({ kind: 'fixing', name, facts }, true)
    return { ...sold, itemId, unit: 'box', size: inBox, pence: pence(amount), kind: 'fixing' }
  })
  const finishes = sampleFinishes.flatMap(({ name, tins, ...facts }) => {
    const { id: itemId } = book.prices.addItem({ kind: 'finish', name, facts }, true)
    return tins.map(([size, amount]): Opening => ({
      ...sold,
      ...{ itemId, unit: 'tin', size, pence: pence(amount), kind: 'finish' },
    }))
  })
  const lines = [...pieces, ...fixings, ...finishes]
  for (const itemId of new Set(lines.map((line) => line.itemId)))
    book.prices.supply({ itemId, supplierId, code: '', lengths: [], usual: true })
  return lines
}

const rateLines = (book: Book): Opening[] =>
  sampleRates.map(({ name, rate, unit, pence: amount }) => {
    const { id: itemId } = book.prices.addItem({ kind: 'work', name, facts: { rate } }, true)
    return { itemId, supplierId: null, unit, size: null, pence: pence(amount), kind: 'work', sells: null }
  })

const newPrice = (
  { itemId, supplierId, unit, size }: Opening,
  amount: number,
  startsOn: string,
): NewPrice => ({
  itemId,
  supplierId,
  unit,
  size,
  pence: toPence(amount),
  startsOn,
})

/** Three made-up merchants with all that the sample gates take, the workshop's own rates, and two years of their prices. To be called inside one writing. */
export function fillSamplePrices(book: Book, today: string): void {
  const ids = Object.entries(sampleSuppliers).map(([key, entry]) => [
    key,
    book.prices.addSupplier(entry, true).id,
  ])
  const sellers = Object.fromEntries(ids) as Sellers
  const lines = [
    ...sampleTimberPrices.flatMap((timber) => timberLines(book, sellers, timber)),
    ...smithLines(book, sellers),
    ...rateLines(book),
  ]
  const stands = new Map(lines.map((line) => [line, Number(line.pence)]))
  const add = (ago: number, origin: string, of: Opening[]): void => {
    const startsOn = dayFrom(today, -ago)
    const prices = of.map((line) => newPrice(line, stands.get(line) ?? 0, startsOn))
    const at = `${ago > 0 ? startsOn : today}T08:00:00.000Z`
    book.rises.add({ prices, origin, stamp: null, sample: true, at })
  }
  add(730, 'Opening list', lines)
  for (const { ago, origin, on, bp } of sampleRises) {
    const risen = lines.filter(on)
    for (const line of risen) stands.set(line, toPence(((stands.get(line) ?? 0) * (10_000 + bp)) / 10_000))
    add(ago, origin, risen)
  }
}
