import { refresh, takeOff } from './elimination.ts'
import {
  atLower,
  atUpper,
  costNow,
  inBasis,
  setAlong,
  valueOf,
  type Column,
  type Simplex,
} from './simplex.ts'

/** How far a level may lie past its bound, and a reduced cost past nothing, before it counts. */
const [levelSlack, costSlack] = [1e-7, 1e-9]
/** What counts as nothing, and the smallest pivot that is trusted. */
const [tiny, leastPivot] = [1e-9, 1e-7]
/** Pivots after which the inverse is made anew. */
const refreshAfter = 60

/** A step, its row worked out: which column comes in, what it looks like in the basis, the row whose column leaves for the bound named, and how far. */
type Step = { enters: number; inBasis: Float64Array; row: number; to: number; by: number }

function takeStep(simplex: Simplex, { enters, inBasis: column, row, to, by }: Step): void {
  const { rows, basis, place, inverse, level, duals, costs, along, columns } = simplex
  const cost = costs[enters] as number
  const value = valueOf(simplex, enters) + by
  const pivot = column[row] as number
  const start = row * rows
  for (let k = 0; k < rows; k += 1) inverse[start + k] = (inverse[start + k] as number) / pivot
  takeOff(simplex, inverse, row)
  for (let other = 0; other < rows; other += 1)
    level[other] = (level[other] as number) - (column[other] as number) * by
  for (let k = 0; k < rows; k += 1) duals[k] = (duals[k] as number) + cost * (inverse[start + k] as number)
  const share = cost / pivot
  for (let number = 0; number < columns.length; number += 1)
    costs[number] = (costs[number] as number) - share * (along[number] as number)
  costs[enters] = 0
  place[basis[row] as number] = to
  basis[row] = enters
  place[enters] = row
  level[row] = value
  simplex.since += 1
  simplex.pivots += 1
}

/** Steps after which it is asked whether to stop. */
const askEvery = 8

/** Whether to go on: the inverse holds, made anew now and then, and nobody wants an end. False too when the basis went singular. */
const sound = (simplex: Simplex): boolean =>
  (simplex.pivots % askEvery > 0 || !simplex.stop()) && (simplex.since < refreshAfter || refresh(simplex))

const canMove = ({ lower, upper }: Column): boolean => upper - lower > tiny

/** The row furthest past a bound: under its lower bound by a negative amount, over its upper by a positive one. */
export function worstRow({ rows, columns, basis, level }: Simplex): { row: number; past: number } {
  let worst = { row: -1, past: 0 }
  for (let row = 0; row < rows; row += 1) {
    const { lower, upper } = columns[basis[row] as number] as Column
    const value = level[row] as number
    const past = value < lower ? value - lower : value > upper ? value - upper : 0
    if (Math.abs(past) > Math.max(levelSlack, Math.abs(worst.past))) worst = { row, past }
  }
  return worst
}

/** The column that may come into a row whose level has to go up or down, by the dual ratio test; −1 for none. */
function dualEntering(simplex: Simplex, row: number, up: boolean): number {
  setAlong(simplex, row)
  const { columns, place, along: list, costs } = simplex
  let best = -1
  let ratio = Infinity
  let size = 0
  for (let number = 0; number < columns.length; number += 1) {
    const along = list[number] as number
    if (along < leastPivot && along > -leastPivot) continue
    const where = place[number] as number
    if (where >= 0) continue
    const side = where === atLower ? 1 : -1
    const by = up ? -side * along : side * along
    const cost = side * (costs[number] as number)
    if (by < 0 || cost >= (ratio + tiny) * by || !canMove(columns[number] as Column)) continue
    const now = Math.max(0, cost / by)
    if (now < ratio - tiny || by > size) {
      best = number
      ratio = Math.min(now, ratio)
      size = by
    }
  }
  return best
}

