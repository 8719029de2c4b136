import type { BuyingPlan } from '../shared/cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../shared/cutting/buyingPlan/request.ts'
import type { Stage } from '../shared/job/job.ts'
import type { NewOrderLength, NewOrderLine } from '../shared/ordering/orderLayout.ts'
import type { BracePair, Order, OrderRow } from '../shared/ordering/orderModel.ts'
import type { Connection } from './connection.ts'
import { nextOrderNumber } from './orderNumber.ts'
import { orderReading } from './orderRows.ts'

/** A job of an order. stageBefore: where it stood when the order moves it on, null where it stays. */
export type OrderedJob = { jobId: number; stageBefore: Stage | null }

/** An order about to be placed, its plan checked. */
export type NewOrder = {
  jobs: OrderedJob[]
  placedOn: string
  note: string
  plan: BuyingPlan
  request: BuyRequest
  pairs: BracePair[]
  lines: NewOrderLine[]
  lengths: NewOrderLength[]
  sample: boolean
}

export type OrdersRoom = {
  /** The latest 300 orders and all that are still open, the latest first, a step at a time. */
  listSteps: () => Generator<void, OrderRow[]>
  /** Every order that a job's timber was on, the latest first. */
  ofJob: (jobId: number) => OrderRow[]
  open: (id: number) => Order | undefined
  /** The number of the order that a job's timber stands on; null where it is on none, cancelled ones left out. */
  standingFor: (jobId: number) => string | null
  /** Puts an order down whole and sets its pieces of the rack aside. */
  place: (order: NewOrder) => Order
  /** Puts down that so many lengths of a row came. More than are outstanding are refused by the book. */
  receive: (lineId: number, count: number, on: string) => void
  /** Puts down that so many lengths were cut. More than were planned are refused by the book. */
  cut: (lengthId: number, count: number, on: string) => void
  /** The job that a length's offcuts are left from; null where it is of none. */
  leftFrom: (lengthId: number) => number | null
  /** Cancels an order nothing has come of: its pieces of the rack are free again. Gives its jobs; undefined when there is none that stands. */
  cancel: (id: number) => OrderedJob[] | undefined
}

const statements = ({ db }: Connection) => ({
  standing: db
    .prepare<[number], string>(
      `SELECT orders.number FROM order_jobs JOIN orders ON orders.id = order_jobs.order_id
       WHERE order_jobs.job_id = ? AND orders.cancelled_at IS NULL`,
    )
    .pluck(),
  place: db.prepare(
    `INSERT INTO orders (number, placed_on, note, cost_pence, request, plan, pairs, added_at, sample) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  ),
  job: db.prepare('INSERT INTO order_jobs (order_id, job_id, stage_before) VALUES (?, ?, ?)'),
  line: db.prepare(
    `INSERT INTO order_lines (order_id, item_id, supplier_id, price_id, length_mm, count, price_pence) VALUES (?, ?, ?, ?, ?, ?, ?)`,
  ),
  length: db.prepare(
    `INSERT INTO order_lengths (order_id, item_id, source, length_mm, count, cuts, offcut_mm, left_from) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
  ),
  keep: db.prepare('INSERT INTO order_rack (length_id, piece_id) VALUES (?, ?)'),
  receive: db.prepare(
    'INSERT INTO order_receipts (line_id, count, received_on, added_at) VALUES (?, ?, ?, ?)',
  ),
  cut: db.prepare('INSERT INTO order_cuts (length_id, count, cut_on, added_at) VALUES (?, ?, ?, ?)'),
  leftFrom: db.prepare<[number], number | null>('SELECT left_from FROM order_lengths WHERE id = ?').pluck(),
  cancel: db.prepare('UPDATE orders SET cancelled_at = ? WHERE id = ? AND cancelled_at IS NULL'),
  jobs: db.prepare<[number], OrderedJob>(
    'SELECT job_id AS jobId, stage_before AS stageBefore FROM order_jobs WHERE order_id = ? ORDER BY job_id',
  ),
})

type Statements = ReturnType<typeof statements>

const rowOf = ({ lastInsertRowid }: { lastInsertRowid: number | bigint }): number => Number(lastInsertRowid)

function addRows(run: Statements, orderId: number, { jobs, lines, lengths }: NewOrder): void {
  for (const { jobId, stageBefore } of jobs) run.job.run(orderId, jobId, stageBefore)
  for (const { itemId, supplierId, priceId, length, count, pence } of lines)
    run.line.run(orderId, itemId, supplierId, priceId, length, count, pence)
  for (const { itemId, from, length, count, cuts, offcut, leftFrom, rackPieceIds } of lengths) {
    const cells = [orderId, itemId, from, length, count, JSON.stringify(cuts), offcut, leftFrom]
    const lengthId = rowOf(run.length.run(...cells))
    for (const pieceId of rackPieceIds) run.keep.run(lengthId, pieceId)
  }
}

/** The orders' room. An order is put down once, with its plan frozen; what comes of it is added, never altered. */
export function ordersRoom(connection: Connection): OrdersRoom {
  const { db, now, read, write } = connection
  const run = statements(connection)
  const reading = orderReading(connection)

  const place = (order: NewOrder): Order => {
    const { placedOn, note, plan, request, pairs, sample } = order
    const number = nextOrderNumber(db, placedOn, sample)
    const texts = [request, plan, pairs].map((frozen) => JSON.stringify(frozen))
    const row = run.place.run(number, placedOn, note, plan.cost, ...texts, now(), sample ? 1 : 0)
    addRows(run, rowOf(row), order)
    const placed = reading.one(rowOf(row))
    if (!placed) throw new Error(`order ${number} was written and can't be read`)
    return placed
  }

  return {
    listSteps: reading.rowSteps,
    ofJob: (jobId) => read(() => reading.ofJob(jobId)),
    open: (id) => read(() => reading.one(id)),
    standingFor: (jobId) => read(() => run.standing.get(jobId)) ?? null,
    place: (order) => write(() => place(order)),
    receive: (lineId, count, on) => void write(() => run.receive.run(lineId, count, on, now())),
    cut: (lengthId, count, on) => void write(() => run.cut.run(lengthId, count, on, now())),
    leftFrom: (lengthId) => read(() => run.leftFrom.get(lengthId)) ?? null,
    cancel: (id) => write(() => (run.cancel.run(now(), id).changes > 0 ? run.jobs.all(id) : undefined)),
  }
}
