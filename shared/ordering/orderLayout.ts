import type { BuyingPlan, CutLength } from '../cutting/buyingPlan/planModel.ts'
import type { OrderTask, RackPiece, TaskOffer } from './orderModel.ts'
import { downToTenth } from './wholeTenths.ts'

/** A row to be asked of a merchant. */
export type NewOrderLine = Pick<TaskOffer, 'supplierId' | 'priceId' | 'length' | 'pence'> & {
  itemId: number
  count: number
}

/** Lengths to be cut alike. leftFrom: the job that their offcuts are said to be left from, the last that is cut from them. */
export type NewOrderLength = {
  itemId: number
  from: CutLength['from']
  length: number
  count: number
  cuts: { length: number; mark: string }[]
  offcut: number
  leftFrom: number | null
  rackPieceIds: number[]
}

type Planned = Pick<OrderTask, 'sections' | 'parts' | 'offers' | 'rack' | 'pairs'>

/** Free pieces by what a plan knows them by: each may be taken once, the one longest on the rack first. */
function rackPool({ sections, rack }: Planned): Map<string, RackPiece[]> {
  const keys = new Map(sections.map(({ itemId, key }) => [itemId, key]))
  const pool = new Map<string, RackPiece[]>()
  for (const piece of [...rack].sort((a, b) => a.id - b.id)) {
    const name = JSON.stringify([keys.get(piece.itemId), downToTenth(piece.length)])
    pool.set(name, [...(pool.get(name) ?? []), piece])
  }
  return pool
}

/** Which job a mark is of; a pair's is that of its second brace. */
function jobsByMark({ parts, pairs }: Planned): Map<string, number> {
  const jobs = new Map(parts.map(({ mark, jobId }) => [mark, jobId]))
  for (const { mark, of } of pairs) {
    const jobId = jobs.get(of[1])
    if (jobId !== undefined) jobs.set(mark, jobId)
  }
  return jobs
}

/** Rows for the merchants: each length once, however many ways it is cut. */
function linesOf(task: Planned, itemIds: Map<string, number>, { lengths }: BuyingPlan): NewOrderLine[] {
  return task.offers.flatMap(({ key, supplierId, priceId, length, pence }) => {
    const count = lengths
      .filter((one) => one.from === 'merchant' && one.section === key && one.stock === length)
      .reduce((sum, one) => sum + one.count, 0)
    const itemId = itemIds.get(key)
    return count > 0 && itemId !== undefined ? [{ itemId, supplierId, priceId, length, pence, count }] : []
  })
}

/**
 * A plan that was checked, as it is ordered: rows for the merchants, and lengths to cut with the very pieces that come from the rack. Throws
 * RangeError for a plan that isn't one of the task.
 */
export function layOrder(
  task: Planned,
  plan: BuyingPlan,
): { lines: NewOrderLine[]; lengths: NewOrderLength[] } {
  const itemIds = new Map(task.sections.map(({ key, itemId }) => [key, itemId]))
  const pool = rackPool(task)
  const jobs = jobsByMark(task)
  const lengths = plan.lengths.map((one): NewOrderLength => {
    const { section, from, stock: length, count, offcut } = one
    const itemId = itemIds.get(section)
    const pieces =
      from === 'rack' ? (pool.get(JSON.stringify([section, length]))?.splice(0, count) ?? []) : []
    if (itemId === undefined || (from === 'rack' && pieces.length < count))
      throw new RangeError(`layOrder needs a plan of its task, got ${count} of '${section}' from the ${from}`)
    const cuts = one.cuts.map((cut) => ({ length: cut.length, mark: cut.mark ?? '' }))
    const leftFrom = jobs.get(cuts.at(-1)?.mark ?? '') ?? null
    return { itemId, from, length, count, cuts, offcut, leftFrom, rackPieceIds: pieces.map(({ id }) => id) }
  })
  return { lines: linesOf(task, itemIds, plan), lengths }
}
