import { describe, expect, it } from 'vitest'
import { jobCard } from '../../shared/papers/jobCard.ts'
import { margins, type PaperDocument } from '../../shared/papers/page.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { opened, painted, pixels, printedMeasure } from './paperReading.ts'

const across = 'draft – not issued'
const marksOf = ({ pages }: PaperDocument) =>
  pages.map(({ marks }) =>
    marks.flatMap((mark, place) =>
      mark.kind === 'text' && mark.text === across && mark.size > 40 ? [{ place, ink: mark.ink }] : [],
    ),
  )

describe('the mark of a draft', () => {
  it('lies large and pale under all the ink of every page until the card is issued, and never after', () => {
    for (const { name, input } of wholeCards) {
      const draft = jobCard({ ...input, draft: true }, printedMeasure)
      expect(marksOf(draft), name).toEqual(draft.pages.map(() => [{ place: 0, ink: 'light' }]))
      const issued = jobCard({ ...input, draft: false }, printedMeasure)
      expect(marksOf(issued).flat(), name).toEqual([])
    }
  })

  it('is gone from a photocopy in black and white, which reads as the card itself does', async () => {
    const [card] = wholeCards
    if (!card) throw new Error('no card')
    const fine = 6
    /** Black dots under the head, where the two cards say the same. */
    const copied = async (draft: boolean) => {
      const pdf = await opened(await painted(jobCard({ ...card.input, draft }, printedMeasure)))
      const { data, width, height } = await pixels(pdf, 1, fine)
      const from = Math.ceil((margins.top + 16) * fine)
      return Array.from(
        { length: width * (height - from) },
        (_, at) => (data[4 * (from * width + at)] ?? 255) < 128,
      )
    }
    const [draft, issued] = [await copied(true), await copied(false)]
    const black = issued.filter(Boolean).length
    expect(black).toBeGreaterThan(10_000)
    expect(draft.filter((dot, at) => dot !== issued[at]).length).toBeLessThan(black / 200)
  })
})
