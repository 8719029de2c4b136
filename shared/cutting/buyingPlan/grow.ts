import { inRoomOf, reals, wholes } from './lists.ts'
import { addColumn, setLevels, type Simplex, unit } from './simplex.ts'
import { append, emptyRow } from './sparse.ts'

/** A row to be added: what it counts of each column, and what it must come to at least. */
export type NewRow = { counts: (column: number) => number; right: number }

/** A square table a row and a column wider, the new places 0. */
function widened(table: Float64Array<ArrayBuffer>, rows: number): Float64Array<ArrayBuffer> {
  const stride = rows + 1
  const wider = inRoomOf(table, stride * stride)
  if (wider.buffer !== table.buffer) wider.set(table)
  for (let row = rows - 1; row >= 0; row -= 1) {
    wider.copyWithin(row * stride, row * rows, (row + 1) * rows)
    wider[row * stride + rows] = 0
  }
  return wider.fill(0, rows * stride)
}

const byRow = ['right', 'level', 'entering', 'duals'] as const

function longer(list: Float64Array): Float64Array {
  const result = reals(list.length + 1)
  result.set(list)
  return result
}

/** The new row of the inverse: the basis' own counts through it, and less one of the surplus that now stands in the basis. */
function inverseWith({ inverse, rows, basis }: Simplex, counts: NewRow['counts']): Float64Array<ArrayBuffer> {
  const wider = widened(inverse, rows)
  const last = rows * (rows + 1)
  basis.forEach((column, row) => {
    const count = counts(column)
    if (count === 0) return
    for (let k = 0; k < rows; k += 1)
      wider[last + k] = (wider[last + k] as number) + count * (wider[row * (rows + 1) + k] as number)
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
    column.rows.push(row)
    column.values.push(count)
  })
  simplex.rows = row + 1
  simplex.across.push(across)
  simplex.inverse = inverse
  for (const list of byRow) simplex[list] = longer(simplex[list])
  simplex.right[row] = right
  simplex.places = wholes(row + 1)
  const number = addColumn(simplex, unit(row, -1))
  simplex.basis = Int32Array.from([...simplex.basis, number])
  simplex.place[number] = row
  setLevels(simplex)
  return number
}
