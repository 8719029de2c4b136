import { reals, wholes } from './lists.ts'

/** A row's entries: in which columns it has any, and these. For loops over every column of a row. */
export type Across = { columns: Int32Array; values: Float64Array; count: number }

/** A list that has a place, twice as long where it hadn't, what is new filled. */
export function lengthened<List extends Int32Array | Float64Array>(
  list: List,
  place: number,
  fill = 0,
): List {
  if (place < list.length) return list
  const longer = (list instanceof Int32Array ? wholes(2 * list.length) : reals(2 * list.length)) as List
  longer.fill(fill).set(list)
  return longer
}

export const emptyRow = (): Across => ({ columns: wholes(64), values: reals(64), count: 0 })

/** Adds an entry behind the others. */
export function append(row: Across, column: number, value: number): void {
  const { count } = row
  row.columns = lengthened(row.columns, count)
  row.values = lengthened(row.values, count)
  row.columns[count] = column
  row.values[count] = value
  row.count += 1
}

/** How many entries there are in all. */
export const entries = (rows: readonly Across[]): number => rows.reduce((sum, { count }) => sum + count, 0)

/** Adds a share of a row to a list by columns. */
export function addShare({ columns, values, count }: Across, share: number, list: Float64Array): void {
  for (let at = 0; at < count; at += 1) {
    const column = columns[at] as number
    list[column] = (list[column] as number) + share * (values[at] as number)
  }
}
