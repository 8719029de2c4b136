import { describe, expect, it } from 'vitest'
import { firstFit } from '../../shared/pricing/buyTimber.ts'
import { plannedTimber } from '../../shared/pricing/planTimber.ts'
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

describe('the forty gates from whole lengths by the metre', () => {
  const { book } = fullBook()
  const timber = book.items.filter(({ kind }) => kind === 'timber')
  const lengths = [2400, 3000, 3600, 3900, 4200, 4800, 5400]
  const supplies = timber.map(({ id: itemId }) => ({ itemId, supplierId: 1, code: '', lengths, usual: true }))
  const open = standingBook({ ...book, supplies }, day)

  it('are planned and proven the cheapest, never dearer than by first fit, some of them cheaper', () => {
    const costs = neededGates.map(({ needs }) => {
      const asked = { needs, entry: plainEntry, settings: standardMoney, times: standardTimes }
      const [planned, fitted] = [plannedTimber, firstFit].map((buyTimber) =>
        estimateFrom(open, { ...asked, buyTimber }).lines.filter(({ group }) => group === 'timber'),
      )
      for (const { how, lengths: bought } of planned ?? [])
        expect([bought !== undefined, how.source]).toEqual([
          true,
          expect.stringMatching(/proven the cheapest$/),
        ])
      return [planned, fitted].map((lines) => lines?.reduce((sum, line) => sum + line.pence, 0) ?? 0)
    })
    for (const [planned = 0, fitted = 0] of costs) expect(planned).toBeLessThanOrEqual(fitted)
    const [planned = 0, fitted = 0] = [0, 1].map((of) => costs.reduce((sum, one) => sum + (one[of] ?? 0), 0))
    process.stdout.write(`timber of forty gates: ${planned / 100} planned, ${fitted / 100} by first fit\n`)
    expect(planned).toBeLessThan(fitted)
  })
})
