import { beyond, halves, isEmpty, type Counts } from './checkCounts.ts'
import { leastOfList } from './checkList.ts'
import { dot } from './checkRows.ts'
import { areWhole, at, divisor, share, type Steps, type Task } from './checkTask.ts'
import type { ListProof, ProofRow } from './planModel.ts'

/** The most that parts within each room are worth, in whole numbers; each part no more often than it is wanted. */
function* bestWithin({ sizes, demand, offers }: Task, values: readonly number[]): Steps<Float64Array> {
  const best = new Float64Array(1 + Math.max(0, ...offers.map(({ room }) => room)))
  for (const [part, size] of sizes.entries()) {
    let left = Math.min(at(demand, part), Math.floor(best.length / size))
    for (let take = 1; left > 0; left -= take, take *= 2) {
      take = Math.min(take, left)
      for (let room = best.length - 1; room >= take * size; room -= 1)
        best[room] = Math.max(at(best, room), at(best, room - take * size) + take * at(values, part))
      yield
    }
  }
  return best
}

const isSound = ({ most, cuts }: ListProof): boolean =>
  areWhole([most]) && cuts.every(({ times, over }) => areWhole([...times, over]) && over > 0)

type Duals = { duals: number[]; list?: ListProof }

/** What plans within the counts cost at least by one dual a part, and past that by a list of what plans near it may use; shares of a penny. */
function* byDuals(task: Task, { duals, list }: Duals, counts: Counts): Steps<bigint> {
  const { offers, demand } = task
  const worth = dot(demand, duals)
  if (!areWhole(duals) || duals.length !== demand.length || !Number.isSafeInteger(worth)) return 0n
  const best = yield* bestWithin(task, duals)
  const slots = offers.map(({ room }) => at(best, room))
  const shown = BigInt(worth) + beyond(task, slots, counts)
  if (!list || !isSound(list)) return shown
  const most = BigInt(list.most) * BigInt(share)
  const spare = Number(most - shown)
  if (spare < 0) return shown
  const floors = offers.map(({ pence }, of) => {
    if (at(counts.most, of) === 0) return Infinity
    return Math.max(at(counts.least, of) > 0 ? 0 : pence * share, at(slots, of)) - spare
  })
  const listed = yield* leastOfList({ task, duals, best, list, floors }, counts)
  // Plans that use what isn't listed cost more than `most`.
  const bound = listed > most ? most + 1n : listed
  return bound > shown ? bound : shown
}

/** What every plan costs at least, pence, by the proof's splits, duals and lists. Infinity: there is no such plan. */
export function* leastCost(task: Task, proof: readonly ProofRow[]): Steps<number> {
  const { offers, sizes } = task
  const usable = offers.filter(({ room }) => room >= Math.min(...sizes))
  const step = BigInt(share * (usable.reduce((common, { pence }) => divisor(pence, common), 0) || 1))
  const money = (shares: bigint): number =>
    shares <= 0n ? 0 : Number(((shares + step - 1n) / step) * step) / share
  let next = 0
  function* within(counts: Counts): Steps<number> {
    const row = proof[next]
    next += 1
    if (!row) return 0
    if ('duals' in row) return isEmpty(counts) ? Infinity : money(yield* byDuals(task, row, counts))
    if (!offers[row.offer] || !Number.isInteger(row.upTo)) return 0
    const [fewer, more] = halves(counts, row)
    return Math.min(yield* within(fewer), yield* within(more))
  }
  return yield* within({ least: offers.map(() => 0), most: offers.map(({ most }) => most) })
}
