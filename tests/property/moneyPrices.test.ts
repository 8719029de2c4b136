import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PriceBook } from '../../shared/pricing/book.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { Price, PriceLine } from '../../shared/pricing/price.ts'
import { historyOf, nextPrice, priceOn, standingPrices } from '../../shared/pricing/standing.ts'
import { bookChange, standingBook } from '../../shared/pricing/standingBook.ts'
import { seed, soak } from '../fixtures/sample.ts'

const numRuns = soak ? 20_000 : 1000
process.stdout.write(`Prices: ${numRuns} random histories, seed ${seed}\n`)

/** Few days and few lines, so that many prices share both. */
const day = fc.integer({ min: 1, max: 6 }).map((number) => `2026-05-0${number}`)
const line: fc.Arbitrary<PriceLine> = fc.oneof(
  fc.record({
    itemId: fc.integer({ min: 1, max: 3 }),
    supplierId: fc.constantFrom(null, 1),
    unit: fc.constantFrom('metre', 'each'),
    size: fc.constant(null),
  }),
  fc.record({
    itemId: fc.integer({ min: 1, max: 3 }),
    supplierId: fc.constant(1),
    unit: fc.constant('box' as const),
    size: fc.constantFrom(100, 200),
  }),
)
/** A history in which the numbers come in any order, as rows may be read in any. */
const history = fc
  .array(fc.record({ line, startsOn: day, sum: fc.nat(9999) }), { minLength: 1, maxLength: 40, size: 'max' })
  .chain((rows) =>
    fc
      .shuffledSubarray(
        rows.map((_, index) => index + 1),
        { minLength: rows.length, maxLength: rows.length },
      )
      .map((ids) =>
        rows.map((row, index): Price => ({
          ...row.line,
          id: ids[index] as number,
          pence: pence(row.sum),
          startsOn: row.startsOn,
          origin: 'by hand',
          riseId: null,
          addedAt: '',
        })),
      ),
  )

const keyOf = ({ itemId, supplierId, unit, size }: PriceLine) => [itemId, supplierId, unit, size].join('/')

/** The rule told the slow way: put all in order of start and number, and take the last that has started. */
const oracle = (prices: Price[], of: PriceLine, on: string): Price | undefined =>
  prices
    .filter((price) => keyOf(price) === keyOf(of) && price.startsOn.localeCompare(on) <= 0)
    .sort((a, b) => a.startsOn.localeCompare(b.startsOn) || a.id - b.id)
    .at(-1)

describe('a random history of prices', () => {
  it('stands on any day as told by a naive oracle, future dates and equal dates in it', () => {
    let [equal, future, none] = [0, 0, 0]
    fc.assert(
      fc.property(history, line, day, (prices, asked, on) => {
        const standing = standingPrices({ prices }, on)
        for (const of of [asked, ...prices]) {
          const expected = oracle(prices, of, on)
          expect(priceOn(prices, of, on)).toBe(expected)
          expect(standing.of(of)).toBe(expected)
          if (!expected) none += 1
          else if (
            prices.some(
              (one) => one !== expected && keyOf(one) === keyOf(of) && one.startsOn === expected.startsOn,
            )
          )
            equal += 1
          if (prices.some((one) => keyOf(one) === keyOf(of) && one.startsOn > on)) future += 1
        }
        for (const itemId of [1, 2, 3]) {
          const lines = new Map(prices.filter((one) => one.itemId === itemId).map((one) => [keyOf(one), one]))
          const expected = [...lines.values()].flatMap((one) => oracle(prices, one, on) ?? [])
          expect(new Set(standing.ofItem(itemId))).toEqual(new Set(expected))
        }
      }),
      { seed, numRuns },
    )
    process.stdout.write(`${equal} of equal days, ${future} with a later price, ${none} with none yet\n`)
    expect(Math.min(equal, future, none)).toBeGreaterThan(numRuns)
  })

  it('has as its next price the one that an oracle finds to take over first', () => {
    fc.assert(
      fc.property(history, line, day, (prices, of, on) => {
        const days = prices
          .filter((one) => keyOf(one) === keyOf(of) && one.startsOn > on)
          .map(({ startsOn }) => startsOn)
        const first = days.sort()[0]
        expect(nextPrice(prices, of, on)).toBe(first === undefined ? undefined : oracle(prices, of, first))
      }),
      { seed, numRuns },
    )
  })

  it('told in order holds on each of its days what stood then', () => {
    fc.assert(
      fc.property(history, line, (prices, of) => {
        const told = historyOf(prices, of)
        for (const price of told) expect(oracle(prices, of, price.startsOn)).toBe(price)
        expect(new Set(told.map(({ startsOn }) => startsOn)).size).toBe(told.length)
        const days = prices.filter((one) => keyOf(one) === keyOf(of)).map(({ startsOn }) => startsOn)
        expect(told.map(({ startsOn }) => startsOn)).toEqual([...new Set(days)].sort())
      }),
      { seed, numRuns },
    )
  })

  it('with prices added stands as if the book had been read anew, and the change names just what differs', () => {
    fc.assert(
      fc.property(history, history, day, (prices, more, on) => {
        const last = prices.length
        const added = more.map((one) => ({ ...one, id: one.id + last }))
        const book = (all: Price[]): PriceBook => ({ items: [], suppliers: [], supplies: [], prices: all })
        const [before, after] = [book(prices), book([...prices, ...added])]
        const change = bookChange(before, after, on)
        const back = bookChange(after, before, on)
        for (const itemId of [1, 2, 3]) {
          const [was, is] = [before, after].map((one) => standingBook(one, on).prices.ofItem(itemId))
          expect(change.before.prices.ofItem(itemId)).toEqual(was)
          expect(change.after.prices.ofItem(itemId)).toEqual(is)
          const differs = JSON.stringify(was) !== JSON.stringify(is)
          expect(change.touched(itemId)).toBe(differs)
          expect(back.touched(itemId)).toBe(differs)
        }
      }),
      { seed, numRuns },
    )
  })
})
