import type { QuotationInput } from '../shared/papers/quotationInput.ts'
import { isolateNames } from '../shared/papers/isolateNames.ts'
import { laidOutIn, type PaperWords } from './paperLanguage.ts'

/** Lays a quotation out and paints it. The same input gives the same bytes. */
export type MakeQuotation = (
  input: QuotationInput,
  words?: PaperWords,
) => Promise<{ bytes: Uint8Array; pages: number }>

/**
 * Lays a quotation out, measuring with the faces it is printed in, and paints it as PDF bytes; everything is loaded with the first one,
 * as with a card. Rejects with RangeError when the logo can't be read as a picture or an option's gate can't be made.
 */
export const makeQuotation: MakeQuotation = async (input, words) => {
  const [{ quotation }, { paintPdf }, { loadFonts }, { measureWith }] = await Promise.all([
    import('../shared/papers/quotation.ts'),
    import('./paintPdf.ts'),
    import('./fonts.ts'),
    import('./paint/wordRuns.ts'),
  ])
  const fonts = await loadFonts()
  const { header, business, money } = input
  const paper = laidOutIn(
    words,
    [header, business, money.options.map(({ name, spec }) => ({ name, spec }))],
    {
      measure: measureWith(fonts),
      layOut: (measure) => quotation(isolateNames(input, input), measure),
    },
  )
  return { bytes: await paintPdf(paper, fonts), pages: paper.pages.length }
}
