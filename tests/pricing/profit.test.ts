import { describe, expect, it } from 'vitest'
import { charge } from '../../shared/pricing/charge.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { bothWays, marginOfMarkup, markupOfMargin, profitOn } from '../../shared/pricing/profit.ts'
import { splitPence } from '../../shared/pricing/splitPence.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'

// Worked by hand: margin = markup / (1 + markup), markup = margin / (1 − margin).
describe('markup and margin', () => {
  it.each([
    [2000, 1667],
    [2500, 2000],
    [3333, 2500],
    [5000, 3333],
    [10000, 5000],
    [0, 0],
  ])('a markup of %i is a margin of %i, and the other way about', (markup, margin) => {
    expect(marginOfMarkup(markup)).toBe(margin)
    expect(markupOfMargin(margin)).toBe(
      margin === 1667 ? 2000 : Math.round((margin * 10000) / (10000 - margin)),
    )
    expect(bothWays({ by: 'markup', bp: markup })).toEqual({ markupBp: markup, marginBp: margin })
  })

  it('of 20 % each are £100 and £125 on a cost of £500', () => {
    expect(profitOn(pence(50000), { by: 'markup', bp: 2000 })).toBe(10000)
    expect(profitOn(pence(50000), { by: 'margin', bp: 2000 })).toBe(12500)
  })

  it('a margin of 100 % has no price', () => {
    expect(() => profitOn(pence(100), { by: 'margin', bp: 10000 })).toThrow(RangeError)
    expect(() => markupOfMargin(12000)).toThrow(RangeError)
  })
})

describe('what is charged on a cost', () => {
  const settings = standardMoney
  it('of £400: £60 overhead, £92 profit, £552 net; £27.60 off at 5 %', () => {
    const plain = charge(pence(40000), { profit: null, discount: null }, settings)
    expect(plain).toMatchObject({
      overhead: 6000,
      profit: 9200,
      discount: 0,
      net: 55200,
      markupBp: 2000,
      marginBp: 1667,
    })
    const off = charge(pence(40000), { profit: null, discount: { by: 'percent', bp: 500 } }, settings)
    expect(off).toMatchObject({ discount: 2760, net: 52440, marginBp: 1667 })
  })

  it('a discount takes no more than the price', () => {
    const gone = charge(pence(100), { profit: null, discount: { by: 'sum', pence: pence(99999) } }, settings)
    expect(gone).toMatchObject({ discount: 138, net: 0 })
  })

  it('profit put by hand for an option goes before the workshop’s', () => {
    const own = charge(pence(40000), { profit: { by: 'margin', bp: 2000 }, discount: null }, settings)
    expect(own).toMatchObject({
      profit: 11500,
      net: 57500,
      asked: { by: 'margin', bp: 2000 },
      markupBp: 2500,
    })
  })
})

describe('a sum shared out', () => {
  it.each([
    [100, [1, 1, 1], [34, 33, 33]],
    [1000, [3, 2, 2], [428, 286, 286]],
    [5, [0, 0], [3, 2]],
    [7, [0, 9, 0], [0, 7, 0]],
    [-100, [1, 1, 1], [-34, -33, -33]],
    [1, [1, 2, 4], [0, 0, 1]],
    [0, [5, 6], [0, 0]],
  ])('%i by %j is %j', (total, weights, shares) => {
    expect(splitPence(pence(total), weights)).toEqual(shares)
  })

  it('needs weights that are whole and not below 0', () => {
    for (const weights of [[], [1, -1], [0.5], [Number.NaN], [Infinity]])
      expect(() => splitPence(pence(10), weights)).toThrow(RangeError)
  })
})
