import type { MakeCard } from './handlers/context.ts'

/**
 * Lays a job card out and paints it as PDF bytes. The layout and the painter are loaded with the first card: they bring
 * fonts and a PDF library that a start of the program shouldn't wait for.
 */
export const makeCard: MakeCard = async (input) => {
  const [{ jobCard }, { paintPdf }] = await Promise.all([
    import('../shared/papers/jobCard.ts'),
    import('./paintPdf.ts'),
  ])
  const card = jobCard(input)
  return { bytes: await paintPdf(card), pages: card.pages.length }
}
