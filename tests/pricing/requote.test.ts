import { describe, expect, it } from 'vitest'
import type { PriceBook } from '../../shared/pricing/book.ts'
import { everyPrice, percentRise } from '../../shared/pricing/percentRise.ts'
import { requote } from '../../shared/pricing/requote.ts'
import { neededGates } from './pricedGates.ts'
import { day, book, settings, moneyOf, risen } from './quotedGates.ts'

describe('quoting again', () => {
  it('at the same prices changes nothing', () => {
    const lines = requote(moneyOf(neededGates.slice(0, 2)), book, day)
    expect(lines.length).toBeGreaterThan(30)
    expect(lines.every(({ before, after }) => before === after)).toBe(true)
  })

  it('shows which lines moved, and totals that follow', () => {
    const money = moneyOf(neededGates.slice(0, 1))
    const after = risen(book, percentRise({ book, filter: { ...everyPrice, kind: 'fixing' }, bp: 5000, day }))
    const lines = requote(money, after, day)
    const moved = lines
      .filter((line) => line.before !== line.after)
      .map(({ words }) => words.replace(/^Screw.*/, 'screws'))
    expect(moved).toEqual(['screws', 'Overhead', 'Profit', 'Total before VAT', 'VAT', 'Total with VAT'])
    expect(lines.at(-1)?.before).toBe(money.options[0]?.estimate.gross)
  })

  it('can’t tell a total where a line has lost its price', () => {
    const gone: PriceBook = {
      ...book,
      items: book.items.map((item) => (item.kind === 'fixing' ? { ...item, retired: true } : item)),
    }
    const lines = requote(moneyOf(neededGates.slice(0, 1)), gone, day)
    expect(lines.at(-1)).toMatchObject({ words: 'Total with VAT', after: null })
    expect(lines.filter(({ after }) => after === null)).toHaveLength(1 + 5)
  })

  it('has no tax in it where none is charged', () => {
    const money = moneyOf(neededGates.slice(0, 1))
    const bare = { ...money, settings: { ...settings, tax: { ...settings.tax, registered: false } } }
    expect(requote(bare, book, day).at(-1)?.words).toBe('Total')
  })
})
