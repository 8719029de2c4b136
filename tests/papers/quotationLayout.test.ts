import { describe, expect, it } from 'vitest'
import { layOut } from '../../shared/drawing/layOut.ts'
import { plainMeasure } from '../../shared/papers/measure.ts'
import { mmOfPoint, paperSizes, type Page, type PaperDocument } from '../../shared/papers/page.ts'
import { quotation } from '../../shared/papers/quotation.ts'
import type { QuotationInput } from '../../shared/papers/quotationInput.ts'
import { outside, overlaps, wordBox, wordBoxes, type WordBox } from '../drawing/wordBoxes.ts'
import { wholeGates } from '../drawing/wholeGates.ts'
import { header, longHeader } from '../fixtures/cards.ts'
import {
  business,
  manyLines,
  moneyOf,
  plainLines,
  quotationOf,
  threeShapes,
  threeTimbers,
  vat,
  whole,
} from './quotationInputs.ts'
import { textsOn } from './quotationReading.ts'

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

/** Three pairs of gates that look different: the widest drawings there are. */
const threePairs = ['18-pair-square', '20-pair-strip-bowed', '24-framed-pair-bowed-heaviest'].map((name) => ({
  name,
  spec: whole(name),
  lines: plainLines,
}))
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
  'three pairs': { money: moneyOf(threePairs) },
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

describe('a quotation on the page', () => {
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

  it('has the heads over its columns again on every page that a long price goes on over', () => {
    const more: typeof manyLines = [
      ...manyLines,
      ...manyLines.map(([words, pence]): [string, number] => [`Extra line too: ${words}`, pence]),
    ]
    const offers: [string, Parameters<typeof moneyOf>][] = [
      ['without VAT', [[{ lines: more }]]],
      [
        'Two',
        [
          [
            { name: 'One', lines: more },
            { name: 'Two', lines: more.slice(3) },
          ],
        ],
      ],
      ['without VAT', [[{ lines: more }], vat('line nearest 0.5')]],
    ]
    for (const [head, given] of offers) {
      const { pages } = quotation(quotationOf({ money: moneyOf(...given) }))
      const words = pages.map((page) => textsOn(page).map(({ text }) => text))
      const priced = words.filter((page) => page.some((text) => text.startsWith('Extra line')))
      expect(priced.length).toBeGreaterThan(1)
      for (const page of priced) expect(page).toContain(head)
    }
  })

  it('of three options is three pages at most, of three pairs of gates four', () => {
    for (const [offers, most] of [
      [threeTimbers, 3],
      [threeShapes, 3],
      [threePairs, 4],
    ] as const)
      expect(quotation(quotationOf({ money: moneyOf([...offers]) })).pages.length).toBeLessThanOrEqual(most)
  })
})
