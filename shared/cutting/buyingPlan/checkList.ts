import { at, share, type Counts, type Task } from './checkTask.ts'
import type { CutRow, ListProof } from './planModel.ts'

/** A way of filling an offer that a plan may use, what it counts of parts and cuts, and how often it may be taken. */
type Row = { of: number; counts: number[]; wide: number[]; least: number; most: number }

/** Steps after which a list is too long to be gone through. */
const mostSteps = 20_000_000

export const dot = (long: ArrayLike<number>, short: readonly number[]): number =>
  short.reduce((sum, one, index) => (one === 0 ? sum : sum + one * at(long, index)), 0)
export const areWhole = (values: number[]): boolean =>
  values.every((value) => value >= 0 && Number.isSafeInteger(value))
const counted = ({ times, over }: CutRow, counts: number[]): number => Math.ceil(dot(counts, times) / over)

/** Both halves of a case divided by an offer's count. */
export const halves = (
  { least, most }: Counts,
  { offer, upTo }: { offer: number; upTo: number },
): [Counts, Counts] => [
  { least, most: most.with(offer, Math.min(at(most, offer), upTo)) },
  { least: least.with(offer, Math.max(at(least, offer), upTo + 1)), most },
]
export const isEmpty = ({ least, most }: Counts): boolean => least.some((count, of) => count > at(most, of))

/** What lengths cost beyond, or less than, the values given for one of each offer; shares of a penny. */
export const beyond = ({ offers }: Task, slots: ArrayLike<number>, { least, most }: Counts): bigint =>
  offers.reduce((sum, { pence }, of) => {
    const over = pence * share - at(slots, of)
    return sum + BigInt(over) * BigInt(at(over >= 0 ? least : most, of))
  }, 0n)

export type Look = { task: Task; duals: number[]; best: Float64Array; list: ListProof; floors: number[] }

/** Every full way of filling the offers worth their floors; undefined where they are too many. */
function rowsOf({ task: { sizes, demand, offers }, duals, best, list, floors }: Look): Row[] | undefined {
  const rows: Row[] = []
  let steps = 0
  const fill = (of: number, counts: number[], { room, worth }: { room: number; worth: number }): void => {
    const part = counts.length
    steps += 1
    if (steps > mostSteps || worth + at(best, room) < at(floors, of)) return
    if (part === sizes.length) {
      if (worth < at(floors, of)) return
      if (sizes.some((size, one) => size <= room && at(counts, one) < at(demand, one))) return
      const wide = [...counts, ...list.cuts.map((cut) => counted(cut, counts))]
      rows.push({ of, counts, wide, least: 0, most: Infinity })
    } else
      for (let count = Math.min(at(demand, part), Math.floor(room / at(sizes, part))); count >= 0; count -= 1)
        fill(of, [...counts, count], {
          room: room - count * at(sizes, part),
          worth: worth + count * at(duals, part),
        })
  }
  offers.forEach(({ room }, of) => fill(of, [], { room, worth: 0 }))
  return steps > mostSteps ? undefined : rows
}

/** What plans of these rows cost at least by one case's values: a length is worth as much as any row that may be taken without limit. */
function byValues({ task, list }: Look, rows: Row[], { counts, by }: { counts: Counts; by: number }): bigint {
  const values = list.values[by]
  const wanted = [...task.demand, ...list.cuts.map((cut) => counted(cut, task.demand))]
  if (!values || !areWhole(values.duals) || values.duals.length < task.demand.length) return 0n
  if (rows.some(({ least, most }) => least > most)) return BigInt(list.most) * BigInt(share) + 1n
  const worths = rows.map(({ wide }) => dot(wide, values.duals))
  const slots = task.offers.map((_, of) => values.slots[of] ?? 0)
  rows.forEach(({ of, most }, row) => {
    if (most === Infinity) slots[of] = Math.max(at(slots, of), at(worths, row))
  })
  const worth = dot(wanted, values.duals)
  if (![worth, ...worths, ...slots].every(Number.isSafeInteger)) return 0n
  return rows.reduce(
    (sum, { of, least, most }, row) => {
      const over = at(slots, of) - at(worths, row)
      return over === 0 || (over > 0 && least === 0)
        ? sum
        : sum + BigInt(over) * BigInt(over > 0 ? least : most)
    },
    BigInt(worth) + beyond(task, slots, counts),
  )
}

/** What every plan within the counts that uses none but listed ways costs at least, by the list's cases; shares of a penny. */
export function leastOfList(look: Look, within: Counts): bigint {
  const rows = rowsOf(look)
  const lesser = (a: bigint, b: bigint): bigint => (a < b ? a : b)
  const none = BigInt(look.list.most) * BigInt(share) * 2n + 2n
  let next = 0
  const walk = (now: Counts): bigint => {
    const one = look.list.cases[next]
    next += 1
    if (!one) return 0n
    if ('by' in one) return isEmpty(now) ? none : byValues(look, rows ?? [], { counts: now, by: one.by })
    if (!Number.isInteger(one.upTo)) return 0n
    if ('offer' in one) {
      if (!look.task.offers[one.offer]) return 0n
      const [fewer, more] = halves(now, one)
      return lesser(walk(fewer), walk(more))
    }
    const row = rows?.find(({ of, counts }) => of === one.of && String(counts) === String(one.pattern))
    if (!row) return 0n
    const { least, most } = row
    row.most = Math.min(most, one.upTo)
    const fewer = walk(now)
    Object.assign(row, { most, least: Math.max(least, one.upTo + 1) })
    const more = walk(now)
    row.least = least
    return lesser(fewer, more)
  }
  return rows ? walk(within) : 0n
}
