import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { layOut } from '../../shared/drawing/layOut.ts'
import { plainMeasure } from '../../shared/papers/measure.ts'
import {
  mmOfPoint,
  paperSizes,
  type Page,
  type PageText,
  type PaperDocument,
} from '../../shared/papers/page.ts'
import { quotation } from '../../shared/papers/quotation.ts'
import type { QuotationInput } from '../../shared/papers/quotationInput.ts'
import { taxRoundings } from '../../shared/pricing/terms.ts'
import { outside, overlaps, wordBox, wordBoxes, type WordBox } from '../drawing/wordBoxes.ts'
import { wholeGates } from '../drawing/wholeGates.ts'
import { header, longHeader } from '../fixtures/cards.ts'
import {
  business,
  moneyOf,
  plainLines,
  quotationOf,
  secret,
  threeShapes,
  threeTimbers,
  whole,
  type Offered,
} from './quotationInputs.ts'

const textsOn = (page: Page): PageText[] =>
  page.marks.flatMap((mark) => (mark.kind === 'text' && mark.angle === undefined ? [mark] : []))
const wordsOf = (paper: PaperDocument): string =>
  paper.pages
    .flatMap(textsOn)
    .map(({ text }) => text)
    .join(' ')
    .replace(/\s+/g, ' ')

/** Every line of words on a page, a drawing's included, mm. A draft's mark lies under all and doesn't count. */
const boxesOn = (page: Page): WordBox[] => [
  ...textsOn(page).map((mark) =>
    wordBox(
      { ...mark, size: mark.size * mmOfPoint, angle: 0 },
      plainMeasure(mark.text, mark.size, mark.weight),
    ),
  ),
  ...page.marks.flatMap((mark) => {
    if (mark.kind !== 'drawing') return []
    const laid = layOut(mark.drawing, { ...mark, caption: `1 : ${mark.scale}` })
    return wordBoxes(laid.primitives).map((box) => ({
      ...box,
      corners: box.corners.map(([x, y]) => [x + mark.x, y + mark.y] as const),
    }))
  }),
]

function expectWellLaid(paper: PaperDocument): void {
  for (const page of paper.pages) {
    const boxes = boxesOn(page)
    expect(outside(boxes, { left: 19, top: 10, right: page.width - 19, bottom: page.height - 15 })).toEqual(
      [],
    )
    expect(overlaps(boxes)).toEqual([])
    for (const mark of page.marks)
      if (mark.kind === 'drawing') expect(mark.y + mark.height).toBeLessThanOrEqual(page.height - 20)
  }
}

/** A printed sum in tenths of a penny; NaN for what is none. */
const tenthsOf = (text: string): number => {
  const found = /^(−?)[£€$]([\d,]+)\.(\d{2})(\d?)$/.exec(text)
  if (!found) return NaN
  const [, sign, whole_ = '', pennies = '', tenth = ''] = found
  const size = Number(whole_.replaceAll(',', '')) * 1000 + Number(pennies) * 10 + Number(tenth || '0')
  return sign === '−' ? 0 - size : size
}

/** The rows of sums as they are printed, page by page from the top: the words at the left, the sums at the right from left to right. */
function printedRows(paper: PaperDocument): { label: string; sums: number[] }[] {
  return paper.pages.flatMap((page) => {
    const texts = textsOn(page)
    const lines = [...new Set(texts.map(({ y }) => y))].sort((a, b) => a - b)
    return lines.flatMap((y) => {
      const row = texts.filter((mark) => mark.y === y).sort((a, b) => a.x - b.x)
      const sums = row
        .filter(({ anchor }) => anchor === 'end')
        .map(({ text }) => (text === '–' ? 0 : tenthsOf(text)))
      const label = row
        .filter(({ anchor }) => anchor === 'start')
        .map(({ text }) => text)
        .join(' ')
      return sums.length > 0 && sums.every((sum) => !Number.isNaN(sum)) ? [{ label, sums }] : []
    })
  })
}

const vat = (rounding: (typeof taxRoundings)[number], registered = true) => ({
  tax: {
    registered,
    name: 'VAT',
    number: 'TT 000 1234 56',
    rates: [{ from: '2011-01-04', bp: 2000 }],
    rounding,
  },
})
const manyLines: Offered['lines'] = [
  ...plainLines,
  ...Array.from({ length: 30 }, (_, i): [string, number] => [
    `Extra line ${i + 1} of the joiner’s own`,
    1000 + 7 * i,
  ]),
]
const longTerms = Array.from(
  { length: 60 },
  (_, i) =>
    `Condition ${i + 1}, written at such length that it runs over the end of its line and some way into the next.`,
).join('\n')
const longOwn = Array.from(
  { length: 24 },
  (_, i) =>
    `Own sentence ${i + 1} of a joiner who likes to tell everything there is to tell of the work that he does.`,
)

