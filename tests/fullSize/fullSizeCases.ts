import { fullSizeSheets } from '../../shared/papers/fullSize/fullSizeSheets.ts'
import { truePrinter, type Printer } from '../../shared/papers/fullSize/printer.ts'
import { fullSizeKinds, type FullSizeKind } from '../../shared/papers/fullSize/template.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import type { Page, PageMark, PagePath, PageText, PaperDocument } from '../../shared/papers/page.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { painted, printedMeasure } from '../papers/paperReading.ts'
import { rasters, type Raster } from './raster.ts'

/** The input of the example gate whose name starts so. */
export function gateCard(start: string): JobCardInput {
  const found = wholeCards.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no gate ${start}`)
  return found.input
}

/** A printer that is out by different amounts in its two ways. */
export const outPrinter: Printer = { across: 99.2, along: 100.7 }

export const fullSizeOf = (
  input: JobCardInput,
  kinds: readonly FullSizeKind[] = fullSizeKinds,
  printer: Printer = truePrinter,
): PaperDocument =>
  fullSizeSheets({ ...input, fullSize: { kinds, day: '2026-05-04', printer } }, printedMeasure)

/** A sheet: its page and, at 600 dots to the inch, what is printed of it. */
export type Printed = { page: Page; raster: Raster; texts: PageText[]; paths: PagePath[] }

export const printing = 600

const isText = (mark: PageMark): mark is PageText => mark.kind === 'text'
const isPath = (mark: PageMark): mark is PagePath => mark.kind === 'path'

/** Sheets of one kind as they are printed at 600 dpi. */
export async function printed(paper: PaperDocument): Promise<Printed[]> {
  const found = await rasters(await painted(paper), printing)
  return paper.pages.map((page, i) => {
    const raster = found[i]
    if (!raster) throw new Error('a page is missing')
    return { page, raster, texts: page.marks.filter(isText), paths: page.marks.filter(isPath) }
  })
}

export const titled = (paper: PaperDocument, start: string): PaperDocument => ({
  ...paper,
  pages: paper.pages.filter(({ marks }) =>
    marks.some((mark) => mark.kind === 'text' && mark.text.startsWith(start)),
  ),
})
