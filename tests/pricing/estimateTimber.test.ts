import { describe, expect, it } from 'vitest'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { estimate } from '../../shared/pricing/workEstimate.ts'
import { aBook, day, line, needs, section, timberFacts, work } from './aWorkedEstimate.ts'

describe('timber of several suppliers', () => {
  const id = 'timber.ex 32 × 150'
  const withSecond = (usual: number | null) => {
    const book = aBook()
    const itemId = book.items.find(({ kind }) => kind === 'timber')?.id ?? 0
    book.addPrice({ itemId, supplierId: 2, unit: 'metre' }, 320)
    for (const supplierId of [1, 2])
      book.supplies.push({ itemId, supplierId, code: '', lengths: [], usual: supplierId === usual })
    return { book, itemId }
  }

  it('is bought at the usual one, else at the cheapest', () => {
    expect(line(work(withSecond(1).book), id).each).toBe(345)
    expect(line(work(withSecond(null).book), id).each).toBe(320)
    expect(line(work(withSecond(2).book), id).how.source).toBe(
      'Birch Wharf, price from 5 January 2026 (by hand)',
    )
  })

  it('can’t be cut where a piece is longer than any length kept', () => {
    const { book, itemId } = withSecond(1)
    const supply = book.supplies.find((one) => one.itemId === itemId && one.supplierId === 1)
    if (supply) supply.lengths = [1200]
    expect(line(work(book), id)).toMatchObject({ missing: 'no length', pence: 0 })
    expect(line(work(book), id).words).toContain('a piece is longer than any length kept')
    // 1350 and 20 for squaring the ends; by net length and waste nothing is squared.
    if (supply) supply.lengths = [1200, 1369]
    expect(line(work(book), id).missing).toBe('no length')
    expect(line(work(book, {}, { timberBy: 'waste' }), id).missing).toBeNull()
    if (supply) supply.lengths = [1200, 1370]
    expect(line(work(book), id).missing).toBeNull()
  })

  it('sold by length comes in whole lengths: one of 3.6 m for both ledges and the brace', () => {
    const book = aBook(['timber'])
    const itemId = book.addItem('timber', section.name, timberFacts)
    book.addPrice({ itemId, unit: 'length', size: 3600 }, 1300)
    expect(line(work(book), id)).toMatchObject({
      quantity: 1,
      unit: 'length',
      each: 1300,
      pence: 1300,
      metres: 3.6,
    })
  })

  it('of two sizes bought together has one sum and no single price; another plan can be handed in', () => {
    const book = aBook(['timber'])
    const itemId = book.addItem('timber', section.name, timberFacts)
    book.addPrice({ itemId, unit: 'length', size: 1500 }, 600)
    book.addPrice({ itemId, unit: 'length', size: 2100 }, 800)
    const mixed = line(work(book), id)
    expect(mixed).toMatchObject({ quantity: 3.6, unit: 'metre', each: null, pence: 1400 })
    expect(mixed.how.inputs).toMatchObject({ 'lengths of 1500 mm': 1, 'a length of 2100 mm £': 8 })
    const asked = { needs, entry: plainEntry, settings: standardMoney, times: standardTimes, book, day }
    const buyTimber = () => ({ lengths: [{ size: 2100, count: 2 }], proven: false })
    const planned = estimate({ ...asked, buyTimber })
    expect(line(planned, id)).toMatchObject({ quantity: 2, each: 800, pence: 1600 })
  })
})
