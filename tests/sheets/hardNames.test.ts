import { describe, expect, it } from 'vitest'
import { paperSizes, type PaperDocument } from '../../shared/papers/page.ts'
import { fitWords, setLines } from '../../shared/papers/words.ts'
import { seeded } from '../../build/bench/seeded.ts'
import { everySo, soak } from '../fixtures/sample.ts'
import { hardNames } from '../fixtures/hardNames.ts'
import { outside, overlaps } from '../drawing/wordBoxes.ts'
import { boxesOn, printable } from '../papers/pageBoxes.ts'
import { opened, painted, printedMeasure } from '../papers/paperReading.ts'
import { everyPaper } from './everySheet.ts'
import { namedSheets, twentyGates } from './namedSheets.ts'

/** Every name on every gate in the long form; else each name on one gate, so dealt that each gate has three; each fifth pair is laid out. */
const pairs = hardNames.flatMap((name, i) =>
  (soak ? twentyGates : [twentyGates[(i * 7) % twentyGates.length]]).flatMap((gate) =>
    gate ? [{ name, gate }] : [],
  ),
)

/** Words past the edge that every printer reaches, and words over others, on any page. */
const faultsOf = (sheet: string, { pages }: PaperDocument): string[] =>
  pages.flatMap((page, i) => {
    const boxes = boxesOn(page, printedMeasure)
    const edge = sheet.startsWith('part labels')
      ? { left: 3, top: 3, right: page.width - 3, bottom: page.height - 3 }
      : printable(page)
    return [
      ...outside(boxes, edge).map((words) => `past the edge: ${words}`),
      ...overlaps(boxes).map((words) => `over one another: ${words}`),
    ].map((fault) => `${sheet} ${i + 1} ${fault}`)
  })

describe(`sixty names on twenty gates, ${pairs.length} of ${hardNames.length * twentyGates.length} tried here`, () => {
  it('are sixty and twenty', () => {
    expect(new Set(hardNames).size).toBe(60)
    expect(new Set(twentyGates.map(({ name }) => name)).size).toBe(20)
  })

  it.each(everySo(5, hardNames))('keep to their place on every sheet: %s', async (name) => {
    for (const { gate } of pairs.filter((pair) => pair.name === name))
      for (const { name: sheet, paper } of everyPaper(await namedSheets(gate, name)))
        expect([gate.name, faultsOf(sheet, paper)]).toEqual([gate.name, []])
  })

  it.each(hardNames)(
    'are set in lines and cut no wider than their column, no letter parted from its accents: %s',
    (name) => {
      const clusters = new Set([...new Intl.Segmenter('en').segment(name)].map(({ segment }) => segment))
      for (const width of [9, 14, 27, 61])
        for (const size of [11, 14]) {
          const measure = printedMeasure
          const lines = setLines([{ text: name, weight: 'semibold' }], { width, size, measure })
          for (const line of lines)
            for (const piece of line) {
              const end = piece.x + measure(piece.text, size, 'semibold')
              const alone = [...new Intl.Segmenter('en').segment(piece.text)].length === 1
              if (!alone) expect([piece.text, end]).toEqual([piece.text, Math.min(end, width + 1e-6)])
              for (const { segment } of new Intl.Segmenter('en').segment(piece.text.trim()))
                expect(clusters).toContain(segment)
            }
          const fit = { width, most: size, least: 11, weight: 'semibold' as const }
          const cut = fitWords(name, fit, measure)
          if (cut.text !== '…')
            expect(measure(cut.text, cut.size, 'semibold')).toBeLessThanOrEqual(width + 1e-6)
        }
    },
  )
})

/** Runs of words as another program finds them on a printed page that lie nowhere the page model has words, mm. */
async function strayRuns(paper: PaperDocument): Promise<string[]> {
  const pdf = await opened(await painted(paper))
  const stray: string[] = []
  for (const [i, page] of paper.pages.entries()) {
    const boxes = boxesOn(page, printedMeasure).map(({ corners }) => ({
      left: Math.min(...corners.map(([x]) => x)) - 0.4,
      right: Math.max(...corners.map(([x]) => x)) + 0.4,
      top: Math.min(...corners.map(([, y]) => y)) - 0.4,
      bottom: Math.max(...corners.map(([, y]) => y)) + 0.4,
    }))
    const { items } = await (await pdf.getPage(i + 1)).getTextContent()
    for (const item of items) {
      if (!('str' in item) || item.str.trim() === '') continue
      const [cos = 1, sin = 0, , , e = 0, f = 0] = item.transform as number[]
      const long = Math.hypot(cos, sin) || 1
      const mm = 25.4 / 72
      const [x1, y1] = [e * mm, page.height - f * mm]
      const [x2, y2] = [x1 + (cos / long) * item.width * mm, y1 - (sin / long) * item.width * mm]
      // A reader joins runs on one line: the words' two ends are looked for, each where some words of the page are.
      const within = (x: number, y: number): boolean =>
        boxes.some((box) => x >= box.left && x <= box.right && y >= box.top && y <= box.bottom)
      const inside = within(x1, y1) && within(x2, y2)
      if (!inside)
        stray.push(`page ${i + 1}: ${item.str} at ${x1.toFixed(1)}–${x2.toFixed(1)}, ${y1.toFixed(1)}`)
    }
  }
  return stray
}

describe('printed words, read back by another program', () => {
  const draws = seeded(6)
  const chosen = soak ? pairs : Array.from({ length: 3 }, () => draws.one(pairs))
  it.each(chosen)('stand where the page has them: $name on $gate.name', async ({ name, gate }) => {
    const input = await namedSheets(gate, name)
    expect(Object.keys(paperSizes)).toContain(input.format)
    for (const { name: sheet, paper } of everyPaper(input))
      expect([sheet, await strayRuns(paper)]).toEqual([sheet, []])
  })
})
