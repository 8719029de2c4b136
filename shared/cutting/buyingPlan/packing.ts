import type { Bought, CuttingProblem, Pattern } from './cuttingProblem.ts'

/** How a search for a packing into given lengths ended. spent: work done. */
export type Packed = { found: Bought[] | undefined; whole: boolean; spent: number }

type Search = {
  problem: CuttingProblem
  left: Int32Array
  lengths: Int32Array
  plan: Bought[]
  failed: Set<string>
  spent: number
  most: number
  /** How much of the lengths may stay unused in all. */
  slack: number
}

/** Total room still there less total size still to be cut: below nothing, no packing can exist. */
function slackOf({ problem, left, lengths }: Search): number {
  let slack = 0
  problem.stocks.forEach(({ room }, stock) => (slack += room * (lengths[stock] as number)))
  problem.parts.forEach(({ size }, part) => (slack -= size * (left[part] as number)))
  return slack
}

/** Every fullest way to fill a room from part onwards, given to try; true as soon as one try succeeds. */
function fillings(
  search: Search,
  { room, part, counts }: { room: number; part: number; counts: Pattern },
  attempt: () => boolean,
): boolean {
  const { problem, left } = search
  search.spent += 1
  if (search.spent > search.most) return false
  const size = problem.parts[part]?.size
  if (size === undefined) return room <= search.slack && isFull(search, room, counts) && attempt()
  const fits = Math.min(left[part] as number, Math.floor(room / size))
  for (let count = fits; count >= 0; count -= 1) {
    counts[part] = count
    if (fillings(search, { room: room - count * size, part: part + 1, counts }, attempt)) return true
  }
  counts[part] = 0
  return false
}

/** Whether nothing that is left would still go in: a fuller filling is never worse. */
const isFull = ({ problem, left }: Search, room: number, counts: Pattern): boolean =>
  problem.parts.every(({ size }, part) => size > room || (counts[part] as number) === (left[part] as number))

/** Puts the longest part left into each kind of length in turn, filled every fullest way. */
function place(search: Search): boolean {
  const { problem, left, lengths, failed } = search
  const first = left.findIndex((count) => count > 0)
  if (first < 0) return true
  const slack = slackOf(search)
  if (slack < 0) return false
  const key = `${left.join(',')}|${lengths.join(',')}`
  if (failed.has(key)) return false
  const size = problem.parts[first]?.size ?? 0
  for (let stock = 0; stock < lengths.length; stock += 1) {
    const room = (problem.stocks[stock]?.room ?? 0) - size
    if ((lengths[stock] as number) === 0 || room < 0) continue
    search.slack = slack
    if (placeIn(search, { stock, first, room })) return true
    if (search.spent > search.most) return false
  }
  failed.add(key)
  return false
}

function placeIn(search: Search, at: { stock: number; first: number; room: number }): boolean {
  const { left, lengths, plan } = search
  const { stock, first, room } = at
  left[first] = (left[first] as number) - 1
  lengths[stock] = (lengths[stock] as number) - 1
  const counts = new Int32Array(left.length)
  const attempt = () => {
    const taken = counts.slice()
    taken.forEach((count, part) => (left[part] = (left[part] as number) - count))
    const whole = taken.slice()
    whole[first] = (whole[first] as number) + 1
    plan.push({ stock, counts: whole, times: 1 })
    const { slack } = search
    if (place(search)) return true
    search.slack = slack
    plan.pop()
    taken.forEach((count, part) => (left[part] = (left[part] as number) + count))
    return false
  }
  const found = fillings(search, { room, part: first, counts }, attempt)
  left[first] = (left[first] as number) + 1
  lengths[stock] = (lengths[stock] as number) + 1
  return found
}

/**
 * Looks for a packing of every part into exactly these lengths, through every case where it must. whole says that it looked at
 * every one; most bounds the work.
 */
export function packInto(problem: CuttingProblem, lengths: Int32Array, most: number): Packed {
  const search: Search = {
    problem,
    left: Int32Array.from(problem.parts, ({ demand }) => demand),
    lengths: lengths.slice(),
    plan: [],
    failed: new Set(),
    spent: 0,
    most,
    slack: 0,
  }
  const found = place(search)
  return {
    found: found ? search.plan : undefined,
    whole: found || search.spent <= most,
    spent: search.spent,
  }
}
