import decodeQR from 'qr/decode.js'
import { describe, expect, it } from 'vitest'
import { figureText } from '../../shared/drawing/figureText.ts'
import { labelLayout, labelSheetName, labelSheets } from '../../shared/papers/labels/labelLayouts.ts'
import { labelledParts } from '../../shared/papers/labels/labelledParts.ts'
import { partLabels } from '../../shared/papers/labels/partLabels.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import type { Page, PageMark } from '../../shared/papers/page.ts'
import { writeShortMm } from '../../shared/units/writeLength.ts'
import { outside, overlaps, type WordBox } from '../drawing/wordBoxes.ts'
import { header, longHeader } from '../fixtures/cards.ts'
import { everySo } from '../fixtures/sample.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { boxesOn } from './pageBoxes.ts'
import { bytesByZone, opened, painted, pixels, printedMeasure, readBack } from './paperReading.ts'

const formats = ['a4', 'letter'] as const
const kinds = formats.flatMap((format) => labelSheets.map((sheet) => ({ format, sheet })))

const gateOf = (start: string): JobCardInput => {
  const found = wholeCards.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no gate ${start}`)
  return found.input
}

const boxAbout = (
  text: string,
  { x, y, width, height }: { x: number; y: number; width: number; height: number },
): WordBox => ({
  text,
  corners: [
    [x, y + height],
    [x + width, y + height],
    [x + width, y],
    [x, y],
  ],
})

/** Pictures, and each square about all its dark parts, as boxes to be set beside words. A label's square follows its words. */
function inkBoxes(marks: readonly PageMark[]): WordBox[] {
  const found: WordBox[] = []
  let dark: Extract<PageMark, { kind: 'box' }>[] = []
  const close = () => {
    if (dark.length === 0) return
    const [x, y] = [Math.min(...dark.map((one) => one.x)), Math.min(...dark.map((one) => one.y))]
    const right = Math.max(...dark.map((one) => one.x + one.width))
    const bottom = Math.max(...dark.map((one) => one.y + one.height))
    found.push(boxAbout('square', { x, y, width: right - x, height: bottom - y }))
    dark = []
  }
  for (const mark of marks) {
    if (mark.kind === 'box') dark.push(mark)
    else close()
    if (mark.kind === 'drawing') found.push(boxAbout('picture', mark))
  }
  close()
  return found
}

/** The edges that ink keeps within on the label that holds a place. */
function labelAbout([x, y]: readonly [number, number], { sheet, format }: (typeof kinds)[number]) {
  const { left, top, width, height } = labelLayout(sheet, format)
  const [column, row] = [Math.floor((x - left) / width), Math.floor((y - top) / height)]
  const [from, over] = [left + column * width, top + row * height]
  return { left: from + 3, top: over + 3, right: from + width - 3, bottom: over + height - 3 }
}

const middleOf = ({ corners }: WordBox): [number, number] => [
  corners.reduce((sum, [x]) => sum + x / 4, 0),
  corners.reduce((sum, [, y]) => sum + y / 4, 0),
]

function expectWithin(page: Page, kind: (typeof kinds)[number]): void {
  const words = boxesOn({ ...page, marks: page.marks.filter(({ kind: what }) => what === 'text') })
  const all = [...words, ...inkBoxes(page.marks)]
  for (const box of [...all, ...boxesOn(page)])
    expect(outside([box], labelAbout(middleOf(box), kind))).toEqual([])
  expect(overlaps(all)).toEqual([])
}

describe('part labels', () => {
  it.each(wholeCards)(
    'of $name: one a piece of the cut list, each saying what the list says',
    ({ input }) => {
      for (const unit of ['mm', 'in'] as const) {
        const parts = labelledParts({ ...input, unit })
        const pieces = input.design.cuts.flatMap((row) => row.marks.map((mark) => ({ mark, row })))
        const { write } = figureText(unit)
        expect(parts.map(({ key }) => key)).toEqual(pieces.map(({ mark }) => mark))
        expect(parts.map(({ length }) => length)).toEqual(pieces.map(({ row }) => write(row.length)))
        expect(parts.map(({ section }) => section)).toEqual(
          pieces.map(({ row }) => `${writeShortMm(row.thickness)} × ${writeShortMm(row.width)}`),
        )
      }
    },
  )

  it.each(everySo(3, wholeCards))(
    'of $name read back with every length and mark, on every kind of label',
    async ({ input }) => {
      const parts = labelledParts(input)
      for (const sheet of labelSheets) {
        const paper = partLabels({ ...input, labels: { sheet, start: 2 } }, printedMeasure)
        const said = (await readBack(paper)).flat()
        for (const { length, section } of parts) {
          const count = parts.filter((part) => part.length === length).length
          expect(said.filter((words) => words === length)).toHaveLength(count)
          expect(said).toContain(section)
        }
        for (const { mark } of parts) expect(said.join(' ')).toContain(mark)
        expect(said.filter((words) => words === '26-017')).toHaveLength(parts.length)
      }
    },
  )

  it.each(everySo(3, wholeCards))(
    'of $name keep ink 3 mm inside each label and nothing over another',
    ({ input }) => {
      for (const kind of kinds)
        for (const parts of [{}, { header: longHeader }, { unit: 'in' as const }]) {
          const made = { ...input, ...parts, format: kind.format, labels: { sheet: kind.sheet, start: 1 } }
          for (const page of partLabels(made, printedMeasure).pages.slice(0, 1)) expectWithin(page, kind)
        }
    },
  )

  it('set figures in 11 points or more, lengths in 14 or more, and lines no thinner than a copier keeps', () => {
    for (const sheet of labelSheets) {
      const paper = partLabels({ ...gateOf('20'), labels: { sheet, start: 1 } }, printedMeasure)
      const lengths = new Set(labelledParts(gateOf('20')).map(({ length }) => length))
      for (const mark of paper.pages.flatMap(({ marks }) => marks)) {
        if (mark.kind !== 'text') continue
        expect(mark.size).toBeGreaterThanOrEqual(lengths.has(mark.text) ? 14 : 11)
        expect(mark.ink).toBe('black')
      }
    }
  })

  it('begin on the first free label of a sheet used in part', () => {
    const input = gateOf('01')
    const pieces = labelledParts(input).length
    const first = (start: number) =>
      partLabels({ ...input, labels: { sheet: '24', start } }, printedMeasure).pages
    expect(pieces).toBe(14)
    expect(first(1)).toHaveLength(1)
    expect(first(11)).toHaveLength(1)
    expect(first(12)).toHaveLength(2)
    // The eleventh is second in the fourth row of three.
    const [number] = first(11)[0]?.marks ?? []
    expect(number).toMatchObject({ kind: 'text', text: '26-017', x: 73 })
    expect(number?.kind === 'text' && number.y).toBeGreaterThan(0.5 + 3 * 37 + 3)
    expect(number?.kind === 'text' && number.y).toBeLessThan(0.5 + 4 * 37)
  })

  it('refuse a first label that the sheet hasn’t got', () => {
    for (const [sheet, start] of [
      ['24', 25],
      ['40', 41],
      ['24', 0],
      ['40', 1.5],
    ] as const)
      expect(() => partLabels({ ...gateOf('01'), labels: { sheet, start } })).toThrow(RangeError)
  })

  it('come 24 and 40 to a sheet, and one to a page on a roll', () => {
    expect(labelSheetName('24', 'a4')).toBe('24 to a sheet: 70 × 37 mm')
    expect(labelSheetName('40', 'a4')).toBe('40 to a sheet: 52.5 × 29.7 mm')
    expect(labelSheetName('24', 'letter')).toBe('24 to a sheet: 72 × 34.9 mm')
    const pieces = labelledParts(gateOf('13')).length
    const roll = partLabels({ ...gateOf('13'), labels: { sheet: 'roll', start: 7 } })
    expect(roll.pages).toHaveLength(pieces)
    expect(roll.pages[0]).toMatchObject({ width: 62, height: 38 })
  })

  it('show each piece where it sits: one shape filled, those of the pair’s other leaf not', () => {
    const input = gateOf('18')
    const paper = partLabels({ ...input, labels: { sheet: '24', start: 1 } }, printedMeasure)
    const drawn = paper.pages.flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'drawing' ? [mark.drawing] : [])),
    )
    expect(drawn).toHaveLength(labelledParts(input).length)
    for (const { marks, extent } of drawn) {
      const filled = marks.flatMap((mark) => (mark.kind === 'polygon' && mark.fill === 'ink' ? [mark] : []))
      expect(filled).toHaveLength(1)
      for (const [x, y] of filled[0]?.points ?? []) {
        expect(x).toBeGreaterThanOrEqual(extent.minX)
        expect(x).toBeLessThanOrEqual(extent.maxX)
        expect(y).toBeLessThanOrEqual(extent.maxY)
      }
    }
  })

  it('have the same bytes in five time zones', async () => {
    const [first, ...others] = await bytesByZone(() => partLabels(gateOf('15'), printedMeasure))
    for (const other of others) expect(Buffer.compare(first ?? Buffer.alloc(0), other)).toBe(0)
  })
})

describe('the square on a label', () => {
  const fine = 12

  /** The part of a page about one label's right half, where its square is. */
  function cropped(image: ImageData, [x, y, width, height]: [number, number, number, number]) {
    const [left, top, wide, high] = [x, y, width, height].map((mm) => Math.round(mm * fine)) as [
      number,
      number,
      number,
      number,
    ]
    const data = new Uint8Array(wide * high * 4)
    for (let row = 0; row < high; row++)
      for (let column = 0; column < wide * 4; column++)
        data[row * wide * 4 + column] = image.data[(top + row) * image.width * 4 + left * 4 + column] ?? 255
    return { width: wide, height: high, data }
  }

  it.each(labelSheets)('is read off the printed page by a scanner’s rules: %s', async (sheet) => {
    for (const start of ['01', '20', '28']) {
      const input = gateOf(start)
      const layout = labelLayout(sheet, 'a4')
      const pdf = await opened(
        await painted(partLabels({ ...input, labels: { sheet, start: 1 } }, printedMeasure)),
      )
      const parts = labelledParts(input)
      const perPage = layout.across * layout.down
      for (const place of [0, 3, parts.length - 1]) {
        const image = await pixels(pdf, Math.floor(place / perPage) + 1, fine)
        const at = place % perPage
        const x = layout.left + (at % layout.across) * layout.width
        const y = layout.top + Math.floor(at / layout.across) * layout.height
        const half = layout.width / 2
        const read = decodeQR(cropped(image, [x + half, y + 6, half, layout.height - 6]))
        expect(read).toBe(`26-017 ${parts[place]?.mark}`)
      }
    }
  })

  it('holds number and mark and nothing more; without a number, the title', async () => {
    const nameless = { ...gateOf('01'), header: { ...header, number: '', title: 'side-gate' } }
    const pdf = await opened(
      await painted(partLabels({ ...nameless, labels: { sheet: 'roll', start: 1 } }, printedMeasure)),
    )
    const image = await pixels(pdf, 1, fine)
    expect(decodeQR(cropped(image, [31, 6, 31, 32]))).toBe('side-gate board 1')
  })
})
