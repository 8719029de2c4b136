import { sameValue } from '../../shared/job/specPath.ts'
import { keysOf, type Cells, type Step } from '../../shared/undo/step.ts'
import type { Connection } from '../connection.ts'
import { rowWords, turned, withCells, type Settled, type Turned } from './cells.ts'
import { jobSteps } from './jobSteps.ts'
import { noteLog } from './noteSteps.ts'
import { rackLog } from './rackSteps.ts'
import { Refused } from './refused.ts'
import { riseSteps } from './riseSteps.ts'
import { rowsOf } from './rows.ts'
import type { Watched } from './watched.ts'

/** Takes a deed's steps one way, all inside one writing. Gives the steps as they are to be kept: prices brought in again stand under another key. */
export type Apply = (steps: readonly Step[], way: 'back' | 'again', settled: Settled) => Step[]

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

const notThere = (step: Turned): Refused => new Refused(`${capital(rowWords(step))} isn’t there any more.`)

/** Asks about a row that another deed changed since, before it is taken out. Answers whether it may go. */
function mayGo(row: Cells, step: Turned, settled: Settled): boolean {
  const changed = Object.keys(step.from ?? {}).some((name) => !sameValue(row[name], step.from?.[name]))
  if (!changed || settled.settle === 'put it back') return true
  if (settled.settle === 'ask')
    settled.asks.push({ deed: settled.deed, what: rowWords(step), theirs: '', older: '' })
  else settled.kept += 1
  return false
}

/** Prices that rest on a line or on a merchant keep it in the book's lists. */
function standingPrices({ db }: Connection) {
  const on = (column: string) =>
    db
      .prepare<[unknown], number>(
        `SELECT count(*) FROM prices JOIN rises ON rises.id = rise_id
         WHERE ${column} = ? AND finished_at IS NOT NULL AND undone_at IS NULL`,
      )
      .pluck()
  const [items, suppliers] = [on('item_id'), on('supplier_id')]
  return ({ table, key, of }: Turned): void => {
    const asked = table === 'items' ? items : table === 'suppliers' ? suppliers : undefined
    if ((asked?.get(key['id']) ?? 0) > 0)
      throw new Refused(`Prices stand for ‘${of}’; take those back first.`)
  }
}

/** What came can't be taken back once it was cut, and an order's piece stays on the rack while it is kept for it. */
function orderGuards({ db }: Connection) {
  const cut = db
    .prepare<[unknown, unknown], number>(
      `SELECT count(*) FROM order_cuts JOIN order_lengths ON order_lengths.id = order_cuts.length_id
       JOIN order_lines ON order_lines.order_id = order_lengths.order_id
       JOIN order_receipts ON order_receipts.line_id = order_lines.id
       WHERE order_receipts.id = ? AND order_lengths.source = 'merchant' AND order_cuts.taken_back_at IS NULL AND order_cuts.added_at >= (SELECT added_at FROM order_receipts WHERE id = ?)`,
    )
    .pluck()
  const keptFor = db
    .prepare<[unknown], string>(
      `SELECT orders.number FROM order_rack JOIN order_lengths ON order_lengths.id = order_rack.length_id
       JOIN orders ON orders.id = order_lengths.order_id WHERE order_rack.piece_id = ? AND orders.cancelled_at IS NULL`,
    )
    .pluck()
  return ({ table, key, of }: Turned): void => {
    const { id } = key
    if (table === 'order_receipts' && (cut.get(id, id) ?? 0) > 0)
      throw new Refused('What came was cut since; take the cutting back first.')
    const order = table === 'rack_pieces' ? keptFor.get(id) : undefined
    if (order !== undefined) throw new Refused(`‘${of}’ is kept for order ${order}; cancel that order first.`)
  }
}

