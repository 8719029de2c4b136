import { inRoomOf } from './lists.ts'
import { settle, type Column, type Simplex, type Tables } from './simplex.ts'

/** Smaller than this no entry is taken to be one. */
const leastEntry = 1e-9

/** Makes the inverse anew from the basis, by elimination with row exchange. False when the basis has gone singular. */
export function refresh(simplex: Simplex): boolean {
  const { rows, columns, basis, inverse } = simplex
  const [matrix, unit] = simplex.tables.map((table) => inRoomOf(table, inverse.length).fill(0)) as Tables
  simplex.tables = [matrix, unit]
  for (let place = 0; place < rows; place += 1) {
    const { rows: at, values } = columns[basis[place] as number] as Column
    for (let k = 0; k < at.length; k += 1) matrix[(at[k] as number) * rows + place] = values[k] as number
    unit[place * rows + place] = 1
  }
  for (let place = 0; place < rows; place += 1) if (!eliminate(simplex, place)) return false
  simplex.inverse = unit
  simplex.tables = [matrix, inverse]
  settle(simplex, 0)
  return true
}

type Elimination = { rows: number; place: number }

/** Takes shares of one row of a table off every other: as much of each as the entering column says. */
export function takeOff({ rows, entering: shares, places }: Simplex, table: Float64Array, row: number): void {
  const from = row * rows
  let count = 0
  for (let place = 0; place < rows; place += 1)
    if (table[from + place] !== 0) {
      places[count] = place
      count += 1
    }
  for (let other = 0; other < rows; other += 1) {
    const share = shares[other] as number
    if (other === row || share === 0) continue
    const to = other * rows
    for (let at = 0; at < count; at += 1) {
      const place = places[at] as number
      table[to + place] = (table[to + place] as number) - share * (table[from + place] as number)
    }
  }
}

/** Brings the row with the largest entry in a column to its place, and to one there, in both tables. False when there is none. */
function bringUp(matrix: Float64Array, unit: Float64Array, { rows, place }: Elimination): boolean {
  let pivot = place
  for (let row = place + 1; row < rows; row += 1)
    if (Math.abs(matrix[row * rows + place] as number) > Math.abs(matrix[pivot * rows + place] as number))
      pivot = row
  const by = matrix[pivot * rows + place] as number
  if (Math.abs(by) < leastEntry) return false
  for (const table of [matrix, unit]) {
    for (let k = 0; k < rows; k += 1) {
      const above = table[pivot * rows + k] as number
      table[pivot * rows + k] = table[place * rows + k] as number
      table[place * rows + k] = above / by
    }
  }
  return true
}

function eliminate(simplex: Simplex, place: number): boolean {
  const { rows, entering, tables } = simplex
  const [matrix, unit] = tables
  if (!bringUp(matrix, unit, { rows, place })) return false
  for (let row = 0; row < rows; row += 1) entering[row] = matrix[row * rows + place] as number
  takeOff(simplex, matrix, place)
  takeOff(simplex, unit, place)
  return true
}
