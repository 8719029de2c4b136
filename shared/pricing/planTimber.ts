import { buyingPlan } from '../cutting/buyingPlan/plan.ts'
import { parseBuyRequest, type BuyRequest } from '../cutting/buyingPlan/request.ts'
import { firstFit, type BoughtLength, type BuyTimber, type Purchase, type TimberToBuy } from './buyTimber.ts'

/** Work on one section of a gate after which the plan ends by itself: some hundredths of a second on a small laptop. */
const mostEffort = 5_000_000
/** More pieces of one section, and more lengths of them, than any one gate has: past these a plan can't be had between two keys. */
const [mostPieces, mostDistinct] = [150, 24]

/** A length needed, up to whole tenths, and one that is there, down: a plan counts in tenths and must hold every piece. */
const upToTenth = (mm: number): number => Math.ceil(mm * 10 - 1e-6) / 10
const downToTenth = (mm: number): number => Math.floor(mm * 10 + 1e-6) / 10

/** One section is planned at a time, so that its name says nothing. */
const section = 'timber'

const requestOf = ({ pieces, stock, cutting }: TimberToBuy): BuyRequest => ({
  version: 1,
  kerf: upToTenth(cutting.kerf),
  endTrim: upToTenth(cutting.endTrim),
  leastOffcut: 0,
  parts: pieces.map(({ length, quantity }) => ({ section, length: upToTenth(length), quantity })),
  stock: stock.map(({ size, pence }) => ({ section, length: downToTenth(size), pence })),
})

function isSmall({ pieces }: TimberToBuy): boolean {
  const count = pieces.reduce((sum, { quantity }) => sum + quantity, 0)
  return count <= mostPieces && new Set(pieces.map(({ length }) => length)).size <= mostDistinct
}

/** The cheapest size that is of a length in whole tenths: what a plan bought, by the merchant's own name for it. */
function sizeOf(stock: TimberToBuy['stock'], length: number): number {
  const own = stock.filter(({ size }) => downToTenth(size) === length)
  return own.reduce(
    (best, one) => (one.pence < best.pence ? one : best),
    own[0] ?? { size: length, pence: 0 },
  ).size
}

/** The plan's own lengths, counted by size; undefined where there is none for such a request. */
function planned(ask: TimberToBuy): (Purchase & { pence: number }) | undefined {
  const request = isSmall(ask) ? parseBuyRequest(requestOf(ask)) : undefined
  const plan = request?.ok ? buyingPlan(request.value, { mostEffort }) : undefined
  if (!plan?.ok) return undefined
  const counts = new Map<number, number>()
  for (const { stock, count } of plan.value.lengths) {
    const size = sizeOf(ask.stock, stock)
    counts.set(size, (counts.get(size) ?? 0) + count)
  }
  const lengths = [...counts].map(([size, count]) => ({ size, count })).sort((a, b) => a.size - b.size)
  return { lengths, proven: plan.value.status === 'proven', pence: plan.value.cost }
}

const costOf = ({ stock }: TimberToBuy, lengths: readonly BoughtLength[]): number =>
  lengths.reduce((sum, { size, count }) => {
    const prices = stock.flatMap((one) => (one.size === size ? [one.pence] : []))
    return sum + count * Math.min(...prices)
  }, 0)

/**
 * Whole lengths by the buying plan, never dearer than by first fit: the same pieces, stock and cutting give the same lengths on every machine.
 * proven where the plan shows that no lengths are cheaper. Work on it is bounded, so that a gate of one's own making (a hundred boards,
 * each of its own length) still answers at once, by the plan as far as it came or by first fit. Pieces of 2 × 1905 and 4 × 1430 from
 * lengths of 4800 at £15.60: two for £31.20, each with one of the first and two of the second, where first fit takes three.
 */
export const plannedTimber: BuyTimber = (ask) => {
  const fit = firstFit(ask)
  if (!fit || fit.lengths.length === 0) return fit
  const plan = planned(ask)
  if (!plan || (!plan.proven && costOf(ask, fit.lengths) < plan.pence)) return fit
  return { lengths: plan.lengths, proven: plan.proven }
}
