import { reals, wholes } from './lists.ts'
import { addShare, append, emptyRow, lengthened, type Across } from './sparse.ts'

/**
 * A linear program that grows by columns: rows are equalities, every column has a cost, a lower and an upper bound. Solved with a dense
 * inverse of the basis: the dual simplex after a change of bounds or demand, the primal one after new columns. Steers only: nothing
 * here is ever claimed without a check in whole numbers.
 */
export type Column = { rows: Int32Array; values: Float64Array; cost: number; lower: number; upper: number }

export type Simplex = {
  rows: number
  right: Float64Array
  columns: Column[]
  /** The columns' entries again, row by row, for loops over all of them. */
  across: Across[]
  /** Row position of a basic column, −1 at its lower bound, −2 at its upper. */
  place: Int32Array
  basis: Int32Array
  inverse: Float64Array
  level: Float64Array
  duals: Float64Array
  /** Each column's reduced cost, and what it is in the basis' row looked at last. */
  costs: Float64Array
  along: Float64Array
  /** Pivots since the inverse was made anew, and in all. */
  since: number
  pivots: number
  /** A cost past which the dual simplex ends. */
  enough: number
  /** Asked now and then whether to give up. */
  stop: () => boolean
}

/** A column with one entry, free from 0 up unless the rest says otherwise. */
export const unit = (row: number, value: number, rest: Partial<Column> = {}): Column => ({
  rows: Int32Array.of(row),
  values: Float64Array.of(value),
  cost: 0,
  lower: 0,
  upper: Infinity,
  ...rest,
})

const [atLower, atUpper] = [-1, -2]
const tiny = 1e-9
/** A pivot smaller than this is not trusted. */
const leastPivot = 1e-7
const refreshAfter = 60

/** A program with its first basis: one basic column a row, named in order, whose matrix is a signed unit one. */
export function makeSimplex(right: number[], columns: Column[], basis: number[]): Simplex {
  const rows = right.length
  const simplex: Simplex = {
    rows,
    right: Float64Array.from(right),
    columns: [],
    across: right.map(emptyRow),
    place: wholes(1024).fill(atLower),
    basis: Int32Array.from(basis),
    inverse: reals(rows * rows),
    level: reals(rows),
    duals: reals(rows),
    costs: reals(1024),
    along: reals(1024),
    since: 0,
    pivots: 0,
    enough: Infinity,
    stop: () => false,
  }
  for (const column of columns) addColumn(simplex, column)
  restart(simplex, basis)
  return simplex
}

/** Adds a column at its lower bound; gives its number. */
export function addColumn(simplex: Simplex, column: Column): number {
  const number = simplex.columns.push(column) - 1
  const { rows, values, cost } = column
  simplex.place = lengthened(simplex.place, number, atLower)
  simplex.costs = lengthened(simplex.costs, number)
  simplex.along = lengthened(simplex.along, number)
  simplex.place[number] = atLower
  let reduced = cost
  rows.forEach((row, k) => {
    append(simplex.across[row] as Across, number, values[k] as number)
    reduced -= (simplex.duals[row] as number) * (values[k] as number)
  })
  simplex.costs[number] = reduced
  return number
}

/** Goes back to a basis whose matrix is a signed unit one, every other column at its lower bound. */
export function restart(simplex: Simplex, basis: readonly number[]): void {
  const { rows, inverse, place, columns } = simplex
  place.fill(atLower)
  simplex.basis.set(basis)
  inverse.fill(0)
  basis.forEach((number, row) => {
    place[number] = row
    inverse[row * rows + row] = 1 / ((columns[number] as Column).values[0] as number)
  })
  simplex.since = 0
  setLevels(simplex)
  setDuals(simplex)
}

/** Where a program stands, to go back to. */
export type Spot = { basis: Int32Array; place: Int32Array; inverse: Float64Array; since: number }

export const markSpot = ({ basis, place, inverse, since }: Simplex): Spot => ({
  basis: basis.slice(),
  place: place.slice(),
  inverse: inverse.slice(),
  since,
})

/** Goes back to where the program stood, once: columns since then are at their lower bounds. */
export function goBack(simplex: Simplex, spot: Spot): void {
  const place = simplex.place.fill(atLower)
  place.set(spot.place)
  Object.assign(simplex, spot, { place })
  setLevels(simplex)
  setDuals(simplex)
}

/** What a column at a bound stands at. */
const standing = ({ columns, place }: Simplex, number: number): number => {
  const { lower, upper } = columns[number] as Column
  return place[number] === atUpper ? upper : lower
}

/** The value of a column in the solution as it stands. */
export const valueOf = (simplex: Simplex, number: number): number => {
  const row = simplex.place[number] as number
  return row >= 0 ? (simplex.level[row] as number) : standing(simplex, number)
}

