/** Columns one behind another: where each starts, which rows it has entries in, and these. For loops over every column. */
export type Sparse = { count: number; starts: Int32Array; rows: Int32Array; values: Float64Array }

export const makeSparse = (): Sparse => ({
  count: 0,
  starts: new Int32Array(256),
  rows: new Int32Array(1024),
  values: new Float64Array(1024),
})

function longerInts(list: Int32Array, least: number): Int32Array {
  if (list.length >= least) return list
  const longer = new Int32Array(Math.max(least, 2 * list.length))
  longer.set(list)
  return longer
}

/** Adds a column behind the others. */
export function append(sparse: Sparse, rows: Int32Array, values: Float64Array): void {
  const from = sparse.starts[sparse.count] as number
  const to = from + rows.length
  sparse.starts = longerInts(sparse.starts, sparse.count + 2)
  sparse.rows = longerInts(sparse.rows, to)
  if (sparse.values.length < to) {
    const longer = new Float64Array(sparse.rows.length)
    longer.set(sparse.values)
    sparse.values = longer
  }
  sparse.rows.set(rows, from)
  sparse.values.set(values, from)
  sparse.count += 1
  sparse.starts[sparse.count] = to
}

/** How many entries there are in all. */
export const entries = ({ count, starts }: Sparse): number => starts[count] as number

/** A list from a place onward: a row of a table. */
export type Slice = { list: Float64Array; from: number }

/** A column times a row of a table. */
export function times({ starts, rows, values }: Sparse, column: number, { list, from }: Slice): number {
  const to = starts[column + 1] as number
  let sum = 0
  for (let k = starts[column] as number; k < to; k += 1)
    sum += (list[from + (rows[k] as number)] as number) * (values[k] as number)
  return sum
}
