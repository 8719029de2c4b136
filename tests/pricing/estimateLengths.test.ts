import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import type { PriceBook } from '../../shared/pricing/book.ts'
import type { QuotedMoney } from '../../shared/pricing/quotation.ts'
import { repriced, requote } from '../../shared/pricing/requote.ts'
import { riseEffects } from '../../shared/pricing/riseEffects.ts'
import { moneyShape } from '../../shared/pricing/shapes.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standingBook } from '../../shared/pricing/standingBook.ts'
import type { MoneySettings } from '../../shared/pricing/terms.ts'
import { estimateFrom } from '../../shared/pricing/workEstimate.ts'
import { exampleSpecs } from '../../build/bench/exampleSpecs.ts'
import { day, line } from './aWorkedEstimate.ts'
import { asked, id, needs, timberBook } from './plannedEstimate.ts'

const metre = (pence: number, supplierId = 1) => ({ unit: 'metre' as const, size: null, pence, supplierId })
const length = (size: number, pence: number, supplierId = 1) => ({
  unit: 'length' as const,
  size,
  pence,
  supplierId,
})
const lineOf = (book: PriceBook, over: Parameters<typeof asked>[0] = {}) =>
  line(estimateFrom(standingBook(book, day), asked(over)), id)
const byWaste: MoneySettings = { ...standardMoney, timberBy: 'waste' }
/** Settings as they stood before a workshop could choose. */
const { timberBy: _none, ...olderMoney } = standardMoney

describe('timber sold by the metre, with the lengths that are kept', () => {
  const book = timberBook([metre(345)], { 1: [2400, 4800] })

  it('is charged as two lengths of 4.8 m: 2 × £16.56 = £33.12', () => {
    const planned = lineOf(book)
    expect(planned).toMatchObject({ quantity: 9.6, unit: 'metre', each: 345, pence: 3312, metres: 9.6 })
    expect(planned.lengths).toEqual([{ size: 4800, count: 2 }])
    expect(planned.how.inputs).toEqual({
      'net metres': 9.53,
      'metres bought': 9.6,
      'kerf mm': 4,
      'end trim mm': 20,
      'lengths of 4800 mm': 2,
      'a length of 4800 mm £': 16.56,
      'a metre £': 3.45,
    })
    expect(planned.how.formula).toContain('what is left of them charged too')
    expect(planned.how.source).toContain('by the buying plan, proven the cheapest')
  })

  it('is charged by net length and waste where the workshop says so: 9.53 m and 10 %, 10.49 m for £36.19', () => {
    const waste = lineOf(book, { settings: byWaste })
    expect(waste).toMatchObject({ quantity: 10.49, unit: 'metre', each: 345, pence: 3619 })
    expect(waste.lengths).toBeUndefined()
  })

  it('is charged by net length and waste where nobody said what lengths are kept', () => {
    expect(lineOf(timberBook([metre(345)]))).toMatchObject({ quantity: 10.49, pence: 3619 })
  })

  it('costs whole pence a length: 2.4 m at £3.47 is £8.33, three £24.99, which no price of a metre comes to', () => {
    const own = { timber: [{ ...needs.timber[0]!, pieces: [{ mark: 'a', length: 2300, quantity: 3 }] }] }
    const short = lineOf(timberBook([metre(347)], { 1: [2400] }), { needs: { ...needs, ...own } })
    expect(short).toMatchObject({ quantity: 7.2, unit: 'metre', each: null, pence: 2499 })
  })

  it('goes by the saw that is given: a kerf of 8 needs a third length', () => {
    const wide = lineOf(book, { cutting: { kerf: 8, endTrim: 20 } })
    expect(wide).toMatchObject({ quantity: 12, pence: 2 * 1656 + 828 })
    expect(wide.how.inputs).toMatchObject({ 'kerf mm': 8, 'lengths of 2400 mm': 1 })
  })

  it('can be put right by the metre, and keeps the lengths that were worked out', () => {
    const entry = { ...asked().entry, overrules: { [id]: { quantity: 12 } } }
    expect(lineOf(book, { entry })).toMatchObject({
      quantity: 12,
      unit: 'metre',
      pence: 4140,
      overruled: true,
      lengths: [{ size: 4800, count: 2 }],
    })
  })
})

describe('timber of several suppliers or prices', () => {
  it('comes from one of them, the one with the cheapest lengths', () => {
    const book = timberBook([metre(345, 1), length(4800, 1560, 2)], { 1: [2400, 4800] })
    expect(lineOf(book)).toMatchObject({ pence: 3120, unit: 'length', quantity: 2, each: 1560 })
    const waste = lineOf(book, { settings: byWaste })
    expect(waste).toMatchObject({ pence: 3619, each: 345 })
  })

  it('takes a length at its own price where that is less than its metres', () => {
    const book = timberBook([metre(345), length(4800, 1600)], { 1: [2400, 4800] })
    expect(lineOf(book)).toMatchObject({ pence: 3200, each: 1600, unit: 'length' })
  })

  it('by the metre without known lengths stands beside whole lengths at its net length and waste', () => {
    const book = timberBook([length(4800, 2000, 1), metre(300, 2)])
    // 10.49 m at £3.00 against two lengths at £20.00.
    expect(lineOf(book)).toMatchObject({ pence: 3147, each: 300 })
  })
})

