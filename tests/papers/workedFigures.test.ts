import { describe, expect, it } from 'vitest'
import { figureEntries } from '../../shared/papers/figureEntries.ts'
import { figureGroups } from '../../shared/papers/figureGroups.ts'
import { namedKinds } from '../../shared/papers/figureNames.ts'
import { workedFigures } from '../../shared/papers/workedFigures.ts'
import { workedNumber, workedResult } from '../../shared/papers/workedNumber.ts'
import { outside, overlaps } from '../drawing/wordBoxes.ts'
import { longHeader } from '../fixtures/cards.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { allWords, boxesOn, printable } from './pageBoxes.ts'

const flat = (text: string): string => text.replace(/\s+/g, ' ')

describe('the worked figures of each of forty gates', () => {
  it.each(wholeCards)(
    '$name: every figure is printed with formula, source, numbers put in and result',
    ({ input }) => {
      const said = flat(allWords(workedFigures(input)))
      const entries = figureEntries(input.design)
      const printed = new Set(entries.flatMap(({ ids }) => ids))
      expect([...printed].sort()).toEqual(Object.keys(input.design.figures).sort())
      for (const entry of entries) {
        expect(said).toContain(flat(`${entry.name}: ${entry.formula}. Source: ${entry.source}.`))
        for (const id of entry.ids) {
          const figure = input.design.figures[id]
          if (!figure) throw new Error(id)
          const row = entry.rows.find(
            ({ value, inputs }) =>
              value === figure.value &&
              [...inputs, ...entry.shared].every(([name, put]) => figure.inputs[name] === put),
          )
          const put = [...(row?.inputs ?? []), ...entry.shared]
          expect(Object.fromEntries(put)).toEqual(figure.inputs)
          for (const [name, value] of put) expect(said).toContain(flat(`${name} ${workedNumber(value)}`))
          expect(said).toContain(workedNumber(figure.value))
        }
      }
    },
  )

  it.each(wholeCards)(
    '$name: nothing past the margins, no words over others, nothing under 11 points',
    ({ input }) => {
      for (const parts of [{}, { format: 'letter' as const, unit: 'in' as const, header: longHeader }])
        for (const page of workedFigures({ ...input, ...parts }).pages) {
          const boxes = boxesOn(page)
          expect(outside(boxes, printable(page))).toEqual([])
          expect(overlaps(boxes)).toEqual([])
          for (const mark of page.marks)
            if (mark.kind === 'text') expect(mark.size).toBeGreaterThanOrEqual(11)
        }
    },
  )
})

describe('worked figures', () => {
  it('have a name for every kind, and a heading', () => {
    const kinds = new Set(
      wholeCards.flatMap(({ input }) => figureEntries(input.design).map(({ kind }) => kind)),
    )
    expect([...kinds].filter((kind) => !namedKinds.includes(kind))).toEqual([])
    const further = wholeCards.flatMap(({ input }) =>
      figureGroups(figureEntries(input.design)).filter(({ title }) => title === 'Further figures'),
    )
    expect(further).toEqual([])
  })

  it('say once what both leaves of a pair share: two leaves take little more room than one', () => {
    const lines = (start: string) => {
      const input = wholeCards.find(({ name }) => name.startsWith(start))?.input
      if (!input) throw new Error(start)
      return workedFigures(input).pages.length
    }
    expect(lines('18')).toBeLessThanOrEqual(lines('01') + 1)
  })

  it('write numbers to five figures that count, never fewer before the point', () => {
    expect([1951.0978, 0.0029287226, 128374.6, -0.603, 0, 1450].map(workedNumber)).toEqual([
      '1951.1',
      '0.0029287',
      '128375',
      '−0.603',
      '0',
      '1450',
    ])
    expect(workedResult({ value: 914.4, unit: 'mm' }, 'in')).toBe('36″ (914.4 mm)')
    expect(workedResult({ value: 58.796, unit: '°' }, 'mm')).toBe('58.796°')
    expect(workedResult({ value: 9, unit: 'no.' }, 'mm')).toBe('9')
  })
})
