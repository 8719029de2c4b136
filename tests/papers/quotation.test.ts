import { describe, expect, it } from 'vitest'
import { layOut } from '../../shared/drawing/layOut.ts'
import { quotation } from '../../shared/papers/quotation.ts'
import { taxRoundings } from '../../shared/pricing/terms.ts'
import { wholeGates } from '../drawing/wholeGates.ts'
import { header } from '../fixtures/cards.ts'
import {
  manyLines,
  moneyOf,
  plainLines,
  quotationOf,
  secret,
  threeShapes,
  threeTimbers,
  vat,
  whole,
  type Offered,
} from './quotationInputs.ts'
import { printedRows, textsOn, wordsOf } from './quotationReading.ts'

describe('a quotation', () => {
  it('says on every page whose it is and which page of how many', () => {
    const paper = quotation(quotationOf({ money: moneyOf([{ lines: manyLines }]) }))
    expect(paper.pages.length).toBeGreaterThan(2)
    paper.pages.forEach((page, i) => {
      const words = textsOn(page)
        .map(({ text }) => text)
        .join(' ')
      expect(words).toContain('Quotation 26-017/3 for A. Customer')
      expect(words).toContain(`page ${i + 1} of ${paper.pages.length}`)
      expect(words).toContain('Workshop of the tests')
    })
  })

  it('has number, dates, customer, job, workshop and how to reach it, terms, lists, and a place to sign', () => {
    const words = wordsOf(quotation(quotationOf()))
    for (const part of [
      'Number 26-017/3',
      'Date 4 May 2026',
      'Valid until 3 June 2026',
      'A. Customer 1 Test Lane Testford',
      'Side gate',
      'TT1 2ZZ 01632 960 111 bench@workshop.example',
      'Included – Measuring on site',
      'Not included – New posts',
      'The goods stay ours until they are paid for.',
      'Signed Name Date',
      'sign and send back a copy with the deposit of £284.58 by 3 June 2026.',
    ])
      expect(words).toContain(part)
  })

  it('prints its lines, net, tax, total, deposit and balance: 612.50 + 148.00 + 30.00 = 790.50, with 158.10 of VAT 948.60', () => {
    expect(printedRows(quotation(quotationOf()))).toEqual([
      { label: 'The gate, made', sums: [612_500] },
      { label: 'Visits and hanging', sums: [148_000] },
      { label: 'Delivery', sums: [30_000] },
      { label: 'Price without VAT', sums: [790_500] },
      { label: 'VAT at 20 %', sums: [158_100] },
      { label: 'Total with VAT', sums: [948_600] },
      { label: 'Deposit with your order', sums: [284_580] },
      { label: 'Balance when the work is done', sums: [664_020] },
    ])
    expect(wordsOf(quotation(quotationOf()))).toContain('VAT registration number TT 000 1234 56')
  })

  it('of a workshop that isn’t registered speaks of no tax at all', () => {
    const words = wordsOf(
      quotation(quotationOf({ money: moneyOf([{ lines: plainLines }], vat('total down', false)) })),
    )
    expect(words).not.toMatch(/VAT|\btax\b|TT 000/i)
    expect(words).toContain('Total £790.50')
  })

  it('shows the tax of each line where tax is rounded by the line', () => {
    // 99p at 20 % is 19.8p; three of them 59.4p, and 59p in all.
    const three: Offered = {
      lines: ['Latch', 'Bolt', 'Hook'].map((what): [string, number] => [what, 99]),
      depositBp: 0,
    }
    const rows = printedRows(quotation(quotationOf({ money: moneyOf([three], vat('line down to 0.1')) })))
    expect(rows).toEqual([
      { label: 'Latch', sums: [990, 198] },
      { label: 'Bolt', sums: [990, 198] },
      { label: 'Hook', sums: [990, 198] },
      { label: 'Price without VAT', sums: [2970] },
      { label: 'VAT at 20 %', sums: [590] },
      { label: 'Total with VAT', sums: [3560] },
    ])
    const nearest = quotation(quotationOf({ money: moneyOf([three], vat('line nearest 1')) }))
    expect(printedRows(nearest)[0]).toEqual({ label: 'Latch', sums: [990, 200] })
    expect(wordsOf(nearest)).toContain('VAT is worked out on each line, £0.60 in all.')
  })

  it('sets options side by side, each with its own words and total, what they share said once, and a box to tick each', () => {
    const paper = quotation(quotationOf({ money: moneyOf(threeTimbers) }))
    const words = wordsOf(paper)
    for (const { name = '' } of threeTimbers) expect(words.split(name).length).toBeGreaterThanOrEqual(4)
    expect(words).toContain('Three ways of making it, for you to choose from.')
    expect(words.match(/screwed on from behind/g)).toHaveLength(1)
    const rows = printedRows(paper)
    expect(rows.find(({ label }) => label === 'Stainless fixings')?.sums).toEqual([0, 0, 21_350])
    expect(rows.find(({ label }) => label === 'Total with VAT')?.sums).toEqual([
      948_600, 1_082_520, 1_503_960,
    ])
    const boxes = paper.pages.flatMap(({ marks }) => marks.filter(({ kind }) => kind === 'box'))
    expect(boxes).toHaveLength(3)
    expect(paper.pages.flatMap(({ marks }) => marks.filter(({ kind }) => kind === 'drawing'))).toHaveLength(1)
  })

  it('draws each option that looks different, all at one scale', () => {
    const paper = quotation(quotationOf({ money: moneyOf(threeShapes) }))
    const scales = paper.pages.flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'drawing' ? [mark.scale] : [])),
    )
    expect(scales).toHaveLength(3)
    expect(new Set(scales).size).toBe(1)
  })

  it('draws the face large on page 1 with the main sizes, the sides named, and nothing that is for the bench', () => {
    const [first] = quotation(quotationOf()).pages
    const drawing = first?.marks.find((mark) => mark.kind === 'drawing')
    if (drawing?.kind !== 'drawing') throw new Error('no drawing on page 1')
    expect(drawing.scale).toBeLessThanOrEqual(15)
    const laid = layOut(drawing.drawing, drawing)
    const words = laid.primitives.flatMap((one) => (one.kind === 'text' ? [one.text] : []))
    expect(words.sort()).toEqual(
      ['1800', '35 ⁷⁄₁₆″', '70 ⅞″', '900', 'From the front', 'hinge side', 'latch side'].sort(),
    )
  })

  it('names the hinge side on the side it hangs', () => {
    const sideOf = (name: string): number => {
      const [first] = quotation(
        quotationOf({ money: moneyOf([{ spec: whole(name), lines: plainLines }]) }),
      ).pages
      const drawing = first?.marks.find((mark) => mark.kind === 'drawing')
      if (drawing?.kind !== 'drawing') throw new Error('no drawing')
      const words = layOut(drawing.drawing, drawing).primitives.flatMap((one) =>
        one.kind === 'text' ? [one] : [],
      )
      const x = (text: string) => words.find((one) => one.text === text)?.x ?? NaN
      return Math.sign(x('hinge side') - x('latch side'))
    }
    expect(sideOf('01-plain-left')).toBe(-1)
    expect(sideOf('02-plain-right-tongues-to-hanging')).toBe(1)
  })

  it('never tells what it costs the workshop, what it earns, or where it buys', () => {
    for (const offers of [[{ lines: plainLines }], threeTimbers])
      for (const rounding of taxRoundings) {
        const words = wordsOf(quotation(quotationOf({ money: moneyOf(offers, vat(rounding)) })))
        for (const amount of Object.values(secret))
          expect(words).not.toContain(
            (amount / 100).toLocaleString('en-GB', { minimumFractionDigits: 2, maximumFractionDigits: 2 }),
          )
        expect(words).not.toMatch(
          /23\.57|19\.07|Secret|margin|markup|overhead|profit|cost|bench\b(?!@)|17\.3/i,
        )
      }
  })

  it('of treated timber says how to handle it', () => {
    const spec = { ...whole('01-plain-left'), timbers: { 'European redwood': { treated: true } } }
    expect(wordsOf(quotation(quotationOf({ money: moneyOf([{ spec, lines: plainLines }]) })))).toContain(
      'never burn',
    )
    expect(wordsOf(quotation(quotationOf()))).not.toContain('never burn')
  })

  it('of a draft says so on every page and has no date', () => {
    const paper = quotation(quotationOf({ draft: true, header: { ...header, issuedAt: null } }))
    for (const page of paper.pages) {
      expect(
        page.marks.filter((mark) => mark.kind === 'text' && mark.text === 'draft – not issued'),
      ).toHaveLength(1)
      expect(textsOn(page).some(({ text }) => text.startsWith('draft – not issued ·'))).toBe(true)
    }
    expect(paper.issuedAt).toBeNull()
    expect(wordsOf(quotation(quotationOf()))).not.toContain('draft')
  })

  it('keeps sizes whole at the end of a line', () => {
    for (const { spec } of wholeGates.slice(0, 20)) {
      const texts = quotation(quotationOf({ money: moneyOf([{ spec, lines: plainLines }]) })).pages.flatMap(
        textsOn,
      )
      for (const { text } of texts) {
        expect(text).not.toMatch(/^(mm\b|[⅛¼⅜½⅝¾⅞⁰¹²³⁴⁵⁶⁷⁸⁹])/)
        expect(text).not.toContain('\uE000')
      }
    }
  })

  it('is refused without an option', () => {
    expect(() => quotation(quotationOf({ money: moneyOf([]) }))).toThrow(RangeError)
  })
})