const spec = exampleSpecs()[0]!

/** A quotation of these needs, as it was frozen. */
function quoted(book: PriceBook, over: Parameters<typeof asked>[0] = {}): QuotedMoney {
  const all = asked(over)
  const estimate = estimateFrom(standingBook(book, day), all)
  const { settings, times, entry } = all
  const option = { name: 'As drawn', spec, description: [], needs: all.needs, entry, estimate, offer: [] }
  const money: QuotedMoney = { settings, times, on: day, validUntil: '2026-07-15', options: [option] }
  return JSON.parse(JSON.stringify(money)) as QuotedMoney
}

const costs = (money: QuotedMoney, before: PriceBook, after: PriceBook): number[][] =>
  riseEffects({
    quoted: [
      { jobId: 1, number: '26-1', customer: 'A', title: 'a gate', paperId: 7, money, acceptance: null },
    ],
    before,
    after,
    day,
  }).map(({ costBefore, costAfter }) => [costBefore, costAfter])

/** A cost with the standard overhead of 15 % on it. */
const withOverhead = (cost: number): number => cost + Math.floor(cost * 0.15 + 0.5)

const again = (book: PriceBook, money: QuotedMoney) =>
  line(repriced(standingBook(book, day), money, money.options[0]!), id)

describe('a quotation priced again', () => {
  const lengths = [length(2400, 900), length(4800, 1560)]
  /** The same book after a rise of one of its prices. */
  function risen(
    book: ReturnType<typeof timberBook>,
    { pence, ...line }: ReturnType<typeof length | typeof metre>,
  ) {
    book.addPrice({ itemId: book.itemId, ...line }, pence, '2026-06-01')
    return book
  }

  it('keeps the lengths it was quoted with: £31.20 before a rise, £34.00 after, where first fit would be £40.20', () => {
    const money = quoted(timberBook(lengths))
    const dearer = risen(timberBook(lengths), length(4800, 1700))
    expect(again(timberBook(lengths), money)).toMatchObject({
      pence: 3120,
      lengths: [{ size: 4800, count: 2 }],
    })
    expect(again(dearer, money)).toMatchObject({ pence: 3400 })
    expect(again(dearer, money).how.source).toContain('as they were quoted')
    expect(costs(money, timberBook(lengths), dearer)).toEqual([[withOverhead(3120), withOverhead(3400)]])
    const lines = requote(money, timberBook(lengths), day)
    expect(lines.every(({ before, after }) => before === after)).toBe(true)
  })

  it('keeps them even where others would now be cheaper', () => {
    const fallen = [length(2400, 100), length(4800, 1560)]
    expect(again(timberBook(fallen), quoted(timberBook(lengths))).pence).toBe(3120)
  })

  it('by the metre keeps them too: £33.12, and at £3.60 a metre £34.56', () => {
    const kept = { 1: [2400, 4800] }
    const money = quoted(timberBook([metre(345)], kept))
    expect(
      costs(money, timberBook([metre(345)], kept), risen(timberBook([metre(345)], kept), metre(360))),
    ).toEqual([[withOverhead(3312), withOverhead(3456)]])
  })

  it('buys anew by first fit where a length it had isn’t sold any more', () => {
    const gone = timberBook([length(2400, 900), length(4200, 1400)])
    const now = again(gone, quoted(timberBook(lengths)))
    // 2 × 1909 = 3818 of 4184 on the first; 2 × 1434 on each of two more.
    expect(now).toMatchObject({ lengths: [{ size: 4200, count: 3 }], pence: 4200 })
    expect(now.how.source).toContain('not proven')
  })

  it('from before lengths were kept with it is priced as it was made: by waste, or by first fit', () => {
    const kept = { 1: [2400, 4800] }
    const older = quoted(timberBook([metre(345)], kept), { settings: olderMoney })
    expect(again(timberBook([metre(345)], kept), older)).toMatchObject({ pence: 3619, quantity: 10.49 })
    const money = quoted(timberBook(lengths), { settings: olderMoney })
    for (const one of money.options[0]!.estimate.lines) delete one.lengths
    expect(again(timberBook(lengths), money).pence).toBe(900 + 2 * 1560)
  })

  it('by waste stays by waste when its merchant’s lengths become known', () => {
    const money = quoted(timberBook([metre(345)]))
    expect(again(timberBook([metre(345)], { 1: [2400, 4800] }), money).pence).toBe(3619)
  })
})

describe('the workshop’s choice', () => {
  it('is whole lengths where an older book says nothing', () => {
    expect(v.parse(moneyShape, olderMoney).timberBy).toBe('lengths')
    expect(v.parse(moneyShape, byWaste).timberBy).toBe('waste')
    expect(v.safeParse(moneyShape, { ...standardMoney, timberBy: 'boards' }).success).toBe(false)
  })
})
