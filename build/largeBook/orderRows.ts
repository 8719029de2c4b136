import type { Connection } from '../../db/connection.ts'
import type { Draws } from '../bench/seeded.ts'

/** So many jobs of those hung had their timber bought on each order. */
const jobsAnOrder = 5

type Priced = { itemId: number; supplierId: number | null; priceId: number }

const writing = (db: Connection['db']) => ({
  order: db.prepare(
    `INSERT INTO orders (number, placed_on, cost_pence, request, plan, pairs, added_at) VALUES (?, ?, ?, '{}', '{}', '[]', ?)`,
  ),
  job: db.prepare('INSERT INTO order_jobs (order_id, job_id, stage_before) VALUES (?, ?, ?)'),
  line: db.prepare(
    `INSERT INTO order_lines (order_id, item_id, supplier_id, price_id, length_mm, count, price_pence) VALUES (?, ?, ?, ?, ?, ?, ?)`,
  ),
  came: db.prepare('INSERT INTO order_receipts (line_id, count, received_on, added_at) VALUES (?, ?, ?, ?)'),
  length: db.prepare(
    `INSERT INTO order_lengths (order_id, item_id, source, length_mm, count, cuts, offcut_mm) VALUES (?, ?, 'merchant', ?, ?, '[]', ?)`,
  ),
  cut: db.prepare('INSERT INTO order_cuts (length_id, count, cut_on, added_at) VALUES (?, ?, ?, ?)'),
})

/**
 * Writes an order for every five jobs that are hung: rows, lengths, what came, what was cut. Their plans are frozen empty. To be called inside one
 * writing.
 */
export function orderRows({ db }: Connection, { between, one }: Draws): void {
  const hung = db
    .prepare<[], { id: number; at: string }>(
      "SELECT id, created_at AS at FROM jobs WHERE stage = 'hung' AND sample = 0 ORDER BY id",
    )
    .all()
  const priced = db
    .prepare<[], Priced>(
      `SELECT item_id AS itemId, supplier_id AS supplierId, min(prices.id) AS priceId FROM prices JOIN items ON items.id = item_id
       WHERE items.kind = 'timber' GROUP BY item_id, supplier_id ORDER BY 1, 2`,
    )
    .all()
  const { order, job, line, came, length, cut } = writing(db)
  for (let from = 0; from + jobsAnOrder <= hung.length; from += jobsAnOrder) {
    const jobs = hung.slice(from, from + jobsAnOrder)
    const at = jobs.at(-1)?.at ?? ''
    const on = at.slice(0, 10)
    const number = `${on.slice(0, 4)}-T${String(from / jobsAnOrder + 1).padStart(2, '0')}`
    const orderId = Number(order.run(number, on, between(4000, 60_000), at).lastInsertRowid)
    for (const { id } of jobs) job.run(orderId, id, 'quoted')
    for (let place = 0; place < 3; place += 1) {
      const { itemId, supplierId, priceId } = one(priced)
      const [mm, count] = [one([2400, 3000, 3600, 4200, 4800]), between(1, 12)]
      const cells = [orderId, itemId, supplierId, priceId, mm, count, between(400, 4000)]
      came.run(Number(line.run(...cells).lastInsertRowid), count, on, at)
      cut.run(Number(length.run(orderId, itemId, mm, count, between(0, 900)).lastInsertRowid), count, on, at)
    }
  }
}
