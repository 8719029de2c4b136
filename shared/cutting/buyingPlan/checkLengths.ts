import { offered, offerKey, roomOf, tally, tenths, type Steps } from './checkTask.ts'
import type { BuyingPlan, CutLength } from './planModel.ts'
import type { BuyRequest } from './request.ts'

/** Lengths gone through at once. */
const atOnce = 200

const partKey = (section: string, { length, mark }: { length: number; mark?: string | undefined }): string =>
  JSON.stringify([section, length, mark ?? null])

const sumOf = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0)
const cutFrom = ({ cuts }: CutLength): number => sumOf(cuts.map(({ length }) => tenths(length)))

/** What remains of a length by the cuts named on it, tenths: below nothing where they don't fit. The last cut may meet the end. */
const spareOf = (request: BuyRequest, one: CutLength): number =>
  roomOf(request, one) - cutFrom(one) - one.cuts.length * tenths(request.kerf)
const offcutOf = (request: BuyRequest, one: CutLength): number =>
  Math.max(0, spareOf(request, one) - tenths(request.kerf))

function lengthFaults(request: BuyRequest, one: CutLength, index: number): string[] {
  const spare = spareOf(request, one)
  const offcut = offcutOf(request, one)
  return [
    ...(spare < 0 ? [`lengths[${index}]: its cuts don’t fit, ${-spare / 10} mm too much`] : []),
    ...(tenths(one.offcut) === offcut ? [] : [`lengths[${index}]: its offcut is ${offcut / 10}`]),
    ...(Number.isInteger(one.count) && one.count > 0 && one.cuts.length > 0
      ? []
      : [`lengths[${index}]: cuts nothing`]),
  ]
}

/** What is lost of one length, tenths: all but its parts and an offcut worth keeping. */
function lostOf(request: BuyRequest, one: CutLength): number {
  const offcut = offcutOf(request, one)
  return tenths(one.stock) - cutFrom(one) - (offcut >= tenths(request.leastOffcut) ? offcut : 0)
}

/** A way of cutting, whatever its parts are for. */
const patternKey = (one: CutLength): string =>
  offerKey(one.section, one) +
  [...one.cuts]
    .map(({ length }) => tenths(length))
    .sort((a, b) => a - b)
    .join()

/** What a plan's lengths come to: pence, tenths lost, ways of cutting, how often each part is cut and each offer taken. */
type Sums = {
  cost: number
  lost: number
  patterns: Set<string>
  cut: Map<string, number>
  taken: Map<string, number>
}

const add = (totals: Map<string, number>, key: string, count: number) =>
  totals.set(key, (totals.get(key) ?? 0) + count)

function figureFaults(plan: BuyingPlan, { cost, lost, patterns }: Sums): string[] {
  return [
    ...(cost === plan.cost ? [] : [`cost: the lengths come to ${cost} pence, not ${plan.cost}`]),
    ...(Math.abs(plan.waste * 10 - lost) < 1e-3 ? [] : [`waste: ${lost / 10} mm is lost, not ${plan.waste}`]),
    ...(patterns.size === plan.patterns
      ? []
      : [`patterns: there are ${patterns.size}, not ${plan.patterns}`]),
  ]
}

function countFaults(request: BuyRequest, { cut, taken }: Sums): string[] {
  const wanted = tally(request.parts.map((part) => [partKey(part.section, part), part.quantity]))
  const have = offered(request)
  return [
    ...[...new Set([...wanted.keys(), ...cut.keys()])]
      .filter((key) => wanted.get(key) !== cut.get(key))
      .map((key) => `${key}: ${wanted.get(key) ?? 0} wanted, ${cut.get(key) ?? 0} cut`),
    ...[...taken]
      .filter(([key, count]) => count > (have.get(key) ?? 0))
      .map(([key]) => `${key}: not to be had so often`),
  ]
}

/** Every fault in a plan's lengths and in what it says of them: what fits, what is cut and taken, money, waste, ways of cutting. */
export function* lengthsFaults(request: BuyRequest, plan: BuyingPlan): Steps<string[]> {
  const faults: string[] = []
  const sums: Sums = { cost: 0, lost: 0, patterns: new Set(), cut: new Map(), taken: new Map() }
  for (const [index, one] of plan.lengths.entries()) {
    if (index % atOnce === 0) yield
    faults.push(...lengthFaults(request, one, index))
    sums.cost += one.pence * one.count
    sums.lost += lostOf(request, one) * one.count
    sums.patterns.add(patternKey(one))
    for (const part of one.cuts) add(sums.cut, partKey(one.section, part), one.count)
    add(sums.taken, offerKey(one.section, one), one.count)
  }
  yield
  return [...faults, ...countFaults(request, sums), ...figureFaults(plan, sums)]
}
