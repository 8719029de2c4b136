import { at, type Steps, type Task } from './checkTask.ts'
import type { CutRow, ListProof } from './planModel.ts'

/** A way of filling an offer that a plan may use, what it counts of parts and then of cuts, and how often it may be taken. */
export type Row = { of: number; wide: Int32Array; least: number; most: number }

/** What a list is gone through by: duals with what parts within each room are worth by them, and the least that a row of each offer is worth. */
export type Look = { task: Task; duals: number[]; best: Float64Array; list: ListProof; floors: number[] }

/** Steps after which a list is too long to be gone through, and steps done at once. */
const [mostSteps, stepsAtOnce] = [20_000_000, 1000]

export const dot = (long: ArrayLike<number>, short: readonly number[]): number => {
  let sum = 0
  short.forEach((one, index) => (sum += one === 0 ? 0 : one * at(long, index)))
  return sum
}

export const counted = ({ times, over }: CutRow, counts: number[]): number =>
  Math.ceil(dot(counts, times) / over)

/** A way's name: one to an offer and its counts. */
export const rowKey = (of: number, counts: readonly number[]): string => `${of}:${counts.join()}`

type Filling = { counts: number[]; room: number; worth: number }

const isFull = ({ sizes, demand }: Task, { counts, room }: Filling): boolean =>
  sizes.every((size, part) => size > room || at(counts, part) >= at(demand, part))

/** A filling with every number of its next part that fits and is wanted. */
function withNext({ sizes, demand }: Task, duals: readonly number[], filling: Filling): Filling[] {
  const { counts, room, worth } = filling
  const part = counts.length
  const size = at(sizes, part)
  const most = Math.min(at(demand, part), Math.floor(room / size))
  return Array.from({ length: most + 1 }, (_, count) => ({
    counts: [...counts, count],
    room: room - count * size,
    worth: worth + count * at(duals, part),
  }))
}

/** Every full way of filling the offers worth their floors, by its name; undefined where they are too many. */
export function* rowsOf({ task, duals, best, list, floors }: Look): Steps<Map<string, Row> | undefined> {
  const rows = new Map<string, Row>()
  let steps = 0
  for (const [of, { room: whole }] of task.offers.entries()) {
    const open: Filling[] = [{ counts: [], room: whole, worth: 0 }]
    for (let one = open.pop(); one; one = open.pop()) {
      steps += 1
      if (steps > mostSteps) return undefined
      if (steps % stepsAtOnce === 0) yield
      const { counts, room, worth } = one
      const isWhole = counts.length === task.sizes.length
      if (worth + (isWhole ? 0 : at(best, room)) < at(floors, of)) continue
      if (!isWhole) open.push(...withNext(task, duals, one))
      else if (isFull(task, one)) {
        const wide = Int32Array.from([...counts, ...list.cuts.map((cut) => counted(cut, counts))])
        rows.set(rowKey(of, counts), { of, wide, least: 0, most: Infinity })
      }
    }
  }
  return rows
}