const hard: Record<string, Partial<QuotationInput>> = {
  'the usual gate': {},
  'the usual gate on Letter, in inches and dollars': {
    format: 'letter',
    unit: 'in',
    money: moneyOf([{ lines: plainLines, taxBp: 875 }], { unit: 'in', currency: 'USD' }),
  },
  'three timbers': { money: moneyOf(threeTimbers) },
  'three shapes on Letter': { format: 'letter', money: moneyOf(threeShapes) },
  'three pairs': {
    money: moneyOf(
      ['18-pair-square', '20-pair-strip-bowed', '24-framed-pair-bowed-heaviest'].map((name) => ({
        name,
        spec: whole(name),
        lines: plainLines,
      })),
    ),
  },
  'ten options': {
    money: moneyOf(
      Array.from({ length: 10 }, (_, i) => ({ lines: [['The gate, made', 50_000 + i * 1_111]] })),
    ),
  },
  'three timbers with tax by line': { money: moneyOf(threeTimbers, vat('line nearest 0.5')) },
  'an unregistered workshop': { money: moneyOf([{ lines: plainLines }], vat('total down', false)) },
  'long names in five scripts, a draft': { header: { ...longHeader, issuedAt: null }, draft: true },
  'names from the right': {
    header: {
      ...header,
      workshop: 'ورشة النجارة 12',
      title: 'שער הגן 900 mm',
      customer: { ...header.customer, name: 'שער ובניו', address: 'רחוב הדוגמה 7' },
    },
  },
  'thirty lines more': { money: moneyOf([{ lines: manyLines }]) },
  'thirty lines more in three options': {
    money: moneyOf([
      { name: 'One with a name that is as long as it is let be, sixty characters', lines: manyLines },
      { name: 'Two', lines: manyLines.slice(3) },
      { name: 'Three', lines: manyLines.slice(0, 9) },
    ]),
  },
  'large sums': {
    money: moneyOf([
      { lines: [['The gate, made', 790_000_001]] },
      { lines: [['The gate, made', 812_345_678]] },
    ]),
  },
  'long terms and lists': {
    business: {
      ...business,
      terms: longTerms,
      included: longTerms.slice(0, 3900),
      notIncluded: longTerms.slice(0, 3900),
    },
  },
  'long words of the workshop’s own': { money: moneyOf([{ lines: plainLines, description: longOwn }]) },
  'long words that differ in every option': {
    money: moneyOf(
      ['a', 'b', 'c'].map((mark) => ({
        lines: plainLines,
        description: longOwn.map((own) => `${own} ${mark}`),
      })),
    ),
  },
  'a long address': {
    business: { ...business, address: Array.from({ length: 90 }, (_, i) => `line ${i + 1}`).join('\n') },
  },
  'nothing but the price': {
    header: {
      ...header,
      workshop: '',
      title: '',
      number: '',
      customer: { ...header.customer, name: '', address: '', town: '' },
    },
    business: {
      address: '',
      phone: '',
      email: '',
      website: '',
      terms: '',
      included: '',
      notIncluded: '',
      logo: null,
    },
  },
}

