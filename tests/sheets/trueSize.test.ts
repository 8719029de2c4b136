import { describe, expect, it } from 'vitest'
import { paperSizes, type PageMark, type PaperDocument } from '../../shared/papers/page.ts'
import { labelLayout, labelSheets } from '../../shared/papers/labels/labelLayouts.ts'
import { longHeader } from '../fixtures/cards.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { painted } from '../papers/paperReading.ts'
import { labelsOf, sheetInput, sheetNames, sheetOf } from './everySheet.ts'
import { inked, rasters, runsAcross, turned, type Part, type Raster } from './raster.ts'
import { soak } from '../fixtures/sample.ts'

const dpi = 600
const formats = ['a4', 'letter'] as const

const gateOf = (start: string) => {
  const found = wholeCards.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no gate ${start}`)
  return found.input
}

const ruled = (x1: number, y1: number, x2: number, y2: number): PageMark => ({
  kind: 'line',
  ...{ x1, y1, x2, y2 },
  width: 0.25,
  ink: 'black',
})

/** Two short strokes 100 mm apart, across the page and down it. */
const proof = (format: (typeof formats)[number]): PaperDocument => ({
  title: 'proof',
  issuedAt: null,
  pages: [
    {
      ...paperSizes[format],
      marks: [ruled(40, 60, 40, 64), ruled(140, 60, 140, 64), ruled(60, 90, 64, 90), ruled(60, 190, 64, 190)],
    },
  ],
})

/** mm between the first and the last stroke that a row of dots crosses. */
function between(raster: Raster, row: number): number {
  const runs = runsAcross(raster, row)
  const [first, last] = [runs[0], runs.at(-1)]
  if (!first || !last || runs.length !== 2)
    throw new Error(`two strokes are looked for, found ${runs.length}`)
  return (last[0] + last[1] - first[0] - first[1]) / 2 / raster.perMm
}

/** Where ink may not come, mm from each edge. */
const edges = ({ width, height }: { width: number; height: number }): Part[] => [
  { x: 0, y: 0, width: 10, height },
  { x: width - 10, y: 0, width: 10, height },
  { x: 0, y: 0, width, height: 10 },
  { x: 0, y: height - 15, width, height: 15 },
]

describe('true size, on the raster of a 600 dpi printer', () => {
  it.each(formats)('100 mm is 100 ± 0.1 mm across and down a page of %s', async (format) => {
    const [page] = rasters(await painted(proof(format)), { dpi })
    if (!page) throw new Error('no page')
    expect(Math.abs(between(page, Math.round(62 * page.perMm)) - 100)).toBeLessThanOrEqual(0.1)
    const [across] = [turned(page)]
    expect(Math.abs(between(across, Math.round(62 * page.perMm)) - 100)).toBeLessThanOrEqual(0.1)
  })

  it.each(formats)(
    'the line on a job card of %s that the printer is checked by is 100 ± 0.1 mm',
    async (format) => {
      for (const start of ['01', '24']) {
        const input = await sheetInput({ ...gateOf(start), format })
        const paper = sheetOf('job card', input)
        const words = paper.pages[0]?.marks.find(
          (mark) => mark.kind === 'text' && mark.text === 'This line is 100 mm: measure it.',
        )
        if (words?.kind !== 'text') throw new Error('no line to check the printer by')
        const part = { x: 11, y: words.y - 2.2, width: 102.5, height: 2 }
        const [line] = rasters(await painted(paper), { dpi, part, page: 1 })
        if (!line) throw new Error('no page')
        expect(Math.abs(between(line, Math.round(0.4 * line.perMm)) - 100)).toBeLessThanOrEqual(0.1)
      }
    },
  )
})

describe('ink, on the raster of a 600 dpi printer', () => {
  /** On A4 the gate with most pages under the longest head, and a plain one in inches; on Letter one with a bowed top. */
  const tried = {
    a4: [
      { ...gateOf('24'), header: longHeader, draft: true },
      { ...gateOf('01'), unit: 'in' as const },
    ],
    letter: [gateOf('09')],
  }
  /** Each sheet on one format and its neighbours on the other; on both in the long form. */
  const printed = formats.flatMap((format, i) =>
    sheetNames.flatMap((name, j) => (soak || (i + j) % 2 === 0 ? [{ format, name }] : [])),
  )
  it.each(printed)(
    'keeps 10 mm from the edges and 15 from the foot on every page: $name, $format',
    async ({ name, format }) => {
      for (const gate of tried[format]) {
        const paper = sheetOf(name, await sheetInput({ ...gate, format }))
        const pdf = await painted(paper)
        for (const part of edges(paperSizes[format])) {
          const strips = rasters(pdf, { dpi, part })
          expect(strips).toHaveLength(paper.pages.length)
          for (const strip of strips) expect(strip.data.some(inked)).toBe(false)
        }
      }
    },
  )

  it.each(labelSheets)('keeps 3 mm inside every label: %s', async (sheet) => {
    for (const format of sheet === 'roll' ? (['a4'] as const) : formats) {
      const input = await sheetInput({ ...gateOf('40'), header: longHeader, format })
      const paper = labelsOf(input).find(({ name }) => name.endsWith(sheet))?.paper
      if (!paper) throw new Error('no labels')
      const pages = rasters(await painted(paper), { dpi: 300, ...(sheet === 'roll' ? {} : { page: 1 }) })
      const { left, top, width, height } = labelLayout(sheet, format)
      const stray: string[] = []
      for (const page of pages)
        page.data.forEach((grey, i) => {
          if (!inked(grey)) return
          const [x, y] = [i % page.width, Math.floor(i / page.width)].map(
            (dot) => (dot + 0.5) / page.perMm,
          ) as [number, number]
          const within = (at: number, from: number, size: number) => {
            const into = (at - from) % size
            return Math.min(into, size - into)
          }
          // A dot is 0.085 mm broad, and is grey where ink only touches it.
          const clear = Math.min(within(x, left, width), within(y, top, height))
          if (clear < 2.9) stray.push(`${x.toFixed(1)} ${y.toFixed(1)}`)
        })
      expect(stray.slice(0, 5)).toEqual([])
    }
  })
})
