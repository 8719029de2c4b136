import type { BuyingPlan } from '../shared/cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../shared/cutting/buyingPlan/request.ts'
import type {
  BracePair,
  Order,
  OrderLength,
  OrderLine,
  OrderRow,
  OrderState,
} from '../shared/ordering/orderModel.ts'
import { BookProblem } from './bookProblem.ts'
import type { Connection } from './connection.ts'

type StoredRow = Omit<OrderRow, 'jobs' | 'suppliers' | 'sample'> & { sample: number }
type StoredOrder = StoredRow & { note: string; plan: string; request: string; pairs: string }
type StoredLength = Omit<OrderLength, 'cuts' | 'rackPieceIds'> & { cuts: string; rackPieceIds: string }
type OrderJob = OrderRow['jobs'][number]

/** cancelled; cut when every length is; received when everything that was asked for came; else placed. */
const state = `CASE
    WHEN orders.cancelled_at IS NOT NULL THEN 'cancelled'
    WHEN NOT EXISTS (SELECT 1 FROM order_lengths AS l WHERE l.order_id = orders.id
      AND l.count > (SELECT ifnull(sum(c.count), 0) FROM order_cuts AS c WHERE c.length_id = l.id AND c.taken_back_at IS NULL)) THEN 'cut'
    WHEN NOT EXISTS (SELECT 1 FROM order_lines AS l WHERE l.order_id = orders.id
      AND l.count > (SELECT ifnull(sum(r.count), 0) FROM order_receipts AS r WHERE r.line_id = l.id AND r.taken_back_at IS NULL)) THEN 'received'
    ELSE 'placed'
  END`

const rowColumns = `orders.id, orders.number, orders.placed_on AS placedOn, ${state} AS state, orders.cost_pence AS cost, orders.sample`

const lineColumns = `order_lines.id, order_lines.item_id AS itemId, items.name, json_extract(items.facts, '$.species') AS species,
  order_lines.supplier_id AS supplierId, ifnull(suppliers.name, 'no merchant named') AS supplier, order_lines.length_mm AS length,
  order_lines.count, order_lines.price_pence AS pence,
  (SELECT ifnull(sum(count), 0) FROM order_receipts WHERE line_id = order_lines.id AND taken_back_at IS NULL) AS received`

const lengthColumns = `order_lengths.id, order_lengths.item_id AS itemId, items.name, order_lengths.source AS "from",
  order_lengths.length_mm AS length, order_lengths.count, order_lengths.cuts, order_lengths.offcut_mm AS offcut,
  (SELECT ifnull(sum(count), 0) FROM order_cuts WHERE length_id = order_lengths.id AND taken_back_at IS NULL) AS done,
  (SELECT json_group_array(piece_id ORDER BY piece_id) FROM order_rack WHERE length_id = order_lengths.id) AS rackPieceIds`

const jobsOf = `FROM order_jobs JOIN jobs ON jobs.id = order_jobs.job_id JOIN customers ON customers.id = jobs.customer_id`
const linesOf = `FROM order_lines JOIN items ON items.id = order_lines.item_id LEFT JOIN suppliers ON suppliers.id = order_lines.supplier_id`

/** Every question that is put to the store about orders. */
const questions = ({ db }: Connection) => ({
  newest: db
    .prepare<[number], number>('SELECT id FROM orders ORDER BY placed_on DESC, id DESC LIMIT ?')
    .pluck(),
  last: db.prepare<[], number | null>('SELECT max(id) FROM orders').pluck(),
  open: db
    .prepare<[number, number], number>(
      `SELECT id FROM orders WHERE id > ? AND id <= ? AND cancelled_at IS NULL AND (${state}) <> 'cut'`,
    )
    .pluck(),
  ofJob: db.prepare<[number], number>('SELECT order_id FROM order_jobs WHERE job_id = ?').pluck(),
  row: db.prepare<[number], StoredRow>(`SELECT ${rowColumns} FROM orders WHERE id = ?`),
  one: db.prepare<[number], StoredOrder>(
    `SELECT ${rowColumns}, note, plan, request, pairs FROM orders WHERE id = ?`,
  ),
  jobs: db.prepare<[number], OrderJob>(
    `SELECT jobs.id AS jobId, jobs.number, customers.name AS customer ${jobsOf} WHERE order_id = ? ORDER BY jobs.id`,
  ),
  suppliers: db
    .prepare<[number], string>(
      `SELECT DISTINCT ifnull(suppliers.name, 'no merchant named') AS name ${linesOf} WHERE order_id = ? ORDER BY name`,
    )
    .pluck(),
  lines: db.prepare<[number], OrderLine>(
    `SELECT ${lineColumns} ${linesOf} WHERE order_id = ? ORDER BY order_lines.id`,
  ),
  lengths: db.prepare<[number], StoredLength>(
    `SELECT ${lengthColumns} FROM order_lengths JOIN items ON items.id = order_lengths.item_id WHERE order_id = ? ORDER BY order_lengths.id`,
  ),
})

