import { answer } from '../../electron/handlers/answer.ts'
import type { Context } from '../../electron/handlers/context.ts'
import type { Book } from '../../db/open.ts'
import { design } from '../../shared/gate/design.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { needsOf } from '../../shared/pricing/needsOf.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { NewPrice, PriceLine } from '../../shared/pricing/price.ts'
import type { Draws } from './seeded.ts'

/** Prices every line of the book as a merchant's next list would, each up or down by its own share. */
export const nextList = (lines: readonly PriceLine[], { between }: Draws, startsOn: string): NewPrice[] =>
  lines.map((line) => ({ ...line, pence: pence(between(95, 4200)), startsOn }))

/** Lengths the merchant keeps of all timber, mm: the quotations are made with whole lengths, and priced again with the same. */
const lengthsKept = [2400, 3000, 3600, 4200, 4800, 5400]

type Adding = { book: Book; supplierId: number; lines: PriceLine[]; known: Set<string> }

function addNeeds({ book, supplierId, lines, known }: Adding, spec: GateSpec): void {
  const outcome = design(spec)
  if (!outcome.made) throw new Error('a gate to be quoted can’t be made')
  const needs = needsOf(spec, outcome.design)
  const add = (
    name: string,
    entry: Parameters<Book['prices']['addItem']>[0],
    unit: 'metre' | 'box' | 'each',
  ) => {
    if (known.has(name)) return
    known.add(name)
    const { id: itemId } = book.prices.addItem(entry)
    if (unit === 'metre')
      book.prices.supply({ itemId, supplierId, code: '', lengths: lengthsKept, usual: true })
    lines.push({ itemId, supplierId, unit, size: unit === 'box' ? 200 : null })
  }
  for (const { section, use } of needs.timber) {
    const { species, thickness, width, tongue = null, groove = null } = section
    const name = `${species} ${thickness} × ${width} ${tongue}`
    const sizes = { exThickness: thickness + 5, exWidth: width + 6, thickness, width, tongue, groove }
    add(name, { kind: 'timber', name, facts: { use, species, ...sizes, treated: false } }, 'metre')
  }
  for (const { form, diameter, length } of needs.fixings) {
    const name = `${form} ${diameter} × ${length}`
    add(name, { kind: 'fixing', name, facts: { form, diameter, length } }, 'box')
  }
  for (const { piece, name } of needs.ironmongery)
    add(`${piece} ${name}`, { kind: 'ironmongery', name, facts: { piece: null } }, 'each')
}

/** A price book of so many lines, among them all that the gates take. */
function fillLines(book: Book, specs: readonly GateSpec[], count: number): PriceLine[] {
  const supplierId = book.prices.addSupplier({ name: 'Great Yard', phone: '', notes: '' }).id
  const lines: PriceLine[] = []
  for (const rate of ['hour', 'site hour'] as const) {
    const itemId = book.prices.addItem({ kind: 'work', name: rate, facts: { rate } }).id
    lines.push({ itemId, supplierId: null, unit: 'hour', size: null })
  }
  const adding: Adding = { book, supplierId, lines, known: new Set() }
  for (const spec of specs) addNeeds(adding, spec)
  for (let place = lines.length; place < count; place += 1) {
    const facts = { form: 'bolt' as const, diameter: 8, length: 20 + place / 10 }
    const { id: itemId } = book.prices.addItem({ kind: 'fixing', name: `bolt ${place}`, facts })
    lines.push({ itemId, supplierId, unit: 'each', size: null })
  }
  return lines
}

async function quote(context: Context, spec: GateSpec, place: number): Promise<void> {
  const customer = { name: `Customer ${place}`, address: '', town: 'Bench', phone: '', email: '' }
  const job = context.book.jobs.create({ customer, title: 'Gate', due: null, unit: 'mm', spec })
  const issued = await answer(context, 'quotations.issue', {
    jobId: job.id,
    format: 'a4',
    version: job.version,
  })
  if (!issued.ok) throw new Error(`a quotation was refused: ${JSON.stringify(issued.problems)}`)
}

export type PricedBook = { lines: PriceLine[]; specs: readonly GateSpec[] }

/** Fills a book with lines, a few earlier lists of prices for all of them, and an open quotation for each gate. Gives the lines. */
export async function fillPricedBook(
  context: Context,
  { specs, count, draws }: { specs: readonly GateSpec[]; count: number; draws: Draws },
): Promise<PriceLine[]> {
  const { book } = context
  const lines = book.together(() => fillLines(book, specs, count))
  for (const startsOn of ['2024-03-01', '2024-10-01', '2025-04-01', '2025-11-01'])
    book.rises.add({ prices: nextList(lines, draws, startsOn), origin: startsOn, stamp: null })
  for (const [place, spec] of specs.entries()) await quote(context, spec, place)
  return lines
}
