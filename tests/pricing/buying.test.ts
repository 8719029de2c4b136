import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { firstFit, usualCutting } from '../../shared/pricing/buyTimber.ts'
import { buyTins } from '../../shared/pricing/buyTins.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { seed } from '../fixtures/sample.ts'

const stock = [
  { size: 3000, pence: pence(900) },
  { size: 4800, pence: pence(1300) },
]

describe('whole lengths of timber', () => {
  it('of 1800, 1800 and 900 come on one of 4800', () => {
    const pieces = [
      { length: 900, quantity: 1 },
      { length: 1800, quantity: 2 },
    ]
    expect(firstFit({ pieces, stock, cutting: usualCutting })?.lengths).toEqual([{ size: 4800, count: 1 }])
  })

  it('are left on the shorter one where that will do, and none are bought for no pieces', () => {
    const pieces = [{ length: 2000, quantity: 1 }]
    expect(firstFit({ pieces, stock, cutting: usualCutting })?.lengths).toEqual([{ size: 3000, count: 1 }])
    expect(firstFit({ pieces: [], stock, cutting: usualCutting })?.lengths).toEqual([])
  })

  it('can end on the last cut, and not a millimetre past it', () => {
    const cutting = { kerf: 4, endTrim: 20 }
    const asked = (length: number) =>
      firstFit({ pieces: [{ length, quantity: 2 }], stock: [{ size: 3000, pence: pence(900) }], cutting })
        ?.lengths
    // 2 × 1488 + one kerf of 4 between = 2980 = 3000 − 20.
    expect(asked(1488)).toEqual([{ size: 3000, count: 1 }])
    expect(asked(1488.5)).toEqual([{ size: 3000, count: 2 }])
  })

  it('aren’t there for a piece longer than any', () => {
    expect(firstFit({ pieces: [{ length: 4781, quantity: 1 }], stock, cutting: usualCutting })).toBeNull()
    expect(firstFit({ pieces: [{ length: 4780, quantity: 1 }], stock, cutting: usualCutting })).not.toBeNull()
  })

  it('always hold every piece, and never cost more than one length a piece', () => {
    const piece = fc.record({
      length: fc.integer({ min: 100, max: 4700 }),
      quantity: fc.integer({ min: 1, max: 6 }),
    })
    process.stdout.write(`Lengths: 1000 random lists, seed ${seed}\n`)
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 8 }), (pieces) => {
        const bought = firstFit({ pieces, stock, cutting: usualCutting })?.lengths ?? []
        const held = bought.reduce((sum, { size, count }) => sum + count * (size - 20 + 4), 0)
        const wanted = pieces.reduce((sum, { length, quantity }) => sum + quantity * (length + 4), 0)
        const number = pieces.reduce((sum, { quantity }) => sum + quantity, 0)
        expect(held).toBeGreaterThanOrEqual(wanted)
        expect(bought.reduce((sum, { count }) => sum + count, 0)).toBeLessThanOrEqual(number)
      }),
      { seed, numRuns: 1000 },
    )
  })
})

/** The least by trying every number of every tin. */
function leastByTrying(litres: number, tins: readonly { litres: number; pence: number }[]): number {
  const [tin, ...rest] = tins
  if (!tin) return litres <= 0 ? 0 : Infinity
  let least = Infinity
  for (let count = 0; count <= Math.ceil(Math.max(0, litres) / tin.litres); count += 1)
    least = Math.min(least, count * tin.pence + leastByTrying(litres - count * tin.litres, rest))
  return least
}

describe('whole tins of finish', () => {
  it('of 3.2 litres are a 1 and a 2.5 for £44', () => {
    const tins = [
      { litres: 1, pence: pence(1400) },
      { litres: 2.5, pence: pence(3000) },
    ]
    expect(buyTins(3.2, tins)).toEqual({ counts: [1, 1], pence: 4400 })
    expect(buyTins(0, tins)).toEqual({ counts: [0, 0], pence: 0 })
    expect(buyTins(5, tins)).toEqual({ counts: [0, 2], pence: 6000 })
    expect(() => buyTins(1, [])).toThrow(RangeError)
  })

  it('are the cheapest there are, as trying every mix shows', () => {
    const tin = fc.record({
      litres: fc.constantFrom(0.25, 0.375, 0.75, 1, 2.5, 5),
      pence: fc.integer({ min: 1, max: 6000 }).map(pence),
    })
    process.stdout.write(`Tins: 1000 random mixes, seed ${seed}\n`)
    fc.assert(
      fc.property(
        fc.array(tin, { minLength: 1, maxLength: 3 }),
        fc.integer({ min: 0, max: 160 }),
        (tins, sixteenths) => {
          const litres = sixteenths / 16
          expect(buyTins(litres, tins).pence).toBe(leastByTrying(litres, tins))
        },
      ),
      { seed, numRuns: 1000 },
    )
  })

  it('by the thousand are bought at once, the bulk in the tin cheapest by the litre', () => {
    const tins = [
      { litres: 0.999, pence: pence(1400) },
      { litres: 5, pence: pence(5500) },
    ]
    const { counts } = buyTins(40_000, tins)
    expect(0.999 * (counts[0] ?? 0) + 5 * (counts[1] ?? 0)).toBeGreaterThanOrEqual(40_000)
    expect(counts[1]).toBeGreaterThan(7990)
  })
})
