import type { RackLeaving, RackPiece } from '../shared/ordering/orderModel.ts'
import type { Connection } from './connection.ts'

/** A piece put on the rack. */
export type NewRackPiece = Pick<RackPiece, 'itemId' | 'length' | 'place' | 'jobId' | 'note' | 'addedOn'> & {
  sample?: boolean
}

/** How pieces leave the rack. on: the day; order: the order that they are cut for, with the job. */
export type Leaving = { why: RackLeaving; on: string; orderNumber?: string; jobNumber?: string | null }

export type RackRoom = {
  /** Everything that lies on the rack: by section, the longest first. */
  list: () => RackPiece[]
  /** A piece that lies on the rack; undefined when there is none, or it has left. */
  one: (id: number) => RackPiece | undefined
  add: (piece: NewRackPiece, orderNumber?: string) => RackPiece
  /** Sets a piece right. undefined when it isn't on the rack. */
  change: (id: number, to: Pick<RackPiece, 'length' | 'place' | 'note'>, on: string) => RackPiece | undefined
  /** Puts down that a piece was seen in a stock-take, and where. False when it isn't on the rack. */
  seen: (id: number, place: string, on: string) => boolean
  /** Takes a piece off the rack; the book keeps it. False when it isn't there. */
  take: (id: number, leaving: Leaving) => boolean
}

const columns = `rack_pieces.id, rack_pieces.item_id AS itemId, items.name, json_extract(items.facts, '$.species') AS species,
  rack_pieces.length_mm AS length, rack_pieces.place, rack_pieces.job_id AS jobId, jobs.number AS jobNumber, rack_pieces.note,
  rack_pieces.added_on AS addedOn,
  (SELECT orders.number FROM order_rack JOIN order_lengths ON order_lengths.id = order_rack.length_id
    JOIN orders ON orders.id = order_lengths.order_id
    WHERE order_rack.piece_id = rack_pieces.id AND orders.cancelled_at IS NULL) AS keptFor`

const from = `FROM rack_pieces JOIN items ON items.id = rack_pieces.item_id LEFT JOIN jobs ON jobs.id = rack_pieces.job_id
  WHERE rack_pieces.left_on IS NULL AND rack_pieces.put_away = 0`

const statements = ({ db }: Connection) => ({
  list: db.prepare<[], RackPiece>(
    `SELECT ${columns} ${from} ORDER BY items.name, items.id, rack_pieces.length_mm DESC, rack_pieces.id`,
  ),
  one: db.prepare<[number], RackPiece>(`SELECT ${columns} ${from} AND rack_pieces.id = ?`),
  add: db.prepare(
    'INSERT INTO rack_pieces (item_id, length_mm, place, job_id, note, added_on, sample) VALUES (?, ?, ?, ?, ?, ?, ?)',
  ),
  change: db.prepare('UPDATE rack_pieces SET length_mm = ?, place = ?, note = ? WHERE id = ?'),
  take: db.prepare('UPDATE rack_pieces SET left_on = ?, left_why = ? WHERE id = ?'),
  log: db.prepare(
    `INSERT INTO rack_moves (piece_id, what, length_mm, place, why, job_number, order_number, moved_on, added_at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  ),
})

type Move = {
  what: 'in' | 'out' | 'moved' | 'measured' | 'counted'
  on: string
  why?: string
  jobNumber?: string | null
  orderNumber?: string | undefined
}

/** How pieces are written, each with its row in the log. To be called inside one writing. */
function rackWriting({ now }: Connection, run: ReturnType<typeof statements>) {
  const one = (id: number): RackPiece | undefined => run.one.get(id)
  const log = ({ id, length, place }: RackPiece, move: Move): void => {
    const { what, on, why = '', jobNumber = null, orderNumber = null } = move
    run.log.run(id, what, length, place, why, jobNumber, orderNumber, on, now())
  }
  const written = (id: number): RackPiece => {
    const piece = one(id)
    if (!piece) throw new Error(`piece ${id} of the rack was written and can't be read`)
    return piece
  }
  const add: RackRoom['add'] = (piece, orderNumber) => {
    const { itemId, length, place, jobId, note, addedOn, sample = false } = piece
    const row = run.add.run(itemId, length, place, jobId, note, addedOn, sample ? 1 : 0)
    const made = written(Number(row.lastInsertRowid))
    log(made, { what: 'in', on: addedOn, jobNumber: made.jobNumber, orderNumber })
    return made
  }
  const change: RackRoom['change'] = (id, { length, place, note }, on) => {
    const before = one(id)
    if (!before) return undefined
    run.change.run(length, place, note, id)
    const after = written(id)
    if (before.length !== length) log(after, { what: 'measured', on, why: `${before.length} before` })
    if (before.place !== place) log(after, { what: 'moved', on, why: before.place })
    return after
  }
  return { one, log, add, change }
}

/** The rack's room. Whatever becomes of a piece stands in a log that is only ever added to. */
export function rackRoom(connection: Connection): RackRoom {
  const { read, write } = connection
  const run = statements(connection)
  const { one, log, add, change } = rackWriting(connection, run)

  const seen: RackRoom['seen'] = (id, place, on) => {
    const before = one(id)
    if (!before) return false
    run.change.run(before.length, place, before.note, id)
    log({ ...before, place }, { what: 'counted', on })
    return true
  }

  const take: RackRoom['take'] = (id, { why, on, orderNumber, jobNumber = null }) => {
    const piece = one(id)
    if (!piece) return false
    run.take.run(on, why, id)
    log(piece, { what: 'out', on, why, orderNumber, jobNumber })
    return true
  }

  return {
    list: () => read(() => run.list.all()),
    one: (id) => read(() => one(id)),
    add: (piece, orderNumber) => write(() => add(piece, orderNumber)),
    change: (id, to, on) => write(() => change(id, to, on)),
    seen: (id, place, on) => write(() => seen(id, place, on)),
    take: (id, leaving) => write(() => take(id, leaving)),
  }
}
