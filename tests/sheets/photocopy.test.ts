import { describe, expect, it } from 'vitest'
import { mmOfPoint, type PageText, type PaperDocument } from '../../shared/papers/page.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { painted, printedMeasure } from '../papers/paperReading.ts'
import { boxesOn } from '../papers/pageBoxes.ts'
import { everyPaper, sheetInput } from './everySheet.ts'
import { rasters, type Raster } from './raster.ts'
import { everySo } from '../fixtures/sample.ts'

const dpi = 200

/** Greys up to which a copier prints black: one set pale, one set dark. */
const copiers = [110, 170]

/** Least and most ink in the box about a line of words: less has vanished, more has run into what lies under it. */
const [least, most] = [0.04, 0.6]

type Box = { text: string; left: number; top: number; right: number; bottom: number }

/** The box about each line of words on a page, its drawings' words too, mm. */
const wordBoxesOf = (paper: PaperDocument, page: number): Box[] => {
  const found = paper.pages[page]
  if (!found) throw new Error('no such page')
  return boxesOn(found, printedMeasure).map(({ text, corners }) => ({
    text,
    left: Math.min(...corners.map(([x]) => x)),
    right: Math.max(...corners.map(([x]) => x)),
    top: Math.min(...corners.map(([, y]) => y)),
    bottom: Math.max(...corners.map(([, y]) => y)),
  }))
}

/** Share of the dots in a box that a copier prints black. */
function inkIn({ data, width, perMm }: Raster, { left, top, right, bottom }: Box, black: number): number {
  let dark = 0
  const [x1, x2, y1, y2] = [left, right, top, bottom].map((mm) => Math.round(mm * perMm)) as [
    number,
    number,
    number,
    number,
  ]
  for (let y = y1; y < y2; y++) for (let x = x1; x < x2; x++) if ((data[y * width + x] ?? 255) < black) dark++
  return dark / Math.max(1, (x2 - x1) * (y2 - y1))
}

/** Words that a copy of black dots only would lose, with the share of ink that is left of them. */
async function lostWords(paper: PaperDocument): Promise<string[]> {
  const pages = rasters(await painted(paper), { dpi })
  return pages.flatMap((raster, page) =>
    wordBoxesOf(paper, page).flatMap((box) =>
      // A dash, a full stop or a box's own sign has little ink by nature; words turned askew share their box with others.
      /[\p{L}\p{N}]/u.test(box.text)
        ? copiers.flatMap((black) => {
            const share = inkIn(raster, box, black)
            return share < least || share > most ? [`page ${page + 1}, ${box.text}: ${share.toFixed(3)}`] : []
          })
        : [],
    ),
  )
}

const gateOf = (start: string) => {
  const found = wholeCards.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no gate ${start}`)
  return found.input
}

describe('a photocopy in black and white only', () => {
  it.each(everySo(3, ['09', '24', '33']))(
    'keeps every line of words of every sheet of gate %s',
    async (start) => {
      for (const { name, paper } of everyPaper(await sheetInput(gateOf(start))))
        expect([name, await lostWords(paper)]).toEqual([name, []])
    },
  )

  it('would lose words in pale grey: the look tells', async () => {
    const words = (text: string, y: number, ink: PageText['ink']): PageText => ({
      ...{ kind: 'text', text, x: 20, y, size: 11, ink },
      weight: 'regular',
      anchor: 'start',
    })
    const marks = [
      words('pale words', 30, 'light'),
      words('grey words', 40, 'grey'),
      words('black', 50, 'black'),
    ]
    const paper = { title: 'proof', issuedAt: null, pages: [{ width: 80, height: 60, marks }] }
    expect(mmOfPoint * 11).toBeCloseTo(3.88, 2)
    const lost = await lostWords(paper)
    expect(lost).toHaveLength(2)
    for (const one of lost) expect(one).toContain('pale words: 0.000')
  })
})
