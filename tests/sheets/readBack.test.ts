import { describe, expect, it } from 'vitest'
import { figureText } from '../../shared/drawing/figureText.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import type { Drawing } from '../../shared/drawing/drawing.ts'
import type { Page, PaperDocument } from '../../shared/papers/page.ts'
import { everySo, soak } from '../fixtures/sample.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { readBack } from '../papers/paperReading.ts'
import { labelsOf, sheetInput, sheetOf, type SheetInput } from './everySheet.ts'

/** Figures in a line of words, fractions and signs of their unit with them. */
const figuresIn = (text: string): string[] =>
  (
    text
      .replace(/\s+(?=[½¼¾⅛⅜⅝⅞⁰-⁹¹²³])/g, ' ')
      .match(/\d[\d.]*(?: ?[½¼¾⅛⅜⅝⅞]|[ ]?[⁰¹²³⁴-⁹]+⁄[₀-₉]+)?[″′°]?|[½¼¾⅛⅜⅝⅞]″|[⁰¹²³⁴-⁹]+⁄[₀-₉]+″/gu) ?? []
  ).map((figure) => figure.replace(/\s/g, ''))

/** Every line of words that a page has, its drawings' with the rest. */
const textsOf = (page: Page): string[] =>
  page.marks.flatMap((mark) => {
    if (mark.kind === 'text') return mark.angle === undefined ? [mark.text] : []
    if (mark.kind !== 'drawing') return []
    const caption = mark.unscaled ? {} : { caption: `1 : ${mark.scale}` }
    return layOut(mark.drawing, { ...mark, ...caption }).primitives.flatMap((one) =>
      one.kind === 'text' ? [one.text] : [],
    )
  })

/** Every number in a value, however deep. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(numbersIn)
}

/** Every number of a design and of what was entered, as the program writes lengths, angles and counts. */
function written({ spec, design, unit }: SheetInput): Set<string> {
  const { write, other } = figureText(unit)
  const numbers = [
    ...new Set(numbersIn([spec, design]).filter((one) => Number.isFinite(one) && Math.abs(one) < 1e5)),
  ]
  // Where a ledge's edges come is its middle and half its width.
  const edges = design.leaves.flatMap(({ ledges }) =>
    ledges.flatMap(({ y, section }) => [y - section.width / 2, y + section.width / 2]),
  )
  return new Set(
    [...numbers, ...edges]
      .map(Math.abs)
      .flatMap((one) => [
        write(one),
        other(one).replace(' mm', ''),
        `${one.toFixed(1)}°`,
        `${Number(one.toFixed(1))}°`,
      ]),
  )
}

const drawingsOf = (paper: PaperDocument): Drawing[] =>
  paper.pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'drawing' ? [mark.drawing] : [])))

const ownWidth = 'its own width'

/**
 * Lengths that a drawing's chains and slopes say, beside how long the thing is that they measure, as written. Boards stand in their chain with
 * the gaps between them, and are said by their own width.
 */
function dimensions(drawing: Drawing, write: (mm: number) => string): { said: string; is: string }[] {
  return drawing.marks.flatMap((mark) => {
    if (mark.kind === 'chain')
      return mark.labels.flatMap((label, i) => {
        const [from, to] = [mark.stops[i], mark.stops[i + 1]]
        if (label && mark.part === 'dimension boards') return [{ said: label.text, is: ownWidth }]
        // Heights of the ground may be drawn five times as large as they are, and say so.
        const times = drawing.notes.includes('Heights drawn five times as large') ? 5 : 1
        return label && from !== undefined && to !== undefined
          ? [{ said: label.text, is: write(Math.abs(to - from) / times) }]
          : []
      })
    if (mark.kind !== 'dimension') return []
    const is = write(Math.hypot(mark.to[0] - mark.from[0], mark.to[1] - mark.from[1]))
    return mark.texts.map((said) => ({ said, is }))
  })
}

const sheets = ['job card', 'fitting sheet', 'day list'] as const

/** Every third gate here, of each third of them labels and worked figures too; in the long form all of every gate. */
const fewer = everySo(3, wholeCards)
const withMore = fewer.map((gate, i) => ({ ...gate, more: soak || i % 3 === 1 }))
const tally = { printed: 0, dimensions: 0, tables: 0 }

describe('figures, read off the printed paper by another program', () => {
  it.each(withMore)(
    'are those of the page, all of them and no other: $name',
    async ({ input: card, more }) => {
      const input = await sheetInput(card)
      const papers = [
        ...sheets.map((name) => sheetOf(name, input)),
        ...(more ? [sheetOf('worked figures', input), ...labelsOf(input).map(({ paper }) => paper)] : []),
      ]
      for (const paper of papers) {
        const read = await readBack(paper)
        for (const [i, page] of paper.pages.entries()) {
          const there = textsOf(page).flatMap(figuresIn).sort()
          expect((read[i] ?? []).flatMap(figuresIn).sort()).toEqual(there)
          tally.printed += there.length
        }
      }
    },
  )
})

describe('dimensions', () => {
  it.each(fewer)('on drawings say what they measure, in either unit: $name', async ({ input: card }) => {
    for (const unit of ['mm', 'in'] as const) {
      const input = await sheetInput({ ...card, unit })
      const { write } = figureText(unit)
      const known = written(input)
      const strange: string[] = []
      for (const drawing of [sheetOf('job card', input), sheetOf('fitting sheet', input)].flatMap(drawingsOf))
        for (const { said, is } of dimensions(drawing, write)) {
          tally.dimensions += 1
          // Boards are said without the gaps between them.
          const right = is === ownWidth ? known.has(said) : figuresIn(said)[0] === is.replace(/\s/g, '')
          if (!right) strange.push(`${drawing.title}: ${said} measures ${is}`)
        }
      expect(strange).toEqual([])
    }
  })

  it.each(fewer)('in tables are figures of the design: $name', async ({ input: card }) => {
    const input = await sheetInput(card)
    const known = written(input)
    const strange: string[] = []
    for (const name of ['job card', 'fitting sheet', 'day list'] as const)
      for (const { marks } of sheetOf(name, input).pages)
        for (const mark of marks) {
          if (
            mark.kind !== 'text' ||
            mark.anchor !== 'end' ||
            mark.size < 14 ||
            !/^[\d½¼¾⅛⅜⅝⅞]/.test(mark.text)
          )
            continue
          for (const part of mark.text.split(/[ ]?(?:×|to|–|;)[ ]?/)) {
            tally.tables += 1
            if (!known.has(part.trim())) strange.push(`${name}: ${mark.text}`)
          }
        }
    expect(strange).toEqual([])
  })

  it('were all looked at', () => {
    process.stdout.write(
      `figures read back ${tally.printed}, dimensions on drawings ${tally.dimensions}, in tables ${tally.tables}\n`,
    )
    const share = fewer.length / wholeCards.length
    expect(tally.printed).toBeGreaterThan(15_000 * share)
    expect(tally.dimensions).toBeGreaterThan(1000 * share)
    expect(tally.tables).toBeGreaterThan(1500 * share)
  })
})
