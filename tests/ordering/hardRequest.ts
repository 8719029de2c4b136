import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'

/** A row of numbers that looks thrown and is the same each time (a linear congruence, its constants those of Numerical Recipes). */
function* thrown(from: number): Generator<number, never> {
  for (let state = from >>> 0; ;) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    yield state / 2 ** 32
  }
}

/** An invented order that no laptop proves in a moment: two stock lengths against so many part lengths, several of each. */
export function hardRequest(lengths: number, from: number, section = 'boards'): BuyRequest {
  const dice = thrown(from)
  const between = (least: number, most: number) => least + Math.floor(dice.next().value * (most - least + 1))
  return {
    ...{ version: 1, kerf: 3.2, endTrim: 20, leastOffcut: 450 },
    parts: Array.from({ length: lengths }, (_, n) => ({
      ...{
        section,
        length: between(4000, 21_000) / 10,
        quantity: between(2, 9),
        mark: `2026-014 part ${n + 1}`,
      },
    })),
    stock: [
      { section, length: 3900, pence: 983 },
      { section, length: 5400, pence: 1361 },
    ],
    rack: [],
  }
}
