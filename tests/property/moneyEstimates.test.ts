import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { EstimateLine, Estimate } from '../../shared/pricing/estimate.ts'
import { offerLines } from '../../shared/pricing/offerLines.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { standingBook } from '../../shared/pricing/standingBook.ts'
import {
  taxRoundings,
  type EstimateEntry,
  type MoneySettings,
  type Profit,
} from '../../shared/pricing/terms.ts'
import { estimateFrom } from '../../shared/pricing/workEstimate.ts'
import { seed, soak } from '../fixtures/sample.ts'
import { fullBook, neededGates } from '../pricing/pricedGates.ts'

const numRuns = soak ? 100_000 : 5000
process.stdout.write(`Estimates: ${numRuns} random entries over 40 gates, seed ${seed}\n`)

const { book, finish } = fullBook()
// A tenth of the items lose their prices, so that lines go missing too.
const bare = { ...book, prices: book.prices.filter(({ itemId }) => itemId % 10 !== 7) }
const books = [standingBook(book, '2026-06-15'), standingBook(bare, '2026-06-15')] as const

const profit: fc.Arbitrary<Profit> = fc.oneof(
  fc.record({ by: fc.constant('markup' as const), bp: fc.nat(20_000) }),
  fc.record({ by: fc.constant('margin' as const), bp: fc.nat(9500) }),
)
const lineIds = [
  ...new Set(
    neededGates.flatMap(({ needs }) =>
      estimateFrom(books[0], {
        needs,
        entry: entryOf(),
        settings: standardMoney,
        times: standardTimes,
      }).lines.map(({ id }) => id),
    ),
  ),
]

function entryOf(): EstimateEntry {
  return {
    overrules: {},
    extras: [],
    chosen: {},
    finish: { itemId: finish, coats: null },
    siteVisits: 1,
    kilometres: 10,
    discount: null,
    profit: null,
    depositBp: null,
  }
}

const overrule = fc.record(
  {
    quantity: fc.double({ min: 0, max: 500, noNaN: true }),
    minutes: fc.double({ min: 0, max: 5000, noNaN: true }),
    pence: fc.nat(100_000).map(pence),
  },
  { requiredKeys: [] },
)
const entry: fc.Arbitrary<EstimateEntry> = fc.record({
  overrules: fc.dictionary(fc.constantFrom(...lineIds), overrule, { maxKeys: 6 }),
  extras: fc.uniqueArray(
    fc.record({
      id: fc.string({ minLength: 1, maxLength: 4 }),
      words: fc.constant('a line of the joiner’s own'),
      pence: fc
        .oneof(
          { weight: 9, arbitrary: fc.nat(30_000) },
          { weight: 1, arbitrary: fc.integer({ min: -300_000, max: 0 }) },
        )
        .map(pence),
      group: fc.constantFrom('making', 'hanging'),
    }),
    { maxLength: 4, selector: ({ id }) => id },
  ),
  chosen: fc.dictionary(fc.constantFrom(...lineIds), fc.integer({ min: 1, max: book.items.length + 2 }), {
    maxKeys: 2,
  }),
  finish: fc.option(
    fc.record({
      itemId: fc.constantFrom(finish, finish, 1, 9999),
      coats: fc.option(fc.integer({ min: 1, max: 6 })),
    }),
  ),
  siteVisits: fc.nat(4),
  kilometres: fc.double({ min: 0, max: 300, noNaN: true }),
  discount: fc.option(
    fc.oneof(
      fc.record({ by: fc.constant('percent' as const), bp: fc.nat(10_000) }),
      fc.record({ by: fc.constant('sum' as const), pence: fc.nat(500_000).map(pence) }),
    ),
  ),
  profit: fc.option(profit),
  depositBp: fc.option(fc.nat(10_000)),
})
const settings: fc.Arbitrary<MoneySettings> = fc.record({
  currency: fc.constantFrom('GBP', 'EUR', 'USD'),
  tax: fc.record({
    registered: fc.boolean(),
    name: fc.constant('VAT'),
    number: fc.constant(''),
    rates: fc.constantFrom([{ from: '2011-01-04', bp: 2000 }], [{ from: '2000-01-01', bp: 1375 }]),
    rounding: fc.constantFrom(...taxRoundings),
  }),
  wasteBp: fc.nat(5000),
  overheadBp: fc.nat(20_000),
  profit,
  depositBp: fc.nat(10_000),
  validDays: fc.constant(30),
  fixingsBy: fc.constantFrom('share', 'box'),
  finishBy: fc.constantFrom('share', 'tin'),
})

const sumOf = (amounts: readonly number[]): number => amounts.reduce((sum, one) => sum + one, 0)

function addsUp(made: Estimate): void {
  const all = [
    made.cost,
    made.overhead,
    made.profit,
    made.discount,
    made.net,
    made.tax,
    made.gross,
    made.deposit,
  ]
  for (const amount of [...all, ...made.lines.map((line) => line.pence)]) {
    expect(Number.isSafeInteger(amount)).toBe(true)
    expect(Object.is(amount, -0)).toBe(false)
  }
  expect(sumOf(made.lines.map((line) => line.pence))).toBe(made.cost)
  expect(made.cost + made.overhead + made.profit - made.discount).toBe(made.net)
  expect(made.net + made.tax).toBe(made.gross)
}

const isMissing = ({ missing }: EstimateLine): boolean => missing !== null

describe('an estimate of any gate with any entry and any settings', () => {
  it('adds up to the penny from what is printed, offer and tax too', () => {
    const seen = { missing: 0, negative: 0, discounted: 0, overruled: 0, mixed: 0 }
    fc.assert(
      fc.property(
        fc.constantFrom(...neededGates),
        entry,
        settings,
        fc.constantFrom(...books),
        ({ needs }, own, terms, open) => {
          const made = estimateFrom(open, { needs, entry: own, settings: terms, times: standardTimes })
          addsUp(made)
          const offer = offerLines({ estimate: made, settings: terms })
          expect(sumOf(offer.map(({ net }) => net))).toBe(made.net)
          expect(sumOf(offer.map(({ taxTenths }) => taxTenths))).toBe(made.taxTenths)
          expect(Math.abs(made.taxTenths - 10 * made.tax)).toBeLessThan(10)
          expect(made.missing).toEqual(made.lines.filter(isMissing).map(({ id }) => id))
          for (const line of made.lines) {
            if (isMissing(line)) expect(line.pence).toBe(0)
            else expect(line.how.formula).not.toBe('')
            expect(line.how.value * 100).toBeCloseTo(line.pence, 4)
          }
          seen.missing += Number(made.missing.length > 0)
          seen.negative += Number(made.net < 0)
          seen.discounted += Number(made.discount > 0)
          seen.overruled += Number(made.lines.some(({ overruled }) => overruled))
          seen.mixed += Number(made.lines.some((line) => line.each === null && !isMissing(line)))
        },
      ),
      { seed, numRuns },
    )
    process.stdout.write(`${JSON.stringify(seen)}\n`)
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(numRuns / 100)
  })
})
