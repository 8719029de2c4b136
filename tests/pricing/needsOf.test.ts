import { describe, expect, it } from 'vitest'
import { toHalf } from '../../shared/cutting/cutList.ts'
import type { HangingLeaf } from '../../shared/gate/leaf.ts'
import { coatedRound } from '../../shared/pricing/coatedArea.ts'
import type { Needs, Operation } from '../../shared/pricing/needs.ts'
import { needsOf } from '../../shared/pricing/needsOf.ts'
import { designOf, gate, gateWith, withoutBraces } from '../fixtures/gates.ts'
import { neededGates } from './pricedGates.ts'

const countOf = (needs: Needs, operation: Operation): number =>
  needs.work.find((need) => need.operation === operation)?.count ?? 0

const needsFor = (spec: Parameters<typeof needsOf>[0]) => needsOf(spec, designOf(spec))

/** Blank timber of a use, m³, by the needs. */
const blankVolume = (needs: Needs, use: string): number =>
  needs.timber
    .filter((need) => need.use === use)
    .reduce((sum, { section, pieces }) => {
      const length = pieces.reduce((all, one) => all + one.length * one.quantity, 0)
      return sum + (length * section.thickness * section.width) / 1e9
    }, 0)

/** The same, from the leaves' own parts: full boards, whole blanks. */
function leafVolume(
  leaves: readonly HangingLeaf[],
  use: string,
  board: { thickness: number; width: number },
): number {
  const volume = (length: number, { thickness, width }: { thickness: number; width: number }) =>
    (toHalf(length) * thickness * width) / 1e9
  return leaves.reduce((sum, leaf) => {
    const parts = {
      boards: leaf.boards.map(({ blank }) => volume(blank, board)),
      ledges: leaf.ledges.map(({ length, section }) => volume(length, section)),
      braces: leaf.braces.map(({ length, section }) => volume(length, section)),
      frame: leaf.frame.map(({ length, section, blankWidth }) =>
        volume(length, {
          ...section,
          width: blankWidth > section.width + 0.5 ? Math.ceil(blankWidth) : section.width,
        }),
      ),
    }[use] as number[]
    return sum + parts.reduce((all, one) => all + one, 0)
  }, 0)
}

const stripOf = ({ design, spec }: (typeof neededGates)[number]): number =>
  design.cuts
    .filter(({ marks }) => marks.includes('meeting strip'))
    .reduce(
      (sum, { blank }) => sum + (blank * spec.boards.section.thickness * spec.boards.section.width) / 1e9,
      0,
    )

describe('what each of the forty gates takes', () => {
  it('is there for all forty', () => {
    expect(neededGates).toHaveLength(40)
  })

  it.each(neededGates)('$name: timber has the volume of the leaf’s own blanks', (one) => {
    const { needs, design, spec } = one
    for (const use of ['boards', 'ledges', 'braces', 'frame']) {
      const strip = use === 'boards' ? stripOf(one) : 0
      expect(blankVolume(needs, use)).toBeCloseTo(
        leafVolume(design.leaves, use, spec.boards.section) + strip,
        9,
      )
    }
  })

  it.each(neededGates)(
    '$name: the leaf as it is weighed comes out of the timber bought',
    ({ needs, design }) => {
      for (const use of ['boards', 'ledges', 'braces', 'frame']) {
        const weighed = Object.entries(design.figures)
          .filter(([id]) => new RegExp(`(^|\\.)weight\\.${use}$`).test(id))
          .reduce((sum, [, { inputs }]) => sum + (inputs['volume m³'] ?? 0), 0)
        expect(blankVolume(needs, use)).toBeGreaterThanOrEqual(0.9995 * weighed) // cut to the half millimetre
        if (weighed > 0) expect(weighed / blankVolume(needs, use)).toBeGreaterThan(0.5)
      }
    },
  )

  it.each(neededGates)('$name: counts agree with the design', ({ needs, design, spec }) => {
    const over = (count: (leaf: HangingLeaf) => number) =>
      design.leaves.reduce((sum, leaf) => sum + count(leaf), 0)
    const fixings = over((leaf) => leaf.fixings.length)
    expect(needs.fixings.reduce((sum, { count }) => sum + count, 0)).toBe(fixings)
    expect(countOf(needs, 'fixing')).toBe(fixings)
    expect(countOf(needs, 'board')).toBe(over((leaf) => leaf.boards.length))
    expect(countOf(needs, 'hang leaf')).toBe(design.leaves.length)
    for (const kind of ['hinge', 'lock', 'latch'] as const)
      expect(countOf(needs, kind)).toBe(design.fittings.filter((fitting) => fitting.kind === kind).length)
    expect(needs.ironmongery.reduce((sum, { count }) => sum + count, 0)).toBe(
      spec.ironmongery.reduce((sum, { quantity }) => sum + quantity, 0),
    )
    const edges = over((leaf) => leaf.boards.filter(({ fence }) => fence !== null).length)
    expect(countOf(needs, 'rip')).toBeGreaterThanOrEqual(edges)
    const ends = (['cut', 'bevel', 'notch', 'tenon'] as const).reduce(
      (sum, one) => sum + countOf(needs, one),
      0,
    )
    expect(ends).toBe(2 * design.cuts.reduce((sum, { quantity }) => sum + quantity, 0))
    for (const { fixingLength } of design.holes.filter(({ quantity }) => quantity > 0))
      expect(needs.fixings.some(({ length }) => length === fixingLength)).toBe(true)
  })

  it.each(neededGates)('$name: both faces at least are coated, and not twice over', ({ needs, design }) => {
    const face = design.leaves.reduce((sum, { width, height }) => sum + (width * height) / 1e6, 0)
    expect(needs.finish.areaM2).toBeGreaterThan(1.5 * face)
    expect(needs.finish.areaM2).toBeLessThan(4.6 * face)
    expect(countOf(needs, 'finish square metre')).toBe(needs.finish.areaM2)
  })
})

