import { describe, expect, it } from 'vitest'
import { everyPrice, percentRise } from '../../shared/pricing/percentRise.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { riseEffects } from '../../shared/pricing/riseEffects.ts'
import { pricesStamp, risePreview } from '../../shared/pricing/risePreview.ts'
import { emptyBook } from './aBook.ts'
import { neededGates, type NeededGate } from './pricedGates.ts'
import { day, later, book, jobOf, all, risen, costAt } from './quotedGates.ts'

describe('a rise by percent', () => {
  it('is to the nearest penny, on the lines of the filter alone, leaving out those that stay', () => {
    const small = emptyBook()
    const timber = small.addItem('timber', 'Redwood 28 × 145', {
      use: 'ledges',
      species: 'European redwood',
      exThickness: 32,
      exWidth: 150,
      thickness: 28,
      width: 145,
      tongue: null,
      groove: null,
      treated: false,
    })
    const washer = small.addItem('fixing', 'Washer', { form: 'other', diameter: 6, length: 1 })
    small.addPrice({ itemId: timber, unit: 'metre' }, 300, '2026-01-05')
    small.addPrice({ itemId: timber, unit: 'metre' }, 345, '2026-03-01')
    small.addPrice({ itemId: timber, unit: 'metre' }, 999, '2026-09-01')
    small.addPrice({ itemId: timber, supplierId: 2, unit: 'metre' }, 410, '2026-06-01')
    small.addPrice({ itemId: washer, unit: 'each' }, 7)
    const raised = (filter: Partial<typeof everyPrice>, bp = 500) =>
      percentRise({ book: small, filter: { ...everyPrice, ...filter }, bp, day: later }).map((one) => [
        one.supplierId,
        one.pence,
      ])
    expect(raised({})).toEqual([
      [1, 362],
      [2, 431],
    ])
    expect(raised({ supplierId: 2 })).toEqual([[2, 431]])
    expect(raised({ untouchedSince: '2026-04-01' })).toEqual([[1, 362]])
    expect(raised({ kind: 'fixing' }, 1000)).toEqual([[1, 8]])
    expect(raised({ search: '145 RED' }, -1000)).toEqual([
      [1, 311],
      [2, 369],
    ])
    expect(raised({}, 0)).toEqual([])
    expect(() => percentRise({ book: small, filter: everyPrice, bp: -10_001, day: later })).toThrow(
      RangeError,
    )
  })
})

describe('what a rise does to quotations that stand', () => {
  const timber = percentRise({ book, filter: { ...everyPrice, kind: 'timber' }, bp: 800, day })
  const after = risen(book, timber)

  it('is just what a whole estimate before and after shows, for each of forty', () => {
    const effects = riseEffects({ quoted: all, before: book, after, day })
    expect(effects).toHaveLength(40)
    effects.forEach((effect, index) => {
      const gate = neededGates[index] as NeededGate
      const quoted = all[index]?.money.options[0]?.estimate.net ?? 0
      expect(effect).toMatchObject({ jobId: index + 1, stands: 'quoted', option: gate.name, quoted })
      expect(effect.costBefore).toBe(costAt(book, gate, day))
      expect(effect.costAfter).toBe(costAt(after, gate, day))
      expect(effect.costAfter).toBeGreaterThan(effect.costBefore)
      expect(effect.marginBeforeBp).toBe(Math.round((10_000 * (quoted - effect.costBefore)) / quoted))
      expect(effect.marginAfterBp).toBeLessThan(effect.marginBeforeBp)
    })
  })

  it('names only those that use the line that rose', () => {
    const hinge = book.items.find(
      (item) => item.kind === 'ironmongery' && item.facts.piece?.startsWith('hook-and-band-750'),
    )
    const price = book.prices.find(({ itemId }) => itemId === hinge?.id)
    if (!price) throw new Error('the hinge is gone')
    const one = risen(book, [{ ...price, pence: pence(price.pence + 100) }])
    const users = neededGates.filter(({ needs }) =>
      needs.ironmongery.some(({ name }) => name === hinge?.name),
    )
    const effects = riseEffects({ quoted: all, before: book, after: one, day })
    expect(effects.map(({ option }) => option)).toEqual(users.map(({ name }) => name))
    expect(users.length).toBeGreaterThan(0)
    expect(users.length).toBeLessThan(40)
  })

  it('is told for each option until one is accepted, then for that alone', () => {
    const three = neededGates.slice(0, 3)
    const open = riseEffects({ quoted: [jobOf(9, three)], before: book, after, day })
    expect(open.map(({ option }) => option)).toEqual(three.map(({ name }) => name))
    const accepted = riseEffects({ quoted: [jobOf(9, three, 1)], before: book, after, day })
    expect(accepted.map(({ option, stands }) => [option, stands])).toEqual([[three[1]?.name, 'accepted']])
  })

  it('is nothing before its day, and all undone when the rise is', () => {
    const future = risen(
      book,
      timber.map((price) => ({ ...price, startsOn: later })),
    )
    expect(riseEffects({ quoted: all, before: book, after: future, day })).toEqual([])
    const back = riseEffects({ quoted: all, before: after, after: book, day })
    expect(back).toHaveLength(40)
    expect(back.every(({ costBefore, costAfter }) => costAfter < costBefore)).toBe(true)
  })

  it('of hourly rates shows on every quotation', () => {
    const rates = percentRise({ book, filter: { ...everyPrice, kind: 'work' }, bp: 1000, day })
    expect(riseEffects({ quoted: all, before: book, after: risen(book, rates), day })).toHaveLength(40)
  })
})

describe('a preview', () => {
  it('has old, new and what stays, each against the day it starts, and its effects on the day when all hold', () => {
    const [first, second, third] = percentRise({
      book,
      filter: { ...everyPrice, kind: 'timber' },
      bp: 500,
      day: later,
    })
    if (!first || !second || !third) throw new Error('too little timber')
    const old = book.prices.find(
      ({ itemId, unit, size }) => itemId === third.itemId && unit === third.unit && size === third.size,
    )
    const prices = [first, { ...second, supplierId: 2 }, { ...third, pence: old?.pence ?? pence(0) }]
    const preview = risePreview({ book, newPrices: prices, quoted: all, day })
    expect(preview.lines.map(({ old: was, new: now }) => [was === null, now])).toEqual([
      [false, first.pence],
      [true, second.pence],
    ])
    expect(preview.unchanged).toBe(1)
    expect(preview.lines[1]?.words).toMatch(/, Birch Wharf$/)
    expect(preview.effects.length).toBeGreaterThan(0)
  })

  it('has a stamp that holds while the prices do, and differs once one is added or undone', () => {
    const stamp = pricesStamp(book.prices)
    expect(pricesStamp([...book.prices])).toBe(stamp)
    expect(pricesStamp(book.prices.slice(1))).not.toBe(stamp)
    expect(pricesStamp(risen(book, book.prices.slice(0, 1)).prices)).not.toBe(stamp)
    expect(pricesStamp([{ id: 2 }, { id: 9 }, { id: 4 }])).toBe('3.9.15')
  })
})
