import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import type { Job } from '../../shared/job/job.ts'
import type { Order, OrderTask } from '../../shared/ordering/orderModel.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { fillPrices, metrePrice, type SmallBook } from '../fixtures/prices.ts'
import { makeableJob, opened, type Opened } from './opened.ts'

export type OrderingBook = Opened & SmallBook & { jobs: Job[] }

/** A real book with so many jobs that can be made, and timber of one yard in lengths of 3, 4.2 and 4.8 m. */
export async function orderingBook(jobs = 2, context = opened()): Promise<OrderingBook> {
  const small = fillPrices(context.book)
  const { items, supplier: supplierId } = small
  for (const use of ['boards', 'ledges', 'braces']) {
    const itemId = items[use] ?? 0
    context.book.prices.supply({ itemId, supplierId, code: '', lengths: [3000, 4200, 4800], usual: true })
  }
  const made: Job[] = []
  for (let count = 0; count < jobs; count += 1) made.push(await makeableJob(context))
  return { ...context, ...small, jobs: made }
}

export const idsOf = (jobs: readonly Job[]): number[] => jobs.map(({ id }) => id)

/** The cheapest plan for a request, as the window works it out. */
export function planOf(request: OrderTask['requests']['paired']): BuyingPlan {
  const plan = request ? buyingPlan(request) : undefined
  if (!plan?.ok) throw new Error(`no plan: ${JSON.stringify(plan)}`)
  return plan.value
}

export type Placing = { jobIds: number[]; stamp: string; paired: boolean; plan: unknown; note: string }

/** What a window sends to place an order for some jobs. */
export async function placing(book: OrderingBook, jobs: readonly Job[], paired = true): Promise<Placing> {
  const jobIds = idsOf(jobs)
  const { stamp, requests } = await book.ask('orders.task', { jobIds })
  const plan = planOf(paired ? requests.paired : requests.plain)
  return { jobIds, stamp, paired, plan, note: ' ring before they come ' }
}

export const placed = async (book: OrderingBook, jobs: readonly Job[], paired = true): Promise<Order> =>
  book.ask('orders.place', await placing(book, jobs, paired))

/** Books in everything that an order asked for. */
export const receivedWhole = ({ ask }: Opened, { id, lines }: Order): Promise<Order> =>
  ask('orders.receive', {
    id,
    lines: lines.map((line) => ({ lineId: line.id, count: line.count })),
    receivedOn: '2026-03-09',
  })

/** Half as much again on the boards. */
export const raiseBoards = ({ book, items, supplier }: OrderingBook): void =>
  void book.rises.add({
    prices: [metrePrice(items['boards'] ?? 0, supplier, { pence: pence(316), startsOn: '2026-03-01' })],
    origin: 'half as much again',
    stamp: null,
  })
