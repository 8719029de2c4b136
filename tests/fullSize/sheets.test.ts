import { describe, expect, it } from 'vitest'
import { fullSizeSheets } from '../../shared/papers/fullSize/fullSizeSheets.ts'
import { plainMeasure } from '../../shared/papers/measure.ts'
import { mmOfPoint, type Page } from '../../shared/papers/page.ts'
import { fullSizeOffers } from '../../shared/papers/fullSize/offers.ts'
import { printerShape } from '../../shared/papers/fullSize/printer.ts'
import { spread } from '../../shared/papers/fullSize/spread.ts'
import { parseShape } from '../../shared/gate/parseSpec.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import { longHeader } from '../fixtures/cards.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { overlaps, wordBox } from '../drawing/wordBoxes.ts'
import { allWords, boxesOn, printable, wordsOf } from '../papers/pageBoxes.ts'
import { bytesByZone, painted } from '../papers/paperReading.ts'
import { fullSizeOf, gateCard, outPrinter } from './fullSizeCases.ts'
import { clearEdges, rasters } from './raster.ts'

/** Words that read upwards. */
const uprightBoxes = (page: Page) =>
  page.marks.flatMap((mark) =>
    mark.kind === 'text' && mark.angle === 90
      ? [
          wordBox(
            { ...mark, size: mark.size * mmOfPoint, angle: 90 },
            plainMeasure(mark.text, mark.size, mark.weight),
          ),
        ]
      : [],
  )

const formats = ['a4', 'letter'] as const

describe('full-size sheets of each of forty gates', () => {
  it.each(wholeCards.map(({ name, input }) => [name, input] as const))(
    '%s: say whose they are, how to print them and what printer they are for, on every sheet',
    (_, given) => {
      for (const format of formats) {
        const input: JobCardInput = { ...given, format }
        const paper = fullSizeOf(input)
        paper.pages.forEach((_page, i) => {
          const words = wordsOf(paper, i)
          for (const said of [
            input.header.number,
            input.header.customer.name,
            input.header.title,
            '4 May 2026',
          ])
            expect(words).toContain(said)
          expect(words).toContain(`sheet ${i + 1} of ${paper.pages.length}`)
          expect(words).toContain('Print at actual size, no scaling')
          expect(words).toContain('No correction for the printer.')
          expect(words.split('this line is 100 mm; it measures …').length).toBe(3)
        })
      }
    },
  )

  it.each(wholeCards.map(({ name, input }) => [name, input] as const))(
    '%s: no words over others, none smaller than 11 points or past the printable part',
    (_, given) => {
      for (const format of formats) {
        // Laid out by the measure that the boxes are measured with.
        const paper = fullSizeSheets({ ...given, format, header: longHeader })
        for (const page of paper.pages) {
          const boxes = [...boxesOn(page), ...uprightBoxes(page)]
          expect(overlaps(boxes)).toEqual([])
          const part = printable(page)
          for (const [x, y] of boxes.flatMap(({ corners }) => corners)) {
            expect(x).toBeGreaterThanOrEqual(part.left)
            expect(x).toBeLessThanOrEqual(part.right)
            expect(y).toBeLessThanOrEqual(part.bottom)
          }
          for (const mark of page.marks)
            if (mark.kind === 'text') expect(mark.size).toBeGreaterThanOrEqual(11)
        }
      }
    },
  )
})

