import type { DayListInput } from '../shared/papers/dayList/dayListInput.ts'
import { isolateNames } from '../shared/papers/isolateNames.ts'
import { laidOutIn, type PaperWords } from './paperLanguage.ts'
import type { TimberOrderInput } from '../shared/papers/order/timberOrderInput.ts'

/** A paper for the bench that belongs to no one job, and all it is made from. */
export type BenchPaper =
  { paper: 'day list'; input: DayListInput } | { paper: 'timber order'; input: TimberOrderInput }

/** Lays a paper of several jobs out and paints it. The same input gives the same bytes. */
export type MakeBenchPaper = (
  wanted: BenchPaper,
  words?: PaperWords,
) => Promise<{ bytes: Uint8Array; pages: number }>

/** What a person wrote in a day list: all but the workings of its gates. */
const dayNames = ({ workshop, jobs }: DayListInput): unknown => [
  workshop,
  jobs.map(({ number, title, customer, spec }) => [number, title, customer, spec]),
]

/** The paper laid out, once its layout and the faces it is printed in are there. */
async function laidOut(wanted: BenchPaper, words?: PaperWords) {
  const [{ loadFonts }, { measureWith }] = await Promise.all([
    import('./fonts.ts'),
    import('./paint/wordRuns.ts'),
  ])
  const fonts = await loadFonts()
  const measure = measureWith(fonts)
  if (wanted.paper === 'day list') {
    const { dayList } = await import('../shared/papers/dayList/dayList.ts')
    const { workshop, jobs } = wanted.input
    const written = [
      { workshop },
      jobs.map(({ number, title, customer, spec }) => ({ number, title, customer, spec })),
    ]
    const isolated = isolateNames(wanted.input, dayNames(wanted.input))
    return { fonts, laid: laidOutIn(words, written, { measure, layOut: (said) => dayList(isolated, said) }) }
  }
  const { timberOrder } = await import('../shared/papers/order/timberOrder.ts')
  const { workshop, business, rack, order } = wanted.input
  const written = [{ workshop }, business, rack, order]
  const isolated = isolateNames(wanted.input, wanted.input)
  return {
    fonts,
    laid: laidOutIn(words, written, { measure, layOut: (said) => timberOrder(isolated, said) }),
  }
}

/**
 * Lays a workshop day list or a timber order out, measuring with the faces it is printed in, and paints it as PDF bytes; everything is loaded with
 * the first one, as with a card. Rejects with RangeError when the workshop's logo can't be read as a picture.
 */
export const makeBenchPaper: MakeBenchPaper = async (wanted, words) => {
  const [{ paintPdf }, { fonts, laid }] = await Promise.all([import('./paintPdf.ts'), laidOut(wanted, words)])
  return { bytes: await paintPdf(laid, fonts), pages: laid.pages.length }
}
