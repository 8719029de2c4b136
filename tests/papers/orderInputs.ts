import type { TimberOrderInput } from '../../shared/papers/order/timberOrderInput.ts'
import { idsOf, orderingBook, placed } from '../handlers/anOrder.ts'
import { business } from './quotationInputs.ts'

/** An order placed for so many jobs over a rack with some pieces on it, ready to be printed; all of it invented. */
export async function orderInput(
  jobs: number,
  parts: Partial<TimberOrderInput> = {},
): Promise<TimberOrderInput> {
  const book = await orderingBook(jobs)
  const { sections } = await book.ask('orders.task', { jobIds: idsOf(book.jobs) })
  const piece = { jobId: null, count: 1 }
  for (const { itemId } of sections) {
    await book.ask('rack.add', { ...piece, itemId, length: 1915, place: 'shelf B, left', note: '' })
    await book.ask('rack.add', {
      ...piece,
      itemId,
      length: 1210,
      place: 'behind the door',
      note: 'end shake',
    })
  }
  const order = await placed(book, book.jobs)
  const rack = await book.ask('rack.list', {})
  return {
    ...{ order, rack, business },
    workshop: 'Workshop of the tests',
    dust: { treated: false, harmful: [] },
    currency: 'GBP',
    unit: 'mm',
    format: 'a4',
    ...parts,
  }
}
