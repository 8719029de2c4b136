import type { BuyRequest } from '../cutting/buyingPlan/request.ts'
import type { StandingBook } from '../pricing/standingBook.ts'
import { bracePairs, type PairableBraces } from './bracePairs.ts'
import { jobTimber, type Blank, type JobToOrder } from './jobTimber.ts'
import { addUnpriced, hindranceOf, tooLongOf } from './leftOut.ts'
import type {
  BracePair,
  CuttingSettings,
  OrderTask,
  RackPiece,
  TaskPart,
  TaskSection,
  UnpricedTimber,
} from './orderModel.ts'
import { shelvesOf, type Shelf, type Wanted } from './shelves.ts'
import { stampOf } from './stamp.ts'
import { downToTenth } from './wholeTenths.ts'

/** rack: what lies on it free. book: the price book open on the day of ordering. */
export type TaskAsked = {
  jobs: readonly JobToOrder[]
  book: StandingBook
  rack: readonly RackPiece[]
  cutting: CuttingSettings
}

const partOf = (key: string, { jobId, number }: JobToOrder, blank: Blank): TaskPart => {
  const { part, length, quantity } = blank
  return { key, mark: `${number} ${part}`, jobId, number, part, length, quantity }
}

const sectionOf = ({ key, item }: Shelf): TaskSection => {
  const { species, thickness, width } = item.facts
  return { key, itemId: item.id, name: item.name, species, thickness, width }
}

type Row = { section: string; length: number; mark: string; quantity: number }

/** Rows of one section, length and mark as one. */
function addRow(rows: Map<string, Row>, row: Row): void {
  const key = JSON.stringify([row.section, row.length, row.mark])
  const own = rows.get(key)
  if (own) own.quantity += row.quantity
  else rows.set(key, { ...row })
}

const rowOf = ({ key, mark, length, quantity }: TaskPart): Row => ({ section: key, length, mark, quantity })

type Bought = Pick<OrderTask, 'parts' | 'offers' | 'rack' | 'sections'>

function requestOf(
  { offers, rack, sections }: Bought,
  rows: Iterable<Row>,
  cutting: CuttingSettings,
): BuyRequest {
  const keys = new Map(sections.map(({ itemId, key }) => [itemId, key]))
  return {
    version: 1,
    ...cutting,
    parts: [...rows],
    stock: offers.map(({ key, length, pence }) => ({ section: key, length, pence })),
    rack: rack.map(({ itemId, length }) => ({
      section: keys.get(itemId) ?? '',
      length: downToTenth(length),
      pence: 0,
    })),
  }
}

/** The parts with braces two and two: each pair as one piece, and one blank less of either. */
function pairedRows(parts: readonly TaskPart[], pairs: readonly BracePair[]): Row[] {
  const rows = new Map<string, Row>()
  const paired = new Map<string, number>()
  for (const { key, of } of pairs)
    for (const mark of of) {
      const named = JSON.stringify([key, mark])
      paired.set(named, (paired.get(named) ?? 0) + 1)
    }
  for (const part of parts) {
    const named = JSON.stringify([part.key, part.mark])
    const less = Math.min(part.quantity, paired.get(named) ?? 0)
    paired.set(named, (paired.get(named) ?? 0) - less)
    if (part.quantity > less) addRow(rows, { ...rowOf(part), quantity: part.quantity - less })
  }
  for (const { key, mark, length } of pairs) addRow(rows, { section: key, length, mark, quantity: 1 })
  return [...rows.values()]
}

type Sorted = Bought & { braces: PairableBraces[]; unpriced: UnpricedTimber[]; shelves: Shelf[] }

/** What can be bought and what can't, in the order in which the jobs ask for it. */
function sortedOut(asked: TaskAsked): Sorted {
  const wanted = asked.jobs.flatMap((job) =>
    jobTimber(asked.book, job).map((timber): Wanted => ({ job, ...timber })),
  )
  const all = shelvesOf(asked, wanted)
  const unpriced: UnpricedTimber[] = []
  const used = new Set<Shelf>()
  const parts: TaskPart[] = []
  const braces: PairableBraces[] = []
  for (const one of wanted) {
    const shelf = one.item && all.get(one.item.id)
    const why = hindranceOf(asked.book, one, shelf)
    if (why !== undefined || !shelf) {
      const tooLong = why === 'no length' && shelf ? tooLongOf(one, shelf, asked.cutting) : null
      addUnpriced(unpriced, one, { why: why ?? 'no item', tooLong })
      continue
    }
    used.add(shelf)
    for (const blank of one.blanks) {
      const part = partOf(shelf.key, one.job, blank)
      parts.push(part)
      if (blank.slanted) braces.push({ ...part, slanted: blank.slanted })
    }
  }
  const shelves = [...used]
  return {
    sections: shelves.map(sectionOf),
    parts,
    offers: shelves.flatMap(({ offers }) => offers),
    rack: shelves.flatMap(({ rack }) => rack),
    ...{ braces, unpriced, shelves },
  }
}

/**
 * What is to be bought for some jobs on the book's day, before it is planned: every blank as one of a section of the price book, each length that
 * can be bought with its price, what lies free on the rack at no price, and braces two and two where a shared cut spares timber. The same
 * jobs, prices and rack give the same task, stamp and all, whatever order the jobs come in.
 */
export function orderTask(given: TaskAsked): OrderTask {
  const jobs = [...given.jobs].sort((a, b) => a.jobId - b.jobId)
  const rackInOrder = [...given.rack].sort((a, b) => a.id - b.id)
  const { braces, unpriced, shelves, ...bought } = sortedOut({ ...given, jobs, rack: rackInOrder })
  const longest = new Map(shelves.map((shelf) => [shelf.key, shelf.longest]))
  const { cutting } = given
  const pairs = bracePairs(braces, { kerf: cutting.kerf, longest: (key) => longest.get(key) ?? 0 })
  const rows = new Map<string, Row>()
  for (const part of bought.parts) addRow(rows, rowOf(part))
  const requests = {
    plain: requestOf(bought, rows.values(), cutting),
    paired: pairs.length > 0 ? requestOf(bought, pairedRows(bought.parts, pairs), cutting) : null,
  }
  const stamp = stampOf([
    jobs.map(({ jobId }) => jobId),
    requests,
    bought.sections.map(({ itemId }) => itemId),
    bought.offers.map(({ priceId, supplierId }) => [priceId, supplierId]),
    bought.rack.map(({ id }) => id),
    [pairs, unpriced],
  ])
  const named = jobs.map(({ jobId, number, customer, title }) => ({ jobId, number, customer, title }))
  return { jobs: named, ...bought, pairs, unpriced, requests, stamp }
}
