import type { Task } from './checkTask.ts'

const at = (list: readonly number[], index: number): number => list[index] ?? NaN
const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0)

/** Steps after which a look through all packings is given up. */
const mostSteps = 3_000_000

type Filling = { rest: number[]; part: number; space: number }
type Look = Task & { steps: number; failed: Set<string> }

/** Whether every part goes into these lengths; also true where too much would have to be looked at to say no. */
function packs(look: Look, left: number[], lengths: number[]): boolean {
  const { sizes, offers, failed } = look
  const first = left.findIndex((count) => count > 0)
  if (first < 0) return true
  const room = sum(offers.map((offer, kind) => offer.room * at(lengths, kind)))
  const slack = room - sum(left.map((count, part) => count * at(sizes, part)))
  if (slack < 0 || failed.has(`${left}|${lengths}`)) return false
  const fill = (others: number[], { rest, part, space }: Filling): boolean => {
    look.steps -= 1
    if (look.steps < 0) return true
    if (part === rest.length) return space <= slack && packs(look, rest, others)
    const size = at(sizes, part)
    for (let count = Math.min(at(rest, part), Math.floor(space / size)); count >= 0; count -= 1) {
      const now = rest.with(part, at(rest, part) - count)
      if (fill(others, { rest: now, part: part + 1, space: space - count * size })) return true
    }
    return false
  }
  const found = offers.some((offer, kind) => {
    if (at(lengths, kind) === 0 || offer.room < at(sizes, first)) return false
    const others = lengths.with(kind, at(lengths, kind) - 1)
    return fill(others, { rest: left, part: first, space: offer.room })
  })
  if (!found) failed.add(`${left}|${lengths}`)
  return found
}

/** Whether it can be shown, within reason, that no packing puts every part into exactly these lengths. Part of the checker: shares nothing with the solver. */
export const cannotPack = (one: Task, lengths: number[]): boolean =>
  !packs({ ...one, steps: mostSteps, failed: new Set() }, one.demand, lengths)
