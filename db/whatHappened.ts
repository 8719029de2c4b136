import type { Happening } from '../shared/happened/happening.ts'
import { whatHappened, type JobPast } from '../shared/happened/whatHappened.ts'
import type { LengthUnit } from '../shared/job/job.ts'
import type { Connection } from './connection.ts'

export type HappenedRoom = {
  /** What happened when on a job, oldest first; undefined when there is no such job. */
  list: (jobId: number) => Happening[] | undefined
}

/** The latest changes that are told: more than anybody enters in one job. */
const mostChanges = 20_000

type Head = { number: string; createdAt: string; unit: LengthUnit }
type StoredChange = { path: string; before: string; after: string; at: string }
type Of<K extends keyof JobPast> = JobPast[K] extends readonly (infer T)[] ? T : never

const ofOrders = 'JOIN orders ON orders.id = order_jobs.order_id WHERE order_jobs.job_id = ?'

const statements = ({ db }: Connection) => ({
  head: db.prepare<[number], Head>('SELECT number, created_at AS createdAt, unit FROM jobs WHERE id = ?'),
  // The words a length was typed in go with its size and are never told.
  changes: db.prepare<[number, number], StoredChange>(
    `SELECT path, before, after, at FROM (
       SELECT id, path, before, after, at FROM changes WHERE job_id = ? AND path NOT GLOB 'typed.*' ORDER BY id DESC LIMIT ?
     ) ORDER BY id`,
  ),
  papers: db.prepare<[number], Of<'papers'>>(
    'SELECT kind, revision, issued_at AS at FROM papers WHERE job_id = ? ORDER BY id',
  ),
  acceptances: db.prepare<[number], Of<'acceptances'>>(
    `SELECT papers.revision, accepted_on AS "on", note, added_at AS at FROM acceptances JOIN papers ON papers.id = acceptances.paper_id
     WHERE papers.job_id = ? ORDER BY added_at`,
  ),
  orders: db.prepare<[number], Of<'orders'>>(
    `SELECT orders.number, orders.added_at AS at, orders.cancelled_at AS cancelledAt,
       (SELECT ifnull(sum(count), 0) FROM order_lines WHERE order_lines.order_id = orders.id) AS lengths
     FROM order_jobs ${ofOrders} ORDER BY orders.id`,
  ),
  received: db.prepare<[number], Of<'received'>>(
    `SELECT orders.number, order_receipts.count, received_on AS "on", order_receipts.added_at AS at FROM order_receipts
       JOIN order_lines ON order_lines.id = order_receipts.line_id JOIN order_jobs ON order_jobs.order_id = order_lines.order_id
       ${ofOrders} ORDER BY order_receipts.id`,
  ),
  cut: db.prepare<[number], Of<'cut'>>(
    `SELECT orders.number, order_cuts.count, cut_on AS "on", order_cuts.added_at AS at FROM order_cuts
       JOIN order_lengths ON order_lengths.id = order_cuts.length_id JOIN order_jobs ON order_jobs.order_id = order_lengths.order_id
       ${ofOrders} ORDER BY order_cuts.id`,
  ),
  work: db.prepare<[number], Of<'work'>>(
    'SELECT what, quantity, note, added_at AS at FROM work_done WHERE job_id = ? ORDER BY id',
  ),
  // Those taken away later were written all the same.
  notes: db.prepare<[number], Of<'notes'>>(
    'SELECT words, added_at AS at FROM job_notes WHERE job_id = ? ORDER BY id',
  ),
  photographs: db.prepare<[number], Of<'photographs'>>(
    'SELECT added_at AS at FROM photographs WHERE job_id = ? ORDER BY id',
  ),
})

/** The room of a job's log. It keeps nothing: what it tells is read from what is kept of the job. */
export function happenedRoom(connection: Connection): HappenedRoom {
  const run = statements(connection)
  const past = (id: number): JobPast | undefined => {
    const head = run.head.get(id)
    if (!head) return undefined
    const changes = run.changes.all(id, mostChanges).map(({ path, before, after, at }) => ({
      ...{ path, at, before: JSON.parse(before) as unknown, after: JSON.parse(after) as unknown },
    }))
    return {
      ...head,
      changes,
      ...{ papers: run.papers.all(id), acceptances: run.acceptances.all(id), orders: run.orders.all(id) },
      ...{ received: run.received.all(id), cut: run.cut.all(id), work: run.work.all(id) },
      ...{ notes: run.notes.all(id), photographs: run.photographs.all(id) },
    }
  }
  return {
    list: (jobId) => {
      const found = connection.read(() => past(jobId))
      return found && whatHappened(found)
    },
  }
}
