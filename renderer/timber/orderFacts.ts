import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import type {
  BracePair,
  CuttingSettings,
  Order,
  OrderTask,
  RackPiece,
} from '../../shared/ordering/orderModel.ts'
import { layOrder } from '../../shared/ordering/orderLayout.ts'

/** Lengths of one section cut alike, as they are drawn: id of the order's own row, null before it is placed; pence for one, 0 from the rack. */
export type CutRow = {
  id: number | null
  itemId: number
  from: 'merchant' | 'rack'
  length: number
  count: number
  done: number
  cuts: { length: number; mark: string }[]
  offcut: number
  pence: number
  rackPieceIds: number[]
}

/** A section with all that is cut of it; cost, pence. width: the section's own, mm, where it is known. */
export type SectionCuts = {
  itemId: number
  name: string
  species: string
  width?: number
  cost: number
  rows: CutRow[]
}

/** A row of what is bought. */
export type BuyRow = {
  itemId: number
  name: string
  supplier: string
  length: number
  count: number
  pence: number
}

/** What a plan or an order comes to, as it is shown. */
export type OrderFacts = {
  sections: SectionCuts[]
  buying: BuyRow[]
  numbers: string[]
  pairs: BracePair[]
  cutting: CuttingSettings
}

/** Rows by section, in the order in which the sections come, each with what it costs. */
function bySection(
  rows: readonly CutRow[],
  named: (itemId: number) => Pick<SectionCuts, 'name' | 'species' | 'width'>,
): SectionCuts[] {
  const found = new Map<number, CutRow[]>()
  for (const row of rows) found.set(row.itemId, [...(found.get(row.itemId) ?? []), row])
  return [...found].map(([itemId, own]) => ({
    itemId,
    ...named(itemId),
    cost: own.reduce((sum, { pence, count }) => sum + pence * count, 0),
    rows: own,
  }))
}

/** A plan on the table. */
export function factsOfPlan(task: OrderTask, plan: BuyingPlan, paired: boolean): OrderFacts {
  const { lines, lengths } = layOrder(task, plan)
  const section = (itemId: number) => task.sections.find((one) => one.itemId === itemId)
  const offers = new Map(task.offers.map((offer) => [`${offer.priceId}/${offer.length}`, offer]))
  const rows = lengths.map((one, place): CutRow => {
    const { itemId, from, length, count, cuts, offcut, rackPieceIds } = one
    const pence = plan.lengths[place]?.pence ?? 0
    return { id: null, itemId, from, length, count, done: 0, cuts, offcut, pence, rackPieceIds }
  })
  return {
    sections: bySection(rows, (itemId) => {
      const { name = '', species = '', width } = section(itemId) ?? {}
      return { name, species, ...(width !== undefined && { width }) }
    }),
    buying: lines.map(({ itemId, priceId, length, count, pence }) => ({
      ...{ itemId, length, count, pence },
      name: section(itemId)?.name ?? '',
      supplier: offers.get(`${priceId}/${length}`)?.supplier ?? '',
    })),
    numbers: task.jobs.map(({ number }) => number),
    pairs: paired ? task.pairs : [],
    cutting: task.requests.plain,
  }
}

/** An order that was placed. */
export function factsOfOrder({ lines, lengths, jobs, pairs, request }: Order): OrderFacts {
  const lineOf = (itemId: number, length?: number) =>
    lines.find((line) => line.itemId === itemId && (length === undefined || line.length === length))
  const rows = lengths.map((one): CutRow => {
    const pence = one.from === 'merchant' ? (lineOf(one.itemId, one.length)?.pence ?? 0) : 0
    const { id, itemId, from, length, count, done, cuts, offcut, rackPieceIds } = one
    return { id, itemId, from, length, count, done, cuts, offcut, pence, rackPieceIds }
  })
  return {
    sections: bySection(rows, (itemId) => ({
      name: lengths.find((one) => one.itemId === itemId)?.name ?? '',
      species: lineOf(itemId)?.species ?? '',
    })),
    buying: lines,
    numbers: jobs.map(({ number }) => number),
    pairs,
    cutting: request,
  }
}

/** Rows to buy by merchant, the merchants in the order in which they come. */
export function byMerchant(buying: readonly BuyRow[]): { supplier: string; rows: BuyRow[]; sum: number }[] {
  const found = new Map<string, BuyRow[]>()
  for (const row of buying) found.set(row.supplier, [...(found.get(row.supplier) ?? []), row])
  return [...found].map(([supplier, rows]) => ({
    supplier,
    rows,
    sum: rows.reduce((sum, { count, pence }) => sum + count * pence, 0),
  }))
}

/** Offcuts long enough to keep, alike ones together, the longest first. */
export function keptOffcuts({
  sections,
  cutting,
}: OrderFacts): { name: string; length: number; count: number }[] {
  const kept = new Map<string, { name: string; length: number; count: number }>()
  for (const { name, rows } of sections)
    for (const { offcut, count } of rows) {
      if (offcut < cutting.leastOffcut || offcut === 0) continue
      const key = `${name}/${offcut}`
      const known = kept.get(key)
      if (known) known.count += count
      else kept.set(key, { name, length: offcut, count })
    }
  return [...kept.values()]
}

/** The pieces of the rack that are taken. */
export function takenPieces({ sections }: OrderFacts, rack: readonly RackPiece[]): RackPiece[] {
  const ids = new Set(sections.flatMap(({ rows }) => rows.flatMap(({ rackPieceIds }) => rackPieceIds)))
  return rack.filter(({ id }) => ids.has(id))
}
