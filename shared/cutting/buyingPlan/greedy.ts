import { demandsOf, priceOf, type Bought, type CuttingProblem, type Pattern } from './cuttingProblem.ts'
import { reals } from './lists.ts'

/** A length filled from the longest part down, by values that say what is best put in first. */
function filled(
  { parts }: CuttingProblem,
  { room, left, order }: { room: number; left: number[]; order: readonly number[] },
): Pattern {
  const counts = parts.map(() => 0)
  let rest = room
  for (const part of order) {
    const { size } = parts[part] as { size: number }
    const fits = Math.min(left[part] as number, Math.floor(rest / size))
    if (fits <= 0) continue
    counts[part] = fits
    rest -= fits * size
  }
  return counts
}

/** How often a pattern can be cut from what is left, and the stock that is left. */
function timesOf(counts: Pattern, left: number[], available: number): number {
  let times = available
  counts.forEach((count, part) => {
    if (count > 0) times = Math.min(times, Math.floor((left[part] as number) / count))
  })
  return times
}

type Choice = { stock: number; counts: Pattern; share: number }

/** The stock whose filled length costs least for what it holds, with each part's worth. */
function bestChoice(
  problem: CuttingProblem,
  { left, available, order, worth }: GreedyState,
): Choice | undefined {
  let best: Choice | undefined
  problem.stocks.forEach(({ room, pence }, stock) => {
    if ((available[stock] as number) <= 0) return
    const counts = filled(problem, { room, left, order })
    let held = 0
    counts.forEach((count, part) => (held += count * (worth[part] as number)))
    if (held <= 0) return
    const share = pence / held
    if (!best || share < best.share) best = { stock, counts, share }
  })
  return best
}

type GreedyState = { left: number[]; available: Int32Array; order: number[]; worth: Float64Array }

/** One plan, length by length, by what each part is thought to be worth. Undefined where limited stock ran out; bought then lacks parts. */
export function greedyPlan(
  problem: CuttingProblem,
  worth: Float64Array,
): { bought: Bought[]; left: number[] } {
  const left = demandsOf(problem)
  const available = Int32Array.from(problem.stocks, ({ most }) => most)
  const order = problem.parts
    .map((_, part) => part)
    .sort((a, b) => density(problem, worth, b) - density(problem, worth, a) || a - b)
  const state = { left, available, order, worth }
  const bought: Bought[] = []
  for (;;) {
    const choice = bestChoice(problem, state)
    if (!choice) return { bought, left }
    const { stock, counts } = choice
    const times = Math.max(1, timesOf(counts, left, available[stock] as number))
    bought.push({ stock, counts, times })
    available[stock] = (available[stock] as number) - times
    counts.forEach((count, part) => (left[part] = (left[part] as number) - count * times))
  }
}

const density = ({ parts }: CuttingProblem, worth: Float64Array, part: number): number =>
  (worth[part] as number) / Math.sqrt((parts[part] as { size: number }).size)

const whole = (left: number[]): boolean => left.every((count) => count === 0)

/** How many plans are made, whether to end with those there are, and what hears of each that is better. */
export type Tries = { rounds: number; stop?: () => boolean; onBetter?: (plan: Bought[]) => void }

/**
 * The best of several greedy plans, each learning from the one before: parts that ended in dear lengths are worth more next time.
 * undefined when limited stock never sufficed.
 */
export function bestGreedy(
  problem: CuttingProblem,
  { rounds, stop = () => false, onBetter }: Tries,
): Bought[] | undefined {
  let worth: Float64Array = Float64Array.from(problem.parts, ({ size }) => size)
  let best: Bought[] | undefined
  let least = Infinity
  // The first is always made: whoever stops at once still has a plan.
  for (let round = 0; round < rounds && (round === 0 || !stop()); round += 1) {
    const { bought, left } = greedyPlan(problem, worth)
    const pence = whole(left) ? priceOf(problem, bought) : Infinity
    if (pence < least) {
      onBetter?.(bought)
      best = bought
      least = pence
    }
    worth = learned(problem, { bought, left, worth })
  }
  return best
}

type Lesson = { bought: Bought[]; left: number[]; worth: Float64Array }

/** New worths: half of the old, half of what each part's length cost for its share of what the length held. */
function learned({ parts, stocks }: CuttingProblem, { bought, left, worth }: Lesson): Float64Array {
  const paid = reals(parts.length)
  const taken = reals(parts.length)
  for (const { stock, counts, times } of bought) {
    let held = 0
    counts.forEach((count, part) => (held += count * (parts[part]?.size ?? 0)))
    const rate = ((stocks[stock]?.pence ?? 0) + 1e-3) / held
    counts.forEach((count, part) => {
      paid[part] = (paid[part] as number) + rate * (parts[part]?.size ?? 0) * count * times
      taken[part] = (taken[part] as number) + count * times
    })
  }
  const scale = meanRate(paid, taken, parts)
  return worth.map((old, part) => {
    if ((left[part] as number) > 0 || (taken[part] as number) === 0) return old * 1.5
    return 0.5 * old + 0.5 * ((paid[part] as number) / (taken[part] as number) / scale)
  })
}

/** What a step of length cost on average, so that worths stay of the size of lengths. */
function meanRate(paid: Float64Array, taken: Float64Array, parts: CuttingProblem['parts']): number {
  let [money, length] = [0, 0]
  parts.forEach(({ size }, part) => {
    money += paid[part] as number
    length += size * (taken[part] as number)
  })
  return length > 0 && money > 0 ? money / length : 1
}
