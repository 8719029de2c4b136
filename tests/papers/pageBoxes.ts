import { layOut } from '../../shared/drawing/layOut.ts'
import { plainMeasure } from '../../shared/papers/measure.ts'
import { mmOfPoint, type Measure, type Page, type PaperDocument } from '../../shared/papers/page.ts'
import { wordBox, type WordBox } from '../drawing/wordBoxes.ts'

/** Every line of words on a page, drawings' words included, in mm. Turned words across a draft lie under all and don't count. */
export function boxesOn(page: Page, measure: Measure = plainMeasure): WordBox[] {
  return page.marks.flatMap((mark): WordBox[] => {
    if (mark.kind === 'text' && mark.angle === undefined)
      return [
        wordBox(
          { ...mark, size: mark.size * mmOfPoint, angle: 0 },
          measure(mark.text, mark.size, mark.weight),
        ),
      ]
    if (mark.kind !== 'drawing') return []
    const { drawing, width, height, scale } = mark
    const caption = mark.unscaled ? {} : { caption: `1 : ${scale}` }
    const laid = layOut(drawing, { width, height, scale, ...caption })
    return laid.primitives.flatMap((one) => {
      if (one.kind !== 'text') return []
      const box = wordBox(one, measure(one.text, one.size / mmOfPoint, one.weight))
      return [{ ...box, corners: box.corners.map(([x, y]) => [x + mark.x, y + mark.y] as const) }]
    })
  })
}

/** Every word outside the drawings on one page, counted from 0. */
export const wordsOf = (paper: PaperDocument, page: number): string =>
  (paper.pages[page]?.marks ?? []).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ')

/** Every word outside the drawings of a paper. */
export const allWords = (paper: PaperDocument): string =>
  paper.pages.map((_, i) => wordsOf(paper, i)).join(' ')

/** The part of a page that every printer reaches, mm. */
export const printable = (page: Page) => ({
  left: 10,
  top: 10,
  right: page.width - 10,
  bottom: page.height - 15,
})
