import { describe, expect, it } from 'vitest'
import { pence } from '../../shared/pricing/pence.ts'
import { netOfGross, taxOn, taxRateOn } from '../../shared/pricing/tax.ts'
import { taxRoundings } from '../../shared/pricing/terms.ts'

const three = [pence(99), pence(99), pence(99)]
const net = [pence(1234)]

/**
 * What may be rounded how: VAT Notice 700 para 17.5 as told in HMRC manual VATREC12010. The amounts are worked by hand at 20 %: 99p bears
 * 19.8p, three of them 59.4p; £12.34 bears 246.8p.
 */
describe('VAT at 20 % by each rounding of VAT Notice 700 para 17.5 (HMRC manual VATREC12010)', () => {
  it.each([
    ['total down', 59, 594],
    ['total nearest', 59, 594],
    ['line down to 0.1', 59, 594],
    ['line nearest 0.5', 60, 600],
    ['line nearest 1', 60, 600],
  ] as const)('three lines of £0.99, %s: %i pence of %i tenths', (rounding, tax, totalTenths) => {
    expect(taxOn(three, 2000, rounding)).toMatchObject({ tax, totalTenths })
  })

  it.each([
    ['total down', 246, 2468],
    ['total nearest', 247, 2468],
    ['line down to 0.1', 246, 2468],
    ['line nearest 0.5', 247, 2470],
    ['line nearest 1', 247, 2470],
  ] as const)('£12.34 net, %s: %i pence of %i tenths', (rounding, tax, totalTenths) => {
    expect(taxOn(net, 2000, rounding)).toMatchObject({ tax, totalTenths })
  })

  it('a line rounded down keeps its tenths; only the total is made whole', () => {
    // 1.23 and 4.57 at 17.5 % bear 21.525p and 79.975p: by hand.
    const taxed = taxOn([pence(123), pence(457)], 1750, 'line down to 0.1')
    expect(taxed).toEqual({ tenths: [215, 799], totalTenths: 1014, tax: 101 })
  })

  // From memory: the Notice's own example of a line.
  it('86.76p is 86.7p down to 0.1 and 87p to the nearest 1 (the Notice’s example, from memory)', () => {
    const line = [pence(723)]
    expect(taxOn(line, 1200, 'line down to 0.1').totalTenths).toBe(867)
    expect(taxOn(line, 1200, 'line nearest 1').totalTenths).toBe(870)
  })

  it('five sixths of the gross are net', () => {
    expect(netOfGross(pence(1200), 2000)).toBe(1000)
    expect(netOfGross(pence(297), 2000)).toBe(248)
    for (const gross of [6, 60, 606, 60_606]) expect(netOfGross(pence(gross), 2000)).toBe((gross * 5) / 6)
  })

  it('a discount told as a line takes its tax off', () => {
    for (const rounding of taxRoundings)
      expect(taxOn([pence(10_000), pence(-500)], 2000, rounding)).toMatchObject({
        tax: 1900,
        tenths: [20_000, -1000],
      })
  })

  it('at no rate there is none', () => {
    for (const rounding of taxRoundings)
      expect(taxOn(three, 0, rounding)).toEqual({ tenths: [0, 0, 0], totalTenths: 0, tax: 0 })
  })
})

describe('the rate on a day', () => {
  const rates = [
    { from: '2011-01-04', bp: 2000 },
    { from: '2008-12-01', bp: 1500 },
    { from: '2010-01-01', bp: 1750 },
  ]
  it('is the one that started last, on the day or before, in whatever order they stand', () => {
    expect(
      ['2008-11-30', '2008-12-01', '2009-12-31', '2010-01-01', '2011-01-03', '2011-01-04'].map((day) =>
        taxRateOn(rates, day),
      ),
    ).toEqual([undefined, 1500, 1500, 1750, 1750, 2000])
  })
})
