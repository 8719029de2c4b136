import type { JobCardInput } from '../shared/papers/jobCardInput.ts'
import type { Measure, PaperDocument } from '../shared/papers/page.ts'
import { isolateNames } from '../shared/papers/isolateNames.ts'
import { laidOutIn } from './paperLanguage.ts'
import type { MakeCard, Sheet } from './handlers/context.ts'

type LayOut = (input: JobCardInput, measure: Measure) => PaperDocument

/** The layout of each sheet, loaded when it is first wanted. */
const layouts: Record<Sheet, () => Promise<LayOut>> = {
  'job card': async () => (await import('../shared/papers/jobCard.ts')).jobCard,
  'worked figures': async () => (await import('../shared/papers/workedFigures.ts')).workedFigures,
  'part labels': async () => (await import('../shared/papers/labels/partLabels.ts')).partLabels,
  'care note': async () => (await import('../shared/papers/care/careNote.ts')).careNote,
  'full-size sheets': async () =>
    (await import('../shared/papers/fullSize/fullSizeSheets.ts')).fullSizeSheets,
  'fitting sheet': async () => (await import('../shared/papers/fittingSheet.ts')).fittingSheet,
}

/** All that every sheet needs besides its own layout. */
const tools = () =>
  Promise.all([import('./paintPdf.ts'), import('./fonts.ts'), import('./paint/wordRuns.ts')])

/** Has the card's layout, the faces and the painter loaded before the first card is asked for, in the window's idle time. */
export const warmPainter = (): void => {
  const loaded = Promise.all([tools(), layouts['job card']()])
  // What fails here fails again, and is told, when a card is made.
  void loaded
    .then(([[{ readyToPaint }, { loadFonts }]]) => Promise.all([readyToPaint(), loadFonts()]))
    .catch(() => undefined)
}

/**
 * Lays a job card, or another sheet of the same gate, out, measuring with the faces it is printed in, and paints it as PDF bytes. Layout,
 * faces and painter are loaded with the first one: a start of the program shouldn't wait for them. The same input gives the same bytes.
 */
export const makeCard: MakeCard = async (input, sheet = 'job card', words) => {
  const [layOut, [{ paintPdf }, { loadFonts }, { measureWith }]] = await Promise.all([
    layouts[sheet](),
    tools(),
  ])
  const fonts = await loadFonts()
  const { header, spec, handover } = input
  const isolated = isolateNames(input, [header, spec, handover])
  const paper = laidOutIn(words, [header, spec, handover], {
    measure: measureWith(fonts),
    layOut: (measure) => layOut(isolated, measure),
  })
  return { bytes: await paintPdf(paper, fonts), pages: paper.pages.length }
}
