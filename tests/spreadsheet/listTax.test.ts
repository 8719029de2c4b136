import { describe, expect, it } from 'vitest'
import { pence } from '../../shared/pricing/pence.ts'
import { netOfGross } from '../../shared/pricing/tax.ts'
import { readLine } from '../../shared/spreadsheet/listLine.ts'
import { saysWithTax, withoutTax } from '../../shared/spreadsheet/listTax.ts'

const layout = {
  columns: { code: 0, words: null, unit: null, price: 1, supplier: null },
  decimal: 'point' as const,
  width: 2,
}

const read = (price: string, taxBp: number | null) => {
  const made = readLine({ line: 3, cells: ['TH18', price] }, { ...layout, taxBp })
  return made.ok ? made.line : made.bad
}

describe('a list with the tax in its prices', () => {
  // 12.00 / 1.2 = 10.00 · 9.99 / 1.2 = 8.325 · 2.35 / 1.05 = 2.238… · 17.5 %: 23.50 / 1.175 = 20.00.
  it.each([
    ['£12.00', 2000, 1200, 1000, false],
    ['9.99', 2000, 999, 833, true],
    ['2.35', 500, 235, 224, true],
    ['23.50', 1750, 2350, 2000, false],
    ['12.00', 0, 1200, 1200, false],
    ['12.00', null, 1200, 1200, false],
  ])('is read without it: %s at %s basis points', (price, bp, listed, net, rounded) => {
    expect(read(price, bp)).toMatchObject({ listed, pence: net, rounded })
  })

  it('comes to what the tax’s own rule makes of a whole sum', () => {
    for (const gross of [1, 7, 99, 1234, 98765])
      expect(Math.round(withoutTax(gross, 2000))).toBe(netOfGross(pence(gross), 2000))
  })

  it('is refused where the net would be too far from a whole penny', () => {
    // 0.03 / 1.2 = 0.025.
    expect(read('0.03', 2000)).toMatchObject({ reason: expect.stringMatching(/whole pence/) })
    expect(read('0.03', null)).toMatchObject({ pence: 3 })
  })

  it('is known by its heading', () => {
    for (const yes of ['Price inc VAT', 'Price (incl. VAT)', 'VAT inclusive', 'Gross', 'Cost including tax'])
      expect(saysWithTax(yes), yes).toBe(true)
    for (const no of ['Net price', 'Price ex VAT', 'excl. VAT', 'Price plus VAT', 'VAT', 'Price'])
      expect(saysWithTax(no), no).toBe(false)
  })
})