describe('a quotation', () => {
  it.each(Object.entries(hard))(
    'of %s keeps within its margins, and no words lie over others',
    (_, parts) => {
      for (const format of ['a4', 'letter'] as const) {
        const paper = quotation(quotationOf({ ...parts, format }))
        expectWellLaid(paper)
        for (const page of paper.pages) expect(page).toMatchObject(paperSizes[format])
      }
    },
  )

  it.each(wholeGates)('of $name is one or two pages, well laid', ({ spec }) => {
    for (const unit of ['mm', 'in'] as const) {
      const paper = quotation(quotationOf({ unit, money: moneyOf([{ spec, lines: plainLines }], { unit }) }))
      expect(paper.pages.length).toBeLessThanOrEqual(2)
      expectWellLaid(paper)
    }
  })

  it('of three options is three pages at most', () => {
    for (const offers of [threeTimbers, threeShapes])
      expect(quotation(quotationOf({ money: moneyOf(offers) })).pages.length).toBeLessThanOrEqual(3)
  })

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

describe('a quotation’s sums', () => {
  const offer = fc.record({
    lines: fc.array(
      fc.tuple(
        fc.constantFrom('Gate', 'Hanging', 'Delivery', 'Lock', 'Posts'),
        fc.integer({ min: -5_000, max: 900_000 }),
      ),
      { minLength: 1, maxLength: 9 },
    ),
    depositBp: fc.integer({ min: 0, max: 10_000 }),
    taxBp: fc.constantFrom(0, 500, 875, 1750, 2000, 2100),
  })

  it('are the sums of the lines printed over them, whatever the offer, the rounding and the number of options', () => {
    fc.assert(
      fc.property(
        fc.array(offer, { minLength: 1, maxLength: 4 }),
        fc.constantFrom(...taxRoundings),
        fc.boolean(),
        (offers, rounding, registered) => {
          const byLine = registered && rounding.startsWith('line')
          const money = moneyOf(offers, vat(rounding, registered))
          const rows = printedRows(quotation(quotationOf({ money })))
          const tables = tablesOf(rows, byLine)
          expect(tables.flatMap((table) => table.gross)).toEqual(
            money.options.map(({ estimate }) => estimate.gross * 10),
          )
          for (const { lines, net, tax, gross, deposit, balance } of tables)
            gross.forEach((total, i) => {
              if (lines.length > 0) {
                const sum = lines.reduce((all, { sums }) => all + (sums[i] ?? NaN), 0)
                expect(registered ? net[i] : total).toBe(sum)
              }
              if (registered) expect((net[i] ?? NaN) + (tax[i] ?? NaN)).toBe(total)
              if (deposit.length > 0) expect((deposit[i] ?? NaN) + (balance[i] ?? NaN)).toBe(total)
            })
          if (byLine) expectLineTax(rows, offers.length)
        },
      ),
      { seed: 20_260_504, numRuns: 120 },
    )
  })

  type Row = ReturnType<typeof printedRows>[number]
  const of = (rows: Row[], start: string): number[] =>
    rows.find(({ label }) => label.startsWith(start))?.sums ?? []

  /** One table for each row of options: the lines over the sums (none of a line's tax), and the sums. */
  function tablesOf(rows: Row[], byLine: boolean) {
    const own = /^(Price without|VAT|Total|Deposit|Balance|In all|Option)/
    const tables: { lines: Row[]; sums: Row[] }[] = [{ lines: [], sums: [] }]
    for (const row of rows) {
      if (/^(In all|Option)/.test(row.label)) continue
      const isSum = own.test(row.label)
      const last = tables.at(-1)
      if (!isSum && last && last.sums.length > 0) tables.push({ lines: [row], sums: [] })
      else if (
        isSum &&
        /^(Price without|Total$)/.test(row.label) &&
        last &&
        last.sums.some(({ label }) => label.startsWith('Total'))
      )
        tables.push({ lines: [], sums: [row] })
      else (isSum ? last?.sums : last?.lines)?.push(row)
    }
    return tables
      .filter(({ sums }) => sums.length > 0)
      .map(({ lines, sums }) => ({
        lines: byLine ? lines.map(({ label, sums: [net = NaN] }) => ({ label, sums: [net] })) : lines,
        net: of(sums, 'Price without'),
        tax: of(sums, 'VAT'),
        gross: of(sums, 'Total'),
        deposit: of(sums, 'Deposit'),
        balance: of(sums, 'Balance'),
      }))
  }

  /** Where each line's tax is shown, the column adds up too: to what is said in all, and taken down to the tax of the total. */
  function expectLineTax(rows: Row[], options: number): void {
    if (options === 1) {
      const lines = rows.filter(({ sums }) => sums.length === 2)
      const all = lines.reduce((sum, { sums }) => sum + (sums[1] ?? NaN), 0)
      expect(Math.trunc(all / 10) * 10 + 0).toBe((of(rows, 'VAT')[0] ?? NaN) + 0)
      return
    }
    let [net, tax] = [0, 0]
    let ends = 0
    for (const { label, sums } of rows) {
      if (/^(Price without|VAT|Total|Deposit|Balance|Option)/.test(label) || sums.length !== 2) continue
      if (label === 'In all') {
        expect(sums).toEqual([net, tax])
        ;[net, tax] = [0, 0]
        ends += 1
        continue
      }
      net += sums[0] ?? NaN
      tax += sums[1] ?? NaN
    }
    expect(ends).toBe(options)
  }
})
