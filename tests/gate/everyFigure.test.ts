import { describe, expect, it } from 'vitest'
import type { Design } from '../../shared/gate/designModel.ts'
import { design } from '../../shared/gate/design.ts'
import { wholeGates } from '../drawing/wholeGates.ts'

/** A document, and where in it: table, equation, section, chapter, page, class, or the document's own short subject. */
const published =
  /(Wood Handbook FPL-GTR-190|NDS-2018|EN 1995-1-1|EN 1991-1-4|EN 338:2016|NIST SP 811|Goring|ASME B18\.6\.1).*?(table|eq\.|§|ch\.|p\. \d|for g)/
/** What a rule may plainly be said to be where no document stands behind it. */
const plainly =
  /(common practice|this workshop’s setting|plane geometry|plane statics|measured|entered|from memory|invented)/

/** Figures that are one quantity over another, so that they have no unit. */
const ratios = /\.(gravity|coefficient)$/

/** Every id of a figure that something of the design says it rests on, with what says it. */
const cited = ({ checks, fittings }: Design): [string, string][] => [
  ...checks.flatMap(({ id, figures }) => figures.map((figure): [string, string] => [`check ${id}`, figure])),
  ...fittings.flatMap(({ id, figures }) =>
    figures.map((figure): [string, string] => [`piece ${id}`, figure]),
  ),
]

/** What is entered and shown as it was, a drill picked for a size that has its figure, or a place on a drawing. */
const asEntered =
  /\.(section|outline|shapes|places|entry|count|board|blankWidth|drill|notch\.depth)(\.|$)|^leaves\.\d\.ledges\.\d\.x$/

/** Every number that the leaves, their movement, swing and ironmongery carry, with its path. */
function numbersOf({ leaves, movement, swing, fittings }: Design): [string, number][] {
  const found: [string, number][] = []
  const walk = (value: unknown, path: string): void => {
    if (asEntered.test(path)) return
    if (typeof value === 'number') found.push([path, value])
    else if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) walk(inner, `${path}.${key}`)
  }
  walk(leaves, 'leaves')
  walk(movement, 'movement')
  walk(swing, 'swing')
  walk(fittings, 'fittings')
  return found
}

describe('every figure of forty gates', () => {
  it.each(wholeGates)('$name: has a formula, what was put into it, a unit and a source', ({ spec }) => {
    const outcome = design(spec)
    if (!outcome.made) throw new Error('every example can be made')
    const figures = Object.entries(outcome.design.figures)
    expect(figures.length).toBeGreaterThan(80)
    for (const [id, { value, unit, formula, inputs, source }] of figures) {
      expect(Number.isFinite(value), id).toBe(true)
      expect(unit !== '' || ratios.test(id), id).toBe(true)
      expect(formula, id).toMatch(/\S/)
      expect(Object.keys(inputs), id).not.toEqual([])
      expect(Object.values(inputs).every(Number.isFinite), id).toBe(true)
      expect(published.test(source) || plainly.test(source), `${id}: ${source}`).toBe(true)
    }
  })

  it.each(wholeGates)(
    '$name: every number of leaves, movement, swing and ironmongery is among them',
    ({ spec }) => {
      const outcome = design(spec)
      if (!outcome.made) throw new Error('every example can be made')
      const values = new Set(Object.values(outcome.design.figures).flatMap(({ value }) => [value, 0 - value]))
      expect(numbersOf(outcome.design).filter(([, value]) => !values.has(value))).toEqual([])
    },
  )

  it.each(wholeGates)('$name: whatever a check or a piece rests on is among them', ({ spec }) => {
    const outcome = design(spec)
    if (!outcome.made) throw new Error('every example can be made')
    const { figures } = outcome.design
    expect(cited(outcome.design).filter(([, figure]) => !Object.hasOwn(figures, figure))).toEqual([])
  })
})