/** The watched tables with their rows, and how what becomes of them is put down in logs of their own. */
function rowDesk(connection: Connection, tables: readonly Watched[]) {
  const logPiece = rackLog(connection)
  const logNote = noteLog(connection)
  const all = new Map(
    tables.map((watched) => [watched.table, { ...watched, rows: rowsOf(connection, watched) }]),
  )

  const watchedOf = (step: Turned) => {
    const found = all.get(step.table)
    if (!found) throw notThere(step)
    return found
  }

  const logged = ({ table, key }: Turned, before: Cells, after: Cells): void => {
    if (table === 'rack_pieces') logPiece(key['id'], before, after)
    else logNote(table, before, after)
  }

  const putAway = (step: Turned, away: boolean): void => {
    const { rows } = watchedOf(step)
    const row = rows.read(step.key)
    if (!row) throw notThere(step)
    rows.mark(step.key, 'put_away', away ? 1 : 0)
    logged(step, { ...row, put_away: away ? 0 : 1 }, { ...row, put_away: away ? 1 : 0 })
  }

  return { watchedOf, logged, putAway }
}

/** How a row of its own is taken out, put in and changed. */
function rowSteps(connection: Connection, tables: readonly Watched[]) {
  const { watchedOf, logged, putAway } = rowDesk(connection, tables)
  const guardPrices = standingPrices(connection)
  const guardOrders = orderGuards(connection)

  const takeOut = (step: Turned, settled: Settled): void => {
    const { rows, way } = watchedOf(step)
    guardPrices(step)
    guardOrders(step)
    if (way === 'away') return putAway(step, true)
    if (way === 'marked') return void rows.mark(step.key, 'taken_back_at', connection.now())
    const row = rows.read(step.key)
    if (row && mayGo(row, step, settled)) rows.drop(step.key)
  }

  const putIn = (step: Turned): void => {
    const { rows, way } = watchedOf(step)
    if (way === 'away') return putAway(step, false)
    if (way === 'marked') {
      if (!rows.mark(step.key, 'taken_back_at', null)) throw notThere(step)
      return
    }
    if (rows.read(step.key)) throw new Refused(`Something else stands in the place of ${rowWords(step)} now.`)
    rows.insert(step.to ?? {})
  }

  const change = (step: Turned, settled: Settled): void => {
    const { rows } = watchedOf(step)
    const before = rows.read(step.key)
    if (!before) throw notThere(step)
    const { row, moved } = withCells(before, step, settled)
    const columns = [...new Set(moved.map((name) => keysOf(name)[0] ?? ''))]
    rows.update(step.key, row, columns)
    if (columns.length > 0) logged(step, before, row)
  }

  return { takeOut, putIn, change }
}

/** How each kind of row is taken back and done again. */
export function applying(connection: Connection, tables: readonly Watched[]): Apply {
  const jobs = jobSteps(connection)
  const rises = riseSteps(connection)
  const rows = rowSteps(connection, tables)

  const applyJob = (step: Turned, settled: Settled): void => {
    if (step.to === null) jobs.away(step)
    else if (step.from === null) jobs.comeBack(step)
    else jobs.change(step, settled)
  }

  const applyRise = (step: Turned): Cells => {
    if (step.to !== null) return rises.putBack(step.key)
    rises.takeBack(step.key)
    return step.key
  }

  const applyOne = (step: Turned, settled: Settled): Cells => {
    if (step.table === 'rises') return applyRise(step)
    if (step.table === 'jobs') applyJob(step, settled)
    else if (step.table === 'customers') jobs.changeCustomer(step, settled)
    else if (step.to === null) rows.takeOut(step, settled)
    else if (step.from === null) rows.putIn(step)
    else rows.change(step, settled)
    return step.key
  }

  return (steps, way, settled) => {
    const order = way === 'back' ? [...steps].reverse() : steps
    const done = order.map((step) => ({ ...step, key: applyOne(turned(step, way), settled) }))
    return way === 'back' ? done.reverse() : done
  }
}