/** Brings every level within its bounds, reduced costs staying right, or ends where it costs enough. False when it can't, or went on for too long. */
export function dualSimplex(simplex: Simplex, most: number): boolean {
  let cost = simplex.enough < Infinity ? costNow(simplex) : 0
  for (let step = 0; step < most; step += 1) {
    if (cost > simplex.enough) return true
    if (!sound(simplex)) return false
    const { row, past } = worstRow(simplex)
    if (row < 0) return true
    const enters = dualEntering(simplex, row, past < 0)
    if (enters < 0) return false
    const column = inBasis(simplex, simplex.columns[enters] as Column)
    const by = past / (column[row] as number)
    cost += (simplex.costs[enters] as number) * by
    takeStep(simplex, { enters, inBasis: column, row, to: past < 0 ? atLower : atUpper, by })
  }
  return false
}

/** The column whose coming in gains most; the first that gains at all when careful, so that no circle is walked. */
function primalEntering(simplex: Simplex, careful: boolean): number {
  const { columns, place, costs } = simplex
  let [best, gain] = [-1, costSlack]
  for (let number = 0; number < columns.length; number += 1) {
    const where = place[number] as number
    if (where >= 0) continue
    const cost = costs[number] as number
    const now = where === atLower ? -cost : cost
    if (now > gain && canMove(columns[number] as Column)) {
      if (careful) return number
      ;[best, gain] = [number, now]
    }
  }
  return best
}

type Leaving = { row: number; to: number; far: number }

/** The row that stops a column on its way first; −1 when it reaches its own other bound before any. */
function primalLeaving(simplex: Simplex, column: Float64Array, direction: number): Leaving {
  const { rows, columns, basis, level } = simplex
  let found: Leaving = { row: -1, to: atLower, far: Infinity }
  for (let row = 0; row < rows; row += 1) {
    const rate = -direction * (column[row] as number)
    if (Math.abs(rate) < leastPivot) continue
    const { lower, upper } = columns[basis[row] as number] as Column
    const bound = rate < 0 ? lower : upper
    if (bound === Infinity) continue
    const far = Math.max(0, (bound - (level[row] as number)) / rate)
    const nearer = far < found.far - tiny
    const firmer =
      far < found.far + tiny &&
      found.row >= 0 &&
      Math.abs(column[row] as number) > Math.abs(column[found.row] as number)
    if (nearer || firmer) found = { row, to: rate < 0 ? atLower : atUpper, far: Math.min(far, found.far) }
  }
  return found
}

/** From levels within their bounds to the least cost. False when it went on for too long or the basis failed. */
export function primalSimplex(simplex: Simplex, most: number): boolean {
  let idle = 0
  for (let step = 0; step < most; step += 1) {
    if (!sound(simplex)) return false
    const enters = primalEntering(simplex, idle > 2 * simplex.rows + 20)
    if (enters < 0) return true
    const entering = simplex.columns[enters] as Column
    const direction = simplex.place[enters] === atUpper ? -1 : 1
    const column = inBasis(simplex, entering)
    const leaving = primalLeaving(simplex, column, direction)
    const own = entering.upper - entering.lower
    if (leaving.row < 0 && own === Infinity) return false
    if (own <= leaving.far) flip(simplex, { enters, column, by: direction * own })
    else {
      const by = direction * leaving.far
      setAlong(simplex, leaving.row)
      takeStep(simplex, { enters, inBasis: column, row: leaving.row, to: leaving.to, by })
    }
    idle = Math.min(own, leaving.far) > tiny ? 0 : idle + 1
  }
  return false
}

type Flip = { enters: number; column: Float64Array; by: number }

/** A column goes from one of its bounds to the other; the basis stays. */
function flip(simplex: Simplex, { enters, column, by }: Flip): void {
  const { rows, level, place } = simplex
  for (let row = 0; row < rows; row += 1) level[row] = (level[row] as number) - (column[row] as number) * by
  place[enters] = place[enters] === atUpper ? atLower : atUpper
  simplex.pivots += 1
}