describe('ink, read off the dots', () => {
  const printers = [
    { across: 100, along: 100 },
    { across: 97, along: 98 },
    { across: 103, along: 103 },
  ]

  it.each(printers)(
    'keeps 10 mm from the edges and 15 from the foot for a printer of %o',
    async (printer) => {
      for (const [i, start] of ['06', '24', '11'].entries()) {
        const format = formats[i % 2] ?? 'a4'
        const paper = fullSizeOf({ ...gateCard(start), format, header: longHeader }, undefined, printer)
        for (const [page, raster] of (await rasters(await painted(paper), 60)).entries()) {
          const clear = clearEdges(raster)
          const across = (paper.pages[page]?.width ?? 0) > (paper.pages[page]?.height ?? 0)
          // A sheet that lies across runs through the printer sideways: its sides may be the foot there.
          for (const side of ['left', 'right'] as const)
            expect(clear[side]).toBeGreaterThanOrEqual(across ? 15 : 10)
          expect(clear.top).toBeGreaterThanOrEqual(10)
          expect(clear.bottom).toBeGreaterThanOrEqual(15)
        }
      }
    },
  )
})

describe('which full-size sheets there are', () => {
  const why = (start: string) => {
    const { spec, design } = gateCard(start)
    return Object.fromEntries(fullSizeOffers(spec, design).map(({ kind, why: reason }) => [kind, reason]))
  }

  it('is told, and for each that isn’t there the reason', () => {
    expect(why('01')).toEqual({
      bevels: '',
      notch: 'The brace’s ends are flush.',
      top: 'The top is level.',
      drilling: '',
      rod: '',
    })
    expect(why('15')).toEqual({ bevels: '', notch: '', top: '', drilling: '', rod: '' })
    expect(why('23')).toMatchObject({
      notch: 'There is no brace.',
      drilling: 'No ironmongery with holes is listed.',
    })
    const { spec, design } = gateCard('23')
    const square = { ...spec, ledges: { ...spec.ledges, end: { cut: 'square' as const } } }
    expect(fullSizeOffers(square, design)[0]?.why).toBe('No brace, and the ledge ends are square.')
  })

  it('agrees with what is printed: a sheet for every kind that is offered, none for another', () => {
    for (const { input } of wholeCards)
      for (const { kind, why: reason } of fullSizeOffers(input.spec, input.design))
        expect(fullSizeOf(input, [kind]).pages.length > 0).toBe(reason === '')
  })

  it('names the tiles of a template that takes several', () => {
    expect(allWords(fullSizeOf(gateCard('09'), ['top']))).toMatch(/tiles? 1 .*of \d/)
  })
})

describe('the printer’s correction', () => {
  it('is told on every sheet', () => {
    const paper = fullSizeOf(gateCard('01'), undefined, outPrinter)
    paper.pages.forEach((_, i) =>
      expect(wordsOf(paper, i).replace(/\s+/g, ' ')).toContain(
        'Corrected for a printer that makes 100 mm 99.2 across the sheet and 100.7 along it.',
      ),
    )
  })

  it('takes what a 100 mm line may measure and nothing else', () => {
    for (const good of [97, 99.6, 100, 103])
      expect(parseShape(printerShape, { across: good, along: 100 }).ok).toBe(true)
    for (const bad of [96.9, 103.1, NaN, Infinity, '100', null]) {
      const read = parseShape(printerShape, { across: 100, along: bad })
      expect(read.ok).toBe(false)
      if (!read.ok) {
        expect(read.problems.map(({ field }) => field)).toEqual(['along'])
        expect(read.problems[0]?.message).toContain('what the 100 mm line measures, from 97 to 103 mm')
      }
    }
  })
})

describe('full-size sheets', () => {
  it('have the same bytes in five time zones', async () => {
    const [first, ...rest] = await bytesByZone(() => fullSizeOf(gateCard('06'), undefined, outPrinter))
    for (const other of rest) expect(other.equals(first as Buffer)).toBe(true)
  })

  it('set figures apart so that none stands on another', () => {
    expect(
      spread(
        [
          { at: 10, room: 4 },
          { at: 11, room: 4 },
          { at: 30, room: 6 },
        ],
        0,
        100,
      ),
    ).toEqual([10, 14, 30])
    expect(
      spread(
        [
          { at: 99, room: 4 },
          { at: 99, room: 6 },
        ],
        0,
        100,
      ),
    ).toEqual([92, 97])
  })
})
