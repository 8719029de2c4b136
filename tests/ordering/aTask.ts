import type { GateSpec } from '../../shared/gate/spec.ts'
import { standardCutting } from '../../shared/ordering/cuttingSettings.ts'
import type { JobToOrder } from '../../shared/ordering/jobTimber.ts'
import type { OrderTask, RackPiece } from '../../shared/ordering/orderModel.ts'
import { orderTask, type TaskAsked } from '../../shared/ordering/orderTask.ts'
import { standingBook } from '../../shared/pricing/standingBook.ts'
import { designOf, gate } from '../fixtures/gates.ts'
import { timberItem } from '../fixtures/prices.ts'
import { emptyBook, type BookInHand } from '../pricing/aBook.ts'

export const day = '2026-06-15'

/** A job of the tests' own gate. */
export function jobOf(jobId: number, spec: GateSpec = gate, chosen: Record<string, number> = {}): JobToOrder {
  const number = `2026-${String(jobId).padStart(3, '0')}`
  return { jobId, number, customer: 'Peg Sash', title: 'Side gate', spec, design: designOf(spec), chosen }
}

/** A book with the sections of the tests' own gate, none of them priced: 1 boards, 2 ledges, 3 braces. */
export function timberBook(): BookInHand {
  const book = emptyBook()
  for (const use of ['boards', 'ledges', 'braces'] as const) {
    const section = use === 'boards' ? gate.boards.section : gate[use]?.section
    if (!section) throw new Error(`the tests' gate has no ${use}`)
    const { name, facts } = timberItem(section, use)
    book.addItem('timber', name, facts)
  }
  return book
}

/** The same, sold by the metre at £2.15, £3.05, £2.75 in lengths of 3, 4.2 and 4.8 m by Alder Yard. */
export function pricedBook(lengths: number[] = [3000, 4200, 4800]): BookInHand {
  const book = timberBook()
  for (const [itemId, sum] of [
    [1, 215],
    [2, 305],
    [3, 275],
  ] as const) {
    book.addPrice({ itemId, unit: 'metre' }, sum)
    book.supplies.push({ itemId, supplierId: 1, code: '', lengths, usual: true })
  }
  return book
}

export const rackPiece = (id: number, given: Partial<RackPiece> = {}): RackPiece => ({
  ...{ id, itemId: 1, name: gate.boards.section.name, species: gate.boards.section.species, length: 1900 },
  ...{ place: 'by the door', jobId: null, jobNumber: null, note: '', addedOn: '2026-05-11', keptFor: null },
  ...given,
})

export const taskOf = (
  book: BookInHand,
  jobs: JobToOrder[],
  given: Partial<Pick<TaskAsked, 'rack' | 'cutting'>> = {},
): OrderTask =>
  orderTask({ jobs, book: standingBook(book, day), rack: [], cutting: standardCutting, ...given })