/** What was frozen is the program's own writing: it was checked when it went in, and is only ever read back. */
function frozen<T extends object>(number: string, text: string): T {
  const read: unknown = JSON.parse(text)
  if (typeof read === 'object' && read !== null) return read as T
  throw new BookProblem(
    'damaged',
    `Order ${number} can’t be read: the job book is damaged there. Bring back a copy of the book.`,
  )
}

/** As many of the latest orders are listed, besides those that something is still to come of. */
export const mostOrders = 300

/** Orders looked at in one step for whether they are still open: some 5 ms. */
const lookedAtOnce = 1000

export type OrderReading = {
  /** The latest orders and all that are still open, the latest first, a step at a time. */
  rowSteps: () => Generator<void, OrderRow[]>
  /** Every order that a job's timber was on, the latest first. */
  ofJob: (jobId: number) => OrderRow[]
  one: (id: number) => Order | undefined
}

/** The latest first: by the day, then as they were put down. */
const latestFirst = (a: OrderRow, b: OrderRow): number =>
  a.placedOn === b.placedOn ? b.id - a.id : a.placedOn < b.placedOn ? 1 : -1

/** The lists of orders: the latest and those still open among many, and those of one job. */
function orderLists(
  ask: ReturnType<typeof questions>,
  rowFrom: (stored: StoredRow) => OrderRow,
): Pick<OrderReading, 'rowSteps' | 'ofJob'> {
  const rowsOf = (ids: readonly number[]): OrderRow[] => ids.flatMap((id) => ask.row.all(id)).map(rowFrom)
  function* rowSteps(): Generator<void, OrderRow[]> {
    const ids = new Set(ask.newest.all(mostOrders))
    const last = ask.last.get() ?? 0
    for (let from = 0; from < last; from += lookedAtOnce) {
      for (const id of ask.open.all(from, from + lookedAtOnce)) ids.add(id)
      yield
    }
    const rows: OrderRow[] = []
    for (const id of ids) {
      rows.push(...rowsOf([id]))
      yield
    }
    return rows.sort(latestFirst)
  }
  return { rowSteps, ofJob: (jobId) => rowsOf(ask.ofJob.all(jobId)).sort(latestFirst) }
}

/** Reads orders out of the book, each with what came and what was cut so far. */
export function orderReading(connection: Connection): OrderReading {
  const ask = questions(connection)
  const rowFrom = ({ id, number, placedOn, state: stands, cost, sample }: StoredRow): OrderRow => ({
    ...{ id, number, placedOn, cost },
    state: stands satisfies OrderState,
    jobs: ask.jobs.all(id),
    suppliers: ask.suppliers.all(id),
    sample: sample === 1,
  })
  const lengthFrom =
    (number: string) =>
    ({ cuts, rackPieceIds, ...rest }: StoredLength): OrderLength => ({
      ...rest,
      cuts: frozen<OrderLength['cuts']>(number, cuts),
      rackPieceIds: frozen<number[]>(number, rackPieceIds),
    })
  const one = (id: number): Order | undefined => {
    const found = ask.one.get(id)
    if (!found) return undefined
    const { number, note } = found
    return {
      ...rowFrom(found),
      note,
      plan: frozen<BuyingPlan>(number, found.plan),
      request: frozen<BuyRequest>(number, found.request),
      pairs: frozen<BracePair[]>(number, found.pairs),
      lines: ask.lines.all(id),
      lengths: ask.lengths.all(id).map(lengthFrom(number)),
    }
  }
  return { ...orderLists(ask, rowFrom), one }
}
