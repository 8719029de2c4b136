import type { NewPrice, Rise } from '../shared/pricing/price.ts'
import type { Connection } from './connection.ts'
import { atOnce } from './prices.ts'
import type { PriceQuestions } from './priceRows.ts'

/** Prices written and forced to disk in one go: some 20 ms on a slow laptop, so that a window's own work comes in between. */
const linesAtOnce = 2500

/** Prices that one statement takes: a third quicker than one each. */
const rowsAtOnce = 25

/** Prices that come together. stamp is the book's as the person saw it, null to add whatever stands. at says when they came, now unless given. */
export type NewRise = {
  prices: NewPrice[]
  origin: string
  stamp: string | null
  sample?: boolean
  at?: string
}

export type RisesRoom = {
  /** Every finished rise, the latest first, undone ones too. */
  list: () => Rise[]
  /** Names the prices that stand now: another one after each rise and each undoing. */
  stamp: () => string
  /**
   * Adds prices as one rise, a step at a time. Until the last step they count for nothing; the last makes all of them count at once. Gives
   * undefined, and leaves nothing, when the stamp isn't the book's any more, at the beginning or at the end. A fault in the middle,
   * or a power cut, leaves nothing that counts.
   */
  addSteps: (rise: NewRise) => Generator<void, Rise | undefined>
  /** The same at once. */
  add: (rise: NewRise) => Rise | undefined
  /** The latest rise that stands, the one that can be undone. */
  latest: () => Rise | undefined
  /** Marks a rise as undone: its prices stand in the book and count for nothing. False unless it is the latest that stands. */
  undo: (id: number) => boolean
}

const adding = (rows: number): string =>
  `INSERT INTO prices (item_id, supplier_id, unit, size, price_pence, starts_on, rise_id)
   VALUES ${Array(rows).fill('(?, ?, ?, ?, ?, ?, ?)').join(', ')}`

const statements = ({ db }: Connection) => ({
  begin: db.prepare('INSERT INTO rises (origin, added_at, lines, sample) VALUES (?, ?, ?, ?)'),
  one: db.prepare(adding(1)),
  many: db.prepare(adding(rowsAtOnce)),
  finish: db.prepare('UPDATE rises SET finished_at = ? WHERE id = ?'),
  dropPrices: db.prepare('DELETE FROM prices WHERE rise_id = ?'),
  drop: db.prepare('DELETE FROM rises WHERE id = ? AND finished_at IS NULL'),
  unfinished: db.prepare<[], { id: number }>('SELECT id FROM rises WHERE finished_at IS NULL'),
  undo: db.prepare('UPDATE rises SET undone_at = ? WHERE id = ?'),
  stamp: db.prepare<[], { latest: number; finished: string; undone: number }>(
    `SELECT ifnull(max(id), 0) AS latest, ifnull(max(finished_at), '') AS finished, count(undone_at) AS undone
     FROM rises WHERE finished_at IS NOT NULL`,
  ),
})

type Statements = ReturnType<typeof statements>

/** Takes out what a rise left that broke off. */
function clear(run: Statements, id: number): void {
  run.dropPrices.run(id)
  run.drop.run(id)
}

/** Takes out what is left of rises that a power cut broke off. For the opening of a book, before anybody adds prices. */
export function clearUnfinished(connection: Connection): void {
  const run = statements(connection)
  const { read, write } = connection
  if (read(() => run.unfinished.get()) === undefined) return
  write(() => run.unfinished.all().forEach(({ id }) => clear(run, id)))
}

function insert(run: Statements, riseId: number, prices: NewPrice[]): void {
  const cells = ({ itemId, supplierId, unit, size, pence, startsOn }: NewPrice) => [
    itemId,
    supplierId,
    unit,
    size,
    pence,
    startsOn,
    riseId,
  ]
  const whole = prices.length - (prices.length % rowsAtOnce)
  for (let from = 0; from < whole; from += rowsAtOnce)
    run.many.run(...prices.slice(from, from + rowsAtOnce).flatMap(cells))
  for (const price of prices.slice(whole)) run.one.run(...cells(price))
}

/** The rises' room: how prices come into the book, and how they are taken back. */
export function risesRoom(connection: Connection, ask: PriceQuestions): RisesRoom {
  const { now, read, write } = connection
  const run = statements(connection)
  const stamp = (): string => {
    const { latest, finished, undone } = read(() => run.stamp.get()) ?? { latest: 0, finished: '', undone: 0 }
    return `${latest}/${finished}/${undone}`
  }
  const list = (): Rise[] => read(() => ask.rises.all())
  const latest = (): Rise | undefined => list().find(({ undoneAt }) => undoneAt === null)
  const moved = (seen: string | null): boolean => seen !== null && seen !== stamp()

  function* addSteps({ stamp: seen, ...rise }: NewRise): Generator<void, Rise | undefined> {
    if (moved(seen)) return undefined
    const { prices, origin, sample = false, at = now() } = rise
    const one = { id: 0, finished: false }
    try {
      for (let from = 0; from < prices.length; from += linesAtOnce) {
        const last = from + linesAtOnce >= prices.length
        one.finished = write(() => {
          if (from === 0)
            one.id = Number(run.begin.run(origin, at, prices.length, sample ? 1 : 0).lastInsertRowid)
          insert(run, one.id, prices.slice(from, from + linesAtOnce))
          return last && !moved(seen) && run.finish.run(now(), one.id).changes > 0
        })
        if (!last) yield
      }
      return one.finished ? ask.rise.get(one.id) : undefined
    } finally {
      if (!one.finished) write(() => clear(run, one.id))
    }
  }

  return {
    list,
    stamp,
    addSteps,
    add: (rise) => write(() => atOnce(addSteps(rise))),
    latest,
    undo: (id) => write(() => latest()?.id === id && run.undo.run(now(), id).changes > 0),
  }
}
