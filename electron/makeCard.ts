import type { JobCardInput } from '../shared/papers/jobCardInput.ts'
import type { Measure, PaperDocument } from '../shared/papers/page.ts'
import type { MakeCard } from './handlers/context.ts'

/** Lays a paper out, measuring with the faces it is printed in, and paints it as PDF bytes. */
async function painted(
  input: JobCardInput,
  layOut: (input: JobCardInput, measure: Measure) => PaperDocument,
): Promise<{ bytes: Uint8Array; pages: number }> {
  const [{ paintPdf }, { loadFonts }, { measureWith }] = await Promise.all([
    import('./paintPdf.ts'),
    import('./fonts.ts'),
    import('./paint/wordRuns.ts'),
  ])
  const fonts = await loadFonts()
  const paper = layOut(input, measureWith(fonts))
  return { bytes: await paintPdf(paper, fonts), pages: paper.pages.length }
}

/**
 * Lays a job card out, measuring with the faces it is printed in, and paints it as PDF bytes. Layout, faces and painter
 * are loaded with the first card: a start of the program shouldn't wait for them. The same input gives the same bytes.
 */
export const makeCard: MakeCard = async (input) =>
  painted(input, (await import('../shared/papers/jobCard.ts')).jobCard)

/** The worked figures of a gate, as `makeCard` makes its card. */
export const makeFigures: MakeCard = async (input) =>
  painted(input, (await import('../shared/papers/workedFigures.ts')).workedFigures)

/** The sheet to hang a gate by, as `makeCard` makes its card. */
export const makeFittingSheet: MakeCard = async (input) =>
  painted(input, (await import('../shared/papers/fittingSheet.ts')).fittingSheet)
