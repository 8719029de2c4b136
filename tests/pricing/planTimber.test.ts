import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  firstFit,
  usualCutting,
  type BoughtLength,
  type StockLength,
} from '../../shared/pricing/buyTimber.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { plannedTimber } from '../../shared/pricing/planTimber.ts'
import { seed } from '../fixtures/sample.ts'
import { fourAndTwo } from './plannedEstimate.ts'

const costOf = (lengths: readonly BoughtLength[], stock: readonly StockLength[]): number =>
  lengths.reduce((sum, { size, count }) => {
    const sold = stock.find((one) => one.size === size)
    if (!sold) throw new Error(`${size} isn’t sold`)
    return sum + count * sold.pence
  }, 0)

const stock = [
  { size: 2400, pence: pence(900) },
  { size: 4800, pence: pence(1560) },
]

describe('whole lengths by the plan', () => {
  it('are two of 4.8 m for £31.20 where first fit takes two and a short one for £40.20', () => {
    const ask = { pieces: fourAndTwo, stock, cutting: usualCutting }
    // A piece takes its length and a kerf of 4, a length gives 4800 − 20 + 4 = 4784: 1909 + 2 × 1434 = 4777, twice.
    expect(plannedTimber(ask)).toEqual({ lengths: [{ size: 4800, count: 2 }], proven: true })
    // Longest first: 1905 and 1905; three of 1430; the fourth on one of 2400.
    expect(firstFit(ask)?.lengths).toEqual([
      { size: 2400, count: 1 },
      { size: 4800, count: 2 },
    ])
    expect(costOf(firstFit(ask)?.lengths ?? [], stock)).toBe(900 + 2 * 1560)
  })

  it('go by the saw: with a kerf of 8 the two lengths are 3 mm too short', () => {
    // 1913 + 2 × 1438 = 4789 against 4800 − 20 + 8 = 4788.
    const ask = { pieces: fourAndTwo, stock, cutting: { kerf: 8, endTrim: 20 } }
    expect(costOf(plannedTimber(ask)?.lengths ?? [], stock)).toBe(900 + 2 * 1560)
  })

  it('hold pieces to the tenth: what would be a hair too long on paper isn’t planned onto the length', () => {
    const asked = (length: number) =>
      plannedTimber({
        pieces: [{ length, quantity: 2 }],
        stock: [{ size: 3000, pence: pence(900) }],
        cutting: usualCutting,
      })?.lengths
    expect(asked(1488)).toEqual([{ size: 3000, count: 1 }])
    expect(asked(1488.01)).toEqual([{ size: 3000, count: 2 }])
  })

  it('aren’t there for a piece longer than any, and are none for no pieces', () => {
    expect(
      plannedTimber({ pieces: [{ length: 4781, quantity: 1 }], stock, cutting: usualCutting }),
    ).toBeNull()
    expect(plannedTimber({ pieces: [], stock, cutting: usualCutting })?.lengths).toEqual([])
  })

  it('are sold by their own names where two differ by less than a tenth', () => {
    const twins = [
      { size: 3000.04, pence: pence(1000) },
      { size: 3000.01, pence: pence(990) },
    ]
    const ask = { pieces: [{ length: 2900, quantity: 3 }], stock: twins, cutting: usualCutting }
    expect(plannedTimber(ask)?.lengths).toEqual([{ size: 3000.01, count: 3 }])
  })

  it('come by first fit past what any gate has, and say that nothing is proven', () => {
    const pieces = Array.from({ length: 25 }, (_, place) => ({ length: 500 + 7 * place, quantity: 1 }))
    const ask = { pieces, stock, cutting: usualCutting }
    expect(plannedTimber(ask)).toEqual(firstFit(ask))
    expect(plannedTimber(ask)?.proven).toBe(false)
  })

  it('are never dearer than by first fit, have room for every piece, and don’t go by the order of anything', () => {
    const piece = fc.record({
      length: fc.integer({ min: 3000, max: 23_000 }).map((tenths) => tenths / 10),
      quantity: fc.integer({ min: 1, max: 5 }),
    })
    const sold = fc.uniqueArray(
      fc.record({
        size: fc.constantFrom(2400, 2700, 3000, 3600, 3900, 4200, 4800, 5400),
        pence: fc.integer({ min: 500, max: 2500 }).map(pence),
      }),
      { minLength: 1, maxLength: 5, selector: ({ size }) => size },
    )
    process.stdout.write(`Planned lengths: 300 random lists, seed ${seed}\n`)
    const seen = { cheaper: 0, proven: 0 }
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 7 }), sold, (pieces, kept) => {
        const ask = { pieces, stock: kept, cutting: usualCutting }
        const [plan, fit] = [plannedTimber(ask), firstFit(ask)]
        if (!plan || !fit) return expect(plan).toEqual(fit)
        const [planned, fitted] = [costOf(plan.lengths, kept), costOf(fit.lengths, kept)]
        expect(planned).toBeLessThanOrEqual(fitted)
        const held = plan.lengths.reduce((sum, { size, count }) => sum + count * (size - 20 + 4), 0)
        const wanted = pieces.reduce((sum, { length, quantity }) => sum + quantity * (length + 4), 0)
        expect(held).toBeGreaterThanOrEqual(wanted - 1e-6)
        const turned = { ...ask, pieces: [...pieces].reverse(), stock: [...kept].reverse() }
        expect(plannedTimber(turned)).toEqual(plan)
        seen.cheaper += Number(planned < fitted)
        seen.proven += Number(plan.proven)
      }),
      { seed, numRuns: 300 },
    )
    process.stdout.write(`${JSON.stringify(seen)}\n`)
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(15)
  })
})
