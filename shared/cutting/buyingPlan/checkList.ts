import { counted, dot, rowKey, rowsOf, type Look, type Row } from './checkRows.ts'
import { beyond, halves, isEmpty, type Counts } from './checkCounts.ts'
import { areWhole, at, share, type Steps } from './checkTask.ts'

/** Rows gone through at once. */
const rowsAtOnce = 500

type Case = { counts: Counts; by: number }

/** What each row is worth by the values of a case. */
function* worthsOf(rows: readonly Row[], duals: readonly number[]): Steps<number[]> {
  const worths: number[] = []
  for (const { wide } of rows) {
    worths.push(dot(wide, duals))
    if (worths.length % rowsAtOnce === 0) yield
  }
  return worths
}

/** What each row that must or may be taken so often adds beyond what its length is worth; shares of a penny. */
const addedBy = (rows: readonly Row[], worths: readonly number[], slots: readonly number[]): bigint =>
  rows.reduce((sum, { of, least, most }, row) => {
    const over = at(slots, of) - at(worths, row)
    const times = over > 0 ? least : most
    return over === 0 || times === 0 ? sum : sum + BigInt(over) * BigInt(times)
  }, 0n)

/** What plans of these rows cost at least by one case's values: a length is worth as much as any row that may be taken without limit. */
function* byValues({ task, list }: Look, rows: Row[], { counts, by }: Case): Steps<bigint> {
  const values = list.values[by]
  const wanted = [...task.demand, ...list.cuts.map((cut) => counted(cut, task.demand))]
  if (!values || !areWhole(values.duals) || values.duals.length < task.demand.length) return 0n
  if (rows.some(({ least, most }) => least > most)) return BigInt(list.most) * BigInt(share) + 1n
  const worths = yield* worthsOf(rows, values.duals)
  const slots = task.offers.map((_, of) => values.slots[of] ?? 0)
  rows.forEach(({ of, most }, row) => {
    if (most === Infinity) slots[of] = Math.max(at(slots, of), at(worths, row))
  })
  const worth = dot(wanted, values.duals)
  if (![worth, ...slots].every(Number.isSafeInteger) || !worths.every(Number.isSafeInteger)) return 0n
  return BigInt(worth) + beyond(task, slots, counts) + addedBy(rows, worths, slots)
}

const lesser = (a: bigint, b: bigint): bigint => (a < b ? a : b)

/** What every plan within the counts that uses none but listed ways costs at least, by the list's cases; shares of a penny. */
export function* leastOfList(look: Look, within: Counts): Steps<bigint> {
  const rows = yield* rowsOf(look)
  if (!rows) return 0n
  const all = [...rows.values()]
  const none = BigInt(look.list.most) * BigInt(share) * 2n + 2n
  let next = 0
  function* walk(now: Counts): Steps<bigint> {
    const one = look.list.cases[next]
    next += 1
    yield
    if (!one) return 0n
    if ('by' in one) return isEmpty(now) ? none : yield* byValues(look, all, { counts: now, by: one.by })
    if (!Number.isInteger(one.upTo)) return 0n
    if ('offer' in one) {
      if (!look.task.offers[one.offer]) return 0n
      const [fewer, more] = halves(now, one)
      return lesser(yield* walk(fewer), yield* walk(more))
    }
    const row = rows?.get(rowKey(one.of, one.pattern))
    if (!row) return 0n
    const { least, most } = row
    row.most = Math.min(most, one.upTo)
    const fewer = yield* walk(now)
    Object.assign(row, { most, least: Math.max(least, one.upTo + 1) })
    const more = yield* walk(now)
    row.least = least
    return lesser(fewer, more)
  }
  return yield* walk(within)
}
