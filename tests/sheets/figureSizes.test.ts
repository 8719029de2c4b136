import { describe, expect, it } from 'vitest'
import { figureText } from '../../shared/drawing/figureText.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { labelSheets } from '../../shared/papers/labels/labelLayouts.ts'
import { mmOfPoint, type PaperDocument } from '../../shared/papers/page.ts'
import { dayRips } from '../../shared/papers/dayList/dayCuts.ts'
import { writeShortMm } from '../../shared/units/writeLength.ts'
import { everySo } from '../fixtures/sample.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { everyPaper, sheetInput, sheetOf } from './everySheet.ts'

/** Every line of words of a paper with its size in points, a drawing's with the rest. */
function sized(paper: PaperDocument): { text: string; size: number }[] {
  return paper.pages.flatMap(({ marks }) =>
    marks.flatMap((mark) => {
      if (mark.kind === 'text') return [{ text: mark.text, size: mark.size }]
      if (mark.kind !== 'drawing') return []
      const caption = mark.unscaled ? {} : { caption: `1 : ${mark.scale}` }
      return layOut(mark.drawing, { ...mark, ...caption }).primitives.flatMap((one) =>
        one.kind === 'text' ? [{ text: one.text, size: one.size / mmOfPoint }] : [],
      )
    }),
  )
}

/** Figures that a paper hasn't got in a size or larger. */
function missingAt(paper: PaperDocument, figures: string[], size: number): string[] {
  const large = new Set(sized(paper).flatMap((one) => (one.size >= size ? [one.text.trim()] : [])))
  return figures.filter((figure) => !large.has(figure))
}

/** Where a paper's figures are under the size that they are to have. */
const faults = (name: string, paper: PaperDocument, figures: string[], size: number): string[] =>
  missingAt(paper, figures, size).map((figure) => `${name}: ${figure} isn’t there at ${size} points`)

/** Every third gate here and every one in the long form, in millimetres; each fourth of them in inches too. */
const tried = everySo(3, wholeCards).flatMap(({ name, input }, i) =>
  (i % 4 === 0 ? (['mm', 'in'] as const) : (['mm'] as const)).map((unit) => ({
    name,
    unit,
    card: { ...input, unit },
  })),
)

describe('the size of figures', () => {
  it.each(tried)('is 11 points or more, 14 for what is cut: $name, $unit', async ({ card, unit }) => {
    const input = await sheetInput(card)
    const papers = Object.fromEntries(everyPaper(input).map(({ name, paper }) => [name, paper]))
    const { write } = figureText(unit)
    const { cuts, leaves } = input.design
    const small = Object.entries(papers).flatMap(([name, paper]) =>
      sized(paper).flatMap(({ text, size }) => (/\d/.test(text) && size < 10.99 ? [`${name}: ${text}`] : [])),
    )
    expect(small).toEqual([])
    const ripped = leaves.flatMap(({ boards }) =>
      boards.flatMap(({ fence, width }) => (fence === null ? [] : [write(fence), write(width)])),
    )
    const rips = dayRips([{ ...input, number: '', customer: '', title: '' }]).map(({ fence }) => write(fence))
    const bench: [string, string[], number][] = [
      ['job card', [...cuts.map(({ length }) => writeShortMm(length)), ...ripped], 14],
      ['day list', [...cuts.flatMap(({ blank, length }) => [write(blank), write(length)]), ...rips], 14],
      ...labelSheets.map((sheet): [string, string[], number] => [
        `part labels, ${sheet}`,
        cuts.map(({ length }) => write(length)),
        11,
      ]),
    ]
    for (const [name, figures, size] of bench) {
      const paper = papers[name]
      if (!paper) throw new Error(`no ${name}`)
      expect(faults(name, paper, figures, size)).toEqual([])
    }
  })

  it.each(['mm', 'in'] as const)(
    'is 14 points or more for what is bought and cut from it, in %s',
    async (unit) => {
      const [gate] = wholeCards
      if (!gate) throw new Error('no gate')
      const input = await sheetInput({ ...gate.input, unit })
      const { write } = figureText(unit)
      const { lines, lengths } = input.order.order
      const cut = [...lines, ...lengths, ...lengths.flatMap(({ cuts }) => cuts)].map(({ length }) =>
        write(length),
      )
      expect(faults('timber order', sheetOf('timber order', input), cut, 14)).toEqual([])
    },
  )
})
