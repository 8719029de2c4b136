import { reals, wholes } from './lists.ts'
import { addColumn, setLevels, type Simplex, unit } from './simplex.ts'
import { append, emptyRow } from './sparse.ts'

/** A row to be added: what it counts of each column, and what it must come to at least. */
export type NewRow = { counts: (column: number) => number; right: number }

/** A square table a row and a column wider, the new places 0. */
function widened(table: Float64Array, rows: number): Float64Array {
  const wider = reals((rows + 1) * (rows + 1))
  for (let row = 0; row < rows; row += 1)
    wider.set(table.subarray(row * rows, (row + 1) * rows), row * (rows + 1))
  return wider
}

function longer(list: Float64Array): Float64Array {
  const result = reals(list.length + 1)
  result.set(list)
  return result
}

/** The new row of the inverse: the basis' own counts through it, and less one of the surplus that now stands in the basis. */
function inverseWith({ inverse, rows, basis }: Simplex, counts: NewRow['counts']): Float64Array {
  const wider = widened(inverse, rows)
  const last = rows * (rows + 1)
  basis.forEach((column, row) => {
    const count = counts(column)
    if (count === 0) return
    for (let k = 0; k < rows; k += 1)
      wider[last + k] = (wider[last + k] as number) + count * (inverse[row * rows + k] as number)
  })
  wider[last + rows] = -1
  return wider
}

/**
 * Adds a row that must come to `right` at least, with a surplus of its own that takes its place in the basis; every reduced cost stays as it was.
 * Gives the surplus' column.
 */
export function addRow(simplex: Simplex, { counts, right }: NewRow): number {
  const row = simplex.rows
  const inverse = inverseWith(simplex, counts)
  const across = emptyRow()
  simplex.columns.forEach((column, number) => {
    const count = counts(number)
    if (count === 0) return
    append(across, number, count)
    const rows = wholes(column.rows.length + 1)
    rows.set(column.rows)
    rows[column.rows.length] = row
    column.rows = rows
    column.values = longer(column.values)
    column.values[rows.length - 1] = count
  })
  simplex.rows = row + 1
  simplex.across.push(across)
  simplex.inverse = inverse
  simplex.right = longer(simplex.right)
  simplex.right[row] = right
  simplex.level = longer(simplex.level)
  simplex.duals = longer(simplex.duals)
  const number = addColumn(simplex, unit(row, -1))
  simplex.basis = Int32Array.from([...simplex.basis, number])
  simplex.place[number] = row
  setLevels(simplex)
  return number
}
