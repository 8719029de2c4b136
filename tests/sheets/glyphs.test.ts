import { PDFDocument } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { loadFonts, type Face } from '../../electron/fonts.ts'
import { openFaces } from '../../electron/paint/openFaces.ts'
import { points } from '../../electron/paint/sheet.ts'
import { uncovered, wordRuns } from '../../electron/paint/wordRuns.ts'
import { paintPdf } from '../../electron/paintPdf.ts'
import type { PageText, PaperDocument, Weight } from '../../shared/papers/page.ts'
import { rasters } from './raster.ts'
import { everySo } from '../fixtures/sample.ts'

const fonts = await loadFonts()
const weights = ['regular', 'semibold'] as const
const sheet = { width: 210, height: 297 }
const [cell, size, dpi] = [9, 14, 100]
const across = Math.floor((sheet.width - 20) / cell)
const down = Math.floor((sheet.height - 20) / cell)

type Glyph = { text: string; x: number; y: number }

/** Every character that both faces of a weight have and that is printed as itself, on proof pages. */
function proofs(weight: Weight): Glyph[][] {
  const { text, other } = fonts[weight]
  const codes = [...new Set([...text.font.characterSet, ...other.font.characterSet])].sort((a, b) => a - b)
  const shown = codes
    .map((code) => String.fromCodePoint(code))
    .filter(
      (character) => character.trim() !== '' && wordRuns(character, fonts, weight)[0]?.text === character,
    )
  const pages: Glyph[][] = []
  shown.forEach((character, i) => {
    const place = i % (across * down)
    if (place === 0) pages.push([])
    const [x, y] = [10 + (place % across) * cell, 18 + Math.floor(place / across) * cell]
    pages.at(-1)?.push({ text: character, x, y })
  })
  return pages
}

const words = ({ text, x, y }: Glyph, weight: Weight): PageText => ({
  ...{ kind: 'text', text, x, y, size, weight },
  ink: 'black',
  anchor: 'start',
})

/** Proof pages with both faces put into the document whole, by the PDF library alone. */
async function inFull(pages: Glyph[][], weight: Weight): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false })
  document.registerFontkit(openFaces(fonts))
  const embed = (face: Face) => document.embedFont(face.bytes, { subset: false })
  const { text, other } = fonts[weight]
  const faces = new Map([
    [text, await embed(text)],
    [other, await embed(other)],
  ])
  for (const glyphs of pages) {
    const page = document.addPage([points(sheet.width), points(sheet.height)])
    for (const { text: character, x, y } of glyphs) {
      const [run] = wordRuns(character, fonts, weight)
      const font = run && faces.get(run.face)
      if (!run || !font) throw new Error(`no face for ${character}`)
      page.drawText(run.text, { x: points(x), y: points(sheet.height - y), size, font })
    }
  }
  return document.save()
}

/** Characters whose squares of the pages differ by even one dot. */
async function differing(pages: Glyph[][], weight: Weight): Promise<string[]> {
  const paper: PaperDocument = {
    title: 'proof',
    issuedAt: null,
    pages: pages.map((glyphs) => ({ ...sheet, marks: glyphs.map((glyph) => words(glyph, weight)) })),
  }
  const parts = rasters(await paintPdf(paper, fonts), { dpi })
  const wholes = rasters(await inFull(pages, weight), { dpi })
  expect([parts.length, wholes.length]).toEqual([pages.length, pages.length])
  const found = new Set<string>()
  for (const [at, part] of parts.entries()) {
    const whole = wholes[at]?.data ?? new Uint8Array()
    if (Buffer.compare(part.data, whole) === 0) continue
    part.data.forEach((grey, i) => {
      if (grey === whole[i]) return
      const column = Math.floor(((i % part.width) / part.perMm - 10) / cell)
      const row = Math.floor((Math.floor(i / part.width) / part.perMm - 12) / cell)
      found.add(pages[at]?.[row * across + column]?.text ?? 'between them')
    })
  }
  return [...found]
}

describe('a script whose letters the faces have, but that can’t be set', () => {
  it('is replaced and told, and doesn’t keep the paper from being made', async () => {
    // Tifinagh: DejaVu Sans draws it, the library that opens the face can't lay it out.
    expect(fonts.regular.other.font.hasGlyphForCodePoint(0x2d30)).toBe(true)
    expect(uncovered('ⴰ gate', fonts)).toEqual(['ⴰ'])
    expect(wordRuns('ⴰⴱ', fonts, 'regular').map(({ text }) => text)).toEqual(['□□'])
    const marks = [words({ text: 'ⴰⴱ 12 mm', x: 20, y: 20 }, 'regular')]
    const pdf = await paintPdf({ title: 't', issuedAt: null, pages: [{ ...sheet, marks }] }, fonts)
    expect(pdf.length).toBeGreaterThan(1000)
  })
})

describe('every glyph that is shipped', () => {
  it.each(weights)(
    'prints to the dot alike from a part of its face and from the whole: %s',
    async (weight) => {
      const pages = proofs(weight)
      const count = pages.flat().length
      expect(count).toBeGreaterThan(5000)
      expect(await differing(everySo(3, pages), weight)).toEqual([])
    },
  )

  it.each(weights)('can be set beside its neighbours: %s', (weight) => {
    const all = proofs(weight).flat()
    for (let i = 0; i < all.length; i += 40) {
      const line = all
        .slice(i, i + 40)
        .map(({ text }) => text)
        .join('')
      expect(wordRuns(line, fonts, weight).length).toBeGreaterThan(0)
    }
  })

  it.each(weights)('is none of a face’s boxes for what it hasn’t got: %s', (weight) => {
    for (const { text } of proofs(weight).flat())
      for (const { face, text: set } of wordRuns(text, fonts, weight))
        for (const character of set)
          expect([text, face.font.glyphForCodePoint(character.codePointAt(0) ?? 0).id > 0]).toEqual([
            text,
            true,
          ])
  })
})
