import { describe, expect, it } from 'vitest'
import type { Design } from '../../shared/gate/designModel.ts'
import { design } from '../../shared/gate/design.ts'
import { wholeGates } from '../drawing/wholeGates.ts'

/** Where a rule may come from: a document with its table, equation, section or page; or plainly said to be one of these. */
const documents =
  /(Wood Handbook FPL-GTR-190|NDS(-2018)?|EN 1995-1-1|EN 1991-1-4|EN 338:2016|EN 1912|NIST SP 811|Goring|ASME B18\.6\.1)/
const plainly =
  /(common practice|this workshop's setting|plane geometry|plane statics|volumes of the parts|from memory|an ironmonger's guide|invented example)/

/** Figures that are one quantity over another, so that they have no unit. */
const ratios = /\.(gravity|coefficient)$/

/** Every id of a figure that something of the design says it rests on, with what says it. */
const cited = ({ checks, fittings }: Design): [string, string][] => [
  ...checks.flatMap(({ id, figures }) => figures.map((figure): [string, string] => [`check ${id}`, figure])),
  ...fittings.flatMap(({ id, figures }) =>
    figures.map((figure): [string, string] => [`piece ${id}`, figure]),
  ),
]

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
      expect(documents.test(source) || plainly.test(source), `${id}: ${source}`).toBe(true)
    }
  })

  it.each(wholeGates)('$name: whatever a check or a piece rests on is among them', ({ spec }) => {
    const outcome = design(spec)
    if (!outcome.made) throw new Error('every example can be made')
    const { figures } = outcome.design
    expect(cited(outcome.design).filter(([, figure]) => !Object.hasOwn(figures, figure))).toEqual([])
  })
})
