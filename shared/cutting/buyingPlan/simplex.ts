import { inRoomOf, reals, wholes } from './lists.ts'
import { addShare, append, emptyRow, lengthened, type Across } from './sparse.ts'

/**
 * A linear program that grows by columns: rows are equalities, every column has a cost, a lower and an upper bound. Solved with a dense
 * inverse of the basis: the dual simplex after a change of bounds or demand, the primal one after new columns. Steers only: nothing
 * here is ever claimed without a check in whole numbers.
 */
export type Column = { rows: number[]; values: number[]; cost: number; lower: number; upper: number }

export type Tables = [Float64Array<ArrayBuffer>, Float64Array<ArrayBuffer>]

export type Simplex = {
  rows: number
  right: Float64Array
  columns: Column[]
  /** The columns' entries again, row by row, for loops over all of them. */
  across: Across[]
  /** Row position of a basic column, −1 at its lower bound, −2 at its upper. */
  place: Int32Array
  basis: Int32Array
  inverse: Float64Array<ArrayBuffer>
  level: Float64Array
  duals: Float64Array
  /** Each column's reduced cost, and what it is in the basis' row looked at last. */
  costs: Float64Array
  along: Float64Array
  /** The entering column in terms of the basis, where a row isn't nothing, the inverse at the spot marked last, and two tables to make it anew in: room used again and again. */
  entering: Float64Array
  places: Int32Array
  kept: Float64Array<ArrayBuffer>
  tables: Tables
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
  rows: [row],
  values: [value],
  cost: 0,
  lower: 0,
  upper: Infinity,
  ...rest,
})

export const [atLower, atUpper] = [-1, -2]

/** A program with its first basis: one basic column a row, named in order, whose matrix is a signed unit one. */
export function makeSimplex(
  right: number[],
  columns: Column[],
  { basis, stop }: { basis: number[]; stop: () => boolean },
): Simplex {
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
    entering: reals(rows),
    places: wholes(rows),
    kept: reals(0),
    tables: [reals(0), reals(0)],
    since: 0,
    pivots: 0,
    enough: Infinity,
    stop,
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
  settle(simplex, 0)
}

/** Levels and duals by an inverse that has been pivoted so often since it was made. */
export function settle(simplex: Simplex, since: number): void {
  simplex.since = since
  setLevels(simplex)
  setDuals(simplex)
}

/** Where a program stands, to go back to. */
export type Spot = { basis: Int32Array; place: Int32Array; inverse: Float64Array<ArrayBuffer>; since: number }

/** Marks where the program stands, instead of any spot before. */
export function markSpot(simplex: Simplex): Spot {
  const { basis, place, inverse, since } = simplex
  simplex.kept = inRoomOf(simplex.kept, inverse.length)
  simplex.kept.set(inverse)
  return { basis: basis.slice(), place: place.slice(), inverse: simplex.kept, since }
}

/** Goes back to the spot marked last: columns since then are at their lower bounds. */
export function goBack(simplex: Simplex, { basis, place, inverse, since }: Spot): void {
  simplex.place.fill(atLower).set(place)
  simplex.basis.set(basis)
  simplex.inverse.set(inverse)
  settle(simplex, since)
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
  const { rows, right, columns, place, inverse, level, entering: rest } = simplex
  rest.set(right)
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
export function setAlong({ rows, inverse, along, across, columns }: Simplex, row: number): void {
  along.fill(0, 0, columns.length)
  for (let k = 0; k < rows; k += 1) {
    const share = inverse[row * rows + k] as number
    if (share !== 0) addShare(across[k] as Across, share, along)
  }
}

/** A column in terms of the basis, until the next is. */
export function inBasis({ rows, inverse, entering }: Simplex, { rows: at, values }: Column): Float64Array {
  for (let row = 0; row < rows; row += 1) {
    let sum = 0
    for (let k = 0; k < at.length; k += 1)
      sum += (inverse[row * rows + (at[k] as number)] as number) * (values[k] as number)
    entering[row] = sum
  }
  return entering
}

/** What the solution costs as it stands. */
export function costNow(simplex: Simplex): number {
  let sum = 0
  for (let number = 0; number < simplex.columns.length; number += 1) {
    const { cost } = simplex.columns[number] as Column
    if (cost !== 0) sum += cost * valueOf(simplex, number)
  }
  return sum
}
