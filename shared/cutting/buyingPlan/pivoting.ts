import {
  atLower,
  atUpper,
  filledPlaces,
  inBasis,
  leastPivot,
  reducedCost,
  refresh,
  refreshAfter,
  takeOff,
  tiny,
  valueOf,
  type Column,
  type Simplex,
} from './simplex.ts'
import { times } from './sparse.ts'

/** How far a level may lie past its bound, and a reduced cost past nothing, before it counts. */
const [levelSlack, costSlack] = [1e-7, 1e-9]

/** A step: which column comes in, what it looks like in the basis, the row whose column leaves for the bound named, and how far. */
type Step = { enters: number; inBasis: Float64Array; row: number; to: number; by: number }

function takeStep(simplex: Simplex, { enters, inBasis: column, row, to, by }: Step): void {
  const { rows, basis, place, inverse, level, duals } = simplex
  const cost = reducedCost(simplex, enters)
  const value = valueOf(simplex, enters) + by
  const pivot = column[row] as number
  const start = row * rows
  for (let k = 0; k < rows; k += 1) inverse[start + k] = (inverse[start + k] as number) / pivot
  const filled = filledPlaces(inverse, start, start + rows)
  for (let other = 0; other < rows; other += 1) {
    const share = column[other] as number
    if (share === 0) continue
    level[other] = (level[other] as number) - share * by
    if (other !== row) takeOff(inverse, { from: start, to: other * rows, share }, filled)
  }
  for (let k = 0; k < rows; k += 1) duals[k] = (duals[k] as number) + cost * (inverse[start + k] as number)
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
function worstRow({ rows, columns, basis, level }: Simplex): { row: number; past: number } {
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
  const { columns, place, inverse, rows, sparse } = simplex
  let [best, ratio, size] = [-1, Infinity, 0]
  const slice = { list: inverse, from: row * rows }
  for (let number = 0; number < columns.length; number += 1) {
    const where = place[number] as number
    if (where >= 0) continue
    const along = times(sparse, number, slice)
    if (Math.abs(along) < leastPivot) continue
    const helps = (where === atLower) === (up ? along < 0 : along > 0)
    if (!helps || !canMove(columns[number] as Column)) continue
    const cost = reducedCost(simplex, number)
    const now = Math.max(0, where === atLower ? cost : -cost) / Math.abs(along)
    if (now < ratio - tiny || (now < ratio + tiny && Math.abs(along) > size))
      [best, ratio, size] = [number, Math.min(now, ratio), Math.abs(along)]
  }
  return best
}

/** Brings every level within its bounds, reduced costs staying right. False when it can't, or went on for too long. */
export function dualSimplex(simplex: Simplex, most: number): boolean {
  for (let step = 0; step < most; step += 1) {
    if (!sound(simplex)) return false
    const { row, past } = worstRow(simplex)
    if (row < 0) return true
    const enters = dualEntering(simplex, row, past < 0)
    if (enters < 0) return false
    const column = inBasis(simplex, simplex.columns[enters] as Column)
    const by = past / (column[row] as number)
    takeStep(simplex, { enters, inBasis: column, row, to: past < 0 ? atLower : atUpper, by })
  }
  return false
}

/** The column whose coming in gains most; the first that gains at all when careful, so that no circle is walked. */
function primalEntering(simplex: Simplex, careful: boolean): number {
  const { columns, place } = simplex
  let [best, gain] = [-1, costSlack]
  for (let number = 0; number < columns.length; number += 1) {
    const where = place[number] as number
    if (where >= 0) continue
    if (!canMove(columns[number] as Column)) continue
    const cost = reducedCost(simplex, number)
    const now = where === atLower ? -cost : cost
    if (now > gain) {
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
