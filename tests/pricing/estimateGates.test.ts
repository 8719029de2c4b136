import { describe, expect, it } from 'vitest'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { standingBook } from '../../shared/pricing/standingBook.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { estimateFrom } from '../../shared/pricing/workEstimate.ts'
import { fullBook, neededGates } from './pricedGates.ts'

const day = '2026-06-15'

describe('the forty gates at a full price book', () => {
  const { book, finish } = fullBook()
  const open = standingBook(book, day)
  it.each(neededGates)('$name: every line has its price and answers how', ({ needs: own }) => {
    const made = estimateFrom(open, {
      needs: own,
      entry: { ...plainEntry, finish: { itemId: finish, coats: null }, kilometres: 17 },
      settings: standardMoney,
      times: standardTimes,
    })
    expect(made.missing).toEqual([])
    expect(made.lines.length).toBeGreaterThan(12)
    expect(new Set(made.lines.map(({ id }) => id)).size).toBe(made.lines.length)
    for (const { how, pence: sum, words } of [
      ...made.lines,
      ...Object.values(made.how).map((how) => ({ how, pence: null, words: 'x' })),
    ]) {
      expect(words).not.toBe('')
      expect(how.formula).not.toBe('')
      expect(how.source).not.toBe('')
      expect(how.unit).toBe('£')
      expect(Object.keys(how.inputs).length).toBeGreaterThan(0)
      expect(Object.values(how.inputs).every(Number.isFinite)).toBe(true)
      if (sum !== null) expect(how.value * 100).toBeCloseTo(sum, 6)
    }
    for (const one of made.lines) {
      expect(one.pence).toBeGreaterThan(0)
      const perUnit = one.unit === 'minute' ? 60 : 1
      if (one.each !== null)
        expect(Math.abs(one.pence - (one.quantity * one.each) / perUnit)).toBeLessThanOrEqual(0.5 + 1e-6)
    }
  })
})
