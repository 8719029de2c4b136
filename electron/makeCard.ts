import type { MakeCard } from './handlers/context.ts'

/**
 * Lays a job card out, measuring with the faces it is printed in, and paints it as PDF bytes. Layout, faces and painter
 * are loaded with the first card: a start of the program shouldn't wait for them. The same input gives the same bytes.
 */
export const makeCard: MakeCard = async (input) => {
  const [{ jobCard }, { paintPdf }, { loadFonts }, { measureWith }] = await Promise.all([
    import('../shared/papers/jobCard.ts'),
    import('./paintPdf.ts'),
    import('./fonts.ts'),
    import('./paint/wordRuns.ts'),
  ])
  const fonts = await loadFonts()
  const card = jobCard(input, measureWith(fonts))
  return { bytes: await paintPdf(card, fonts), pages: card.pages.length }
}