describe('the starting gate, 950 × 1780', () => {
  it('takes nine boards of 1804 and two ledges of 926 as blanks', () => {
    const needs = needsFor(gate)
    expect(
      needs.timber.map(({ use, pieces }) => [use, pieces.map(({ length, quantity }) => [length, quantity])]),
    ).toEqual([
      ['boards', [[1804, 9]]],
      ['ledges', [[926, 2]]],
      ['braces', [[expect.any(Number), 1]]],
    ])
  })

  it('has 22 square cuts and 2 angled ones; with bevelled ledges 18 and 6; with a notched brace 22 and 2 notches', () => {
    const counts = (spec: typeof gate) => {
      const needs = needsFor(spec)
      return (['cut', 'bevel', 'notch', 'tenon'] as const).map((operation) => countOf(needs, operation))
    }
    expect(counts(gate)).toEqual([22, 2, 0, 0])
    expect(counts(gateWith({ ledges: { end: { cut: 'bevelled', angle: 5 } } }))).toEqual([18, 6, 0, 0])
    expect(counts(gateWith({ braces: { ends: 'notched', notchDepth: 15 } }))).toEqual([22, 0, 2, 0])
  })

  it('bare of its brace is coated on 4.4 m²: boards and ledges all round, by hand', () => {
    // Boards fill 942 of 950 × 1780 in nine pieces of 20; two ledges of 926 × 145 × 28.
    const boards = 2 * 942 * 1780 + 20 * (2 * 942 + 18 * 1780)
    const ledges = 2 * (2 * 926 * 145 + 28 * 2 * (926 + 145))
    const area = needsFor(withoutBraces(gate)).finish.areaM2
    expect(area).toBeCloseTo((boards + ledges) / 1e6, 2)
    expect(area).toBe(4.69)
  })

  it('a part of 112 × 1780 × 20 has 474 400 mm² all round', () => {
    const board = [
      [0, 0],
      [112, 0],
      [112, 1780],
      [0, 1780],
    ] as const
    expect(coatedRound(board, 20)).toBe(474_400)
  })

  it('a design of another gate is refused', () => {
    const pair = neededGates.find(({ name }) => name.startsWith('18'))
    if (!pair) throw new Error('gate 18 is gone')
    expect(() => needsOf(gate, pair.design)).toThrow(RangeError)
  })
})

describe('a shaped rail', () => {
  it('starts from a blank as wide as rail and rise, from any section wide enough', () => {
    const framed = neededGates.find(({ name }) => name.startsWith('15'))
    const rail = framed?.needs.timber.find(({ sawnToShape }) => sawnToShape)
    const part = framed?.design.leaves[0]?.frame.find(({ name }) => name === 'top rail')
    expect(rail?.section.width).toBe(Math.ceil(part?.blankWidth ?? 0))
    expect(rail?.section.name).toContain('blank')
  })
})