/** Works out the basic columns' levels from the bounds and the right-hand sides. */
export function setLevels(simplex: Simplex): void {
  const { rows, right, columns, place, inverse, level } = simplex
  const rest = Float64Array.from(right)
  for (let number = 0; number < columns.length; number += 1) {
    if ((place[number] as number) >= 0) continue
    const value = standing(simplex, number)
    if (value === 0) continue
    const { rows: at, values } = columns[number] as Column
    for (let k = 0; k < at.length; k += 1)
      rest[at[k] as number] = (rest[at[k] as number] as number) - (values[k] as number) * value
  }
  for (let row = 0; row < rows; row += 1) {
    let sum = 0
    for (let k = 0; k < rows; k += 1) sum += (inverse[row * rows + k] as number) * (rest[k] as number)
    level[row] = sum
  }
}

/** Works out the duals: the basic columns' costs through the inverse. And what they leave of each column's cost. */
export function setDuals({ rows, columns, basis, inverse, duals, costs, across }: Simplex): void {
  duals.fill(0)
  for (let row = 0; row < rows; row += 1) {
    const { cost } = columns[basis[row] as number] as Column
    if (cost === 0) continue
    for (let k = 0; k < rows; k += 1)
      duals[k] = (duals[k] as number) + cost * (inverse[row * rows + k] as number)
  }
  columns.forEach(({ cost }, number) => (costs[number] = cost))
  across.forEach((one, row) => addShare(one, -(duals[row] as number), costs))
}

/** Works out what every column is in a row of the basis. */
function setAlong({ rows, inverse, along, across, columns }: Simplex, row: number): void {
  along.fill(0, 0, columns.length)
  for (let k = 0; k < rows; k += 1) {
    const share = inverse[row * rows + k] as number
    if (share !== 0) addShare(across[k] as Across, share, along)
  }
}

/** A column in terms of the basis. */
function inBasis({ rows, inverse }: Simplex, { rows: at, values }: Column): Float64Array {
  const result = reals(rows)
  for (let row = 0; row < rows; row += 1) {
    let sum = 0
    for (let k = 0; k < at.length; k += 1)
      sum += (inverse[row * rows + (at[k] as number)] as number) * (values[k] as number)
    result[row] = sum
  }
  return result
}

/** Makes the inverse anew from the basis, by elimination with row exchange. False when the basis has gone singular. */
function refresh(simplex: Simplex): boolean {
  const { rows, columns, basis, inverse } = simplex
  const matrix = reals(rows * rows)
  const unit = reals(rows * rows)
  for (let place = 0; place < rows; place += 1) {
    const { rows: at, values } = columns[basis[place] as number] as Column
    for (let k = 0; k < at.length; k += 1) matrix[(at[k] as number) * rows + place] = values[k] as number
    unit[place * rows + place] = 1
  }
  for (let place = 0; place < rows; place += 1) if (!eliminate(matrix, unit, { rows, place })) return false
  inverse.set(unit)
  simplex.since = 0
  setLevels(simplex)
  setDuals(simplex)
  return true
}

type Elimination = { rows: number; place: number }

/** The places of a row of a table where it isn't nothing. */
export function filledPlaces(table: Float64Array, from: number, to: number): Int32Array {
  const places = wholes(to - from)
  let count = 0
  for (let place = from; place < to; place += 1)
    if (table[place] !== 0) {
      places[count] = place - from
      count += 1
    }
  return places.subarray(0, count)
}

/** Takes a share of one row of a table off another, where that one isn't nothing. */
export function takeOff(
  table: Float64Array,
  { from, to, share }: { from: number; to: number; share: number },
  places: Int32Array,
): void {
  for (let at = 0; at < places.length; at += 1) {
    const place = places[at] as number
    table[to + place] = (table[to + place] as number) - share * (table[from + place] as number)
  }
}

/** Brings the row with the largest entry in a column to its place, and to one there, in both tables. False when there is none. */
function bringUp(matrix: Float64Array, unit: Float64Array, { rows, place }: Elimination): boolean {
  let pivot = place
  for (let row = place + 1; row < rows; row += 1)
    if (Math.abs(matrix[row * rows + place] as number) > Math.abs(matrix[pivot * rows + place] as number))
      pivot = row
  const by = matrix[pivot * rows + place] as number
  if (Math.abs(by) < tiny) return false
  for (const table of [matrix, unit]) {
    for (let k = 0; k < rows; k += 1) {
      const above = table[pivot * rows + k] as number
      table[pivot * rows + k] = table[place * rows + k] as number
      table[place * rows + k] = above / by
    }
  }
  return true
}

function eliminate(matrix: Float64Array, unit: Float64Array, { rows, place }: Elimination): boolean {
  if (!bringUp(matrix, unit, { rows, place })) return false
  const from = place * rows
  const ofMatrix = filledPlaces(matrix, from, from + rows)
  const ofUnit = filledPlaces(unit, from, from + rows)
  for (let row = 0; row < rows; row += 1) {
    const share = matrix[row * rows + place] as number
    if (row === place || share === 0) continue
    takeOff(matrix, { from, to: row * rows, share }, ofMatrix)
    takeOff(unit, { from, to: row * rows, share }, ofUnit)
  }
  return true
}

export { atLower, atUpper, inBasis, leastPivot, refresh, refreshAfter, setAlong, tiny }

/** What the solution costs as it stands. */
export const costNow = (simplex: Simplex): number =>
  simplex.columns.reduce((sum, { cost }, number) => sum + (cost && cost * valueOf(simplex, number)), 0)
