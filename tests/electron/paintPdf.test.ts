import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { PDFDocument, PDFName } from 'pdf-lib'
import { describe, expect, it, vi } from 'vitest'
import { loadFonts } from '../../electron/fonts.ts'
import { paintPdf } from '../../electron/paintPdf.ts'
import { visualOrder } from '../../electron/paint/visualOrder.ts'
import { measureWith, uncovered, wordRuns } from '../../electron/paint/wordRuns.ts'
import { jobCard } from '../../shared/papers/jobCard.ts'
import type { PageMark, PaperDocument } from '../../shared/papers/page.ts'
import { cardOf, header, longHeader } from '../fixtures/cards.ts'
import { hardGates } from '../fixtures/hardGates.ts'
import { inkBounds } from './inkBounds.ts'

const fonts = await loadFonts()
const [usual] = hardGates
if (!usual) throw new Error('no gate')
const cardPaper = (parts = {}, gate = usual) => jobCard(cardOf(gate, parts), measureWith(fonts))

const read = (bytes: Uint8Array) =>
  getDocument({ data: bytes.slice(), verbosity: 0, disableFontFace: true }).promise

async function textOf(bytes: Uint8Array): Promise<string> {
  const pdf = await read(bytes)
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => (await pdf.getPage(i + 1)).getTextContent()),
  )
  return pages
    .flatMap((page) => page.items.map((item) => ('str' in item ? item.str : '')))
    .join(' ')
    .replace(/\s+/g, ' ')
}

const sheet = (marks: PageMark[], issuedAt: string | null = null): PaperDocument => ({
  title: 'test',
  issuedAt,
  pages: [{ width: 210, height: 297, marks }],
})
const line = (text: string, y: number, weight: 'regular' | 'semibold' = 'regular'): PageMark => ({
  kind: 'text',
  x: 20,
  y,
  text,
  size: 14,
  weight,
  ink: 'black',
  anchor: 'start',
})

/** Faces as a program just started has them: none of their glyphs asked for yet. */
async function freshFonts() {
  vi.resetModules()
  const { loadFonts: load } = await import('../../electron/fonts.ts')
  return load()
}

describe('a painted card', () => {
  it('has the same bytes each time, from the same input', async () => {
    const [first, second] = [await paintPdf(cardPaper()), await paintPdf(cardPaper())]
    expect(Buffer.compare(Buffer.from(first), Buffer.from(second))).toBe(0)
  })

  it('has the same bytes whatever was painted before it', async () => {
    // ⅞ is made of the glyph of ⁷, which must not lose what it stands for by that.
    const fractions = sheet([line('36 ⅞″', 40)])
    const plain = sheet([line('46 ⁷⁄₁₆″ fi fl', 40)])
    const alone = await paintPdf(plain, await freshFonts())
    const later = await freshFonts()
    await paintPdf(fractions, later)
    expect(Buffer.compare(Buffer.from(await paintPdf(plain, later)), Buffer.from(alone))).toBe(0)
    expect(await textOf(alone)).toContain('46 ⁷⁄₁₆″ fi fl')
  })

  it('is dated by its day of issue; a draft carries no date', async () => {
    const issued = await PDFDocument.load(await paintPdf(cardPaper()), { updateMetadata: false })
    expect(issued.getCreationDate()?.toISOString()).toBe('2026-05-04T09:08:07.000Z')
    const draft = await PDFDocument.load(
      await paintPdf(cardPaper({ draft: true, header: { ...header, issuedAt: null } })),
      { updateMetadata: false },
    )
    expect(draft.getCreationDate()).toBeUndefined()
    expect(draft.getModificationDate()).toBeUndefined()
  })

  it('asks to be printed at true size', async () => {
    const pdf = await PDFDocument.load(await paintPdf(cardPaper()))
    expect(pdf.catalog.getViewerPreferences()?.getPrintScaling()).toBe('None')
    expect(pdf.catalog.get(PDFName.of('Lang'))?.toString()).toContain('en-GB')
  })

  it('reads back with the figures of the design, dimensions whole', async () => {
    const input = cardOf(usual)
    const text = await textOf(await paintPdf(jobCard(input, measureWith(fonts))))
    const leaf = input.design.leaves[0]
    for (const words of [
      '26-017',
      'A. Customer, Testford',
      '900 × 1800',
      `${leaf?.braces[0]?.angle.toFixed(1)}°`,
      'Back, as it lies on the bench',
      '1 : 10',
      '70 ⅞″',
      'This line is 100 mm: measure it.',
    ])
      expect(text).toContain(words)
    for (const cut of input.design.cuts) expect(text).toContain(String(cut.length))
  })

  it('refuses a place that is no finite number', async () => {
    await expect(paintPdf(sheet([{ ...line('x', 20), x: Number.NaN } as PageMark]))).rejects.toThrow(
      RangeError,
    )
    await expect(
      paintPdf(sheet([{ kind: 'line', x1: 0, y1: Infinity, x2: 1, y2: 1, width: 1, ink: 'black' }])),
    ).rejects.toThrow(RangeError)
  })
})

describe('glyphs', () => {
  it('for every character of every hard card are in the faces', () => {
    for (const gate of hardGates)
      for (const page of cardPaper({ header: longHeader }, gate).pages)
        for (const mark of page.marks)
          if (mark.kind === 'text') expect(uncovered(mark.text, fonts)).toEqual([])
  })

  it('that no face has are told, and print as a box that is seen', () => {
    expect(uncovered('gate 門 ☃ 12', fonts)).toEqual(['門'])
    expect(wordRuns('門', fonts, 'regular').map((run) => run.text)).toEqual(['□'])
  })

  it('leave ink for every figure and fraction in both weights: none is blanked by subsetting', async () => {
    const characters = [...'0123456789½¼¾⅛⅜⅝⅞⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉⁄″′°×–…·éÅŁЖاש□']
    for (const weight of ['regular', 'semibold'] as const)
      for (let i = 0; i < characters.length; i += 8) {
        const few = characters.slice(i, i + 8)
        const pages = few.map((character) => ({
          width: 40,
          height: 30,
          marks: [line(character, 20, weight)],
        }))
        const pdf = await read(await paintPdf({ title: 't', issuedAt: null, pages }))
        for (const [page, character] of few.entries())
          expect([character, (await inkBounds(pdf, page + 1)).dark > 0]).toEqual([character, true])
      }
  })

  it('of an accent typed as two characters are set as one', () => {
    expect(wordRuns('Mu\u0308ller', fonts, 'regular').map((run) => run.text)).toEqual(['Müller'])
  })
})

describe('names written from the right', () => {
  it('stand in their own order and leave the dimension beside them whole', () => {
    expect(visualOrder('שער 12 mm')).toEqual([
      { text: '12', backwards: false },
      { text: 'שער ', backwards: true },
      { text: ' mm', backwards: false },
    ])
    expect(visualOrder('gate 900 mm')).toEqual([{ text: 'gate 900 mm', backwards: false }])
  })
})
