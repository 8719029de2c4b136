import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  autoGap,
  coefficientChange,
  jointGap,
  movementForm,
  shrinkageChange,
  tongueReach,
  widthChange,
  type CrossGrain,
} from '../../shared/timber/movement.ts'
import {
  autoGapFigure,
  changeFigure,
  jointGapFigure,
  tongueReachFigure,
} from '../../shared/timber/movementFigures.ts'
import { coefficientFromShrinkage, shrinkageFromCoefficient } from '../../shared/timber/shrinkage.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const grainOf = (shrinkage: number, start: number): CrossGrain => ({
  coefficient: coefficientFromShrinkage(shrinkage, start),
  shrinkage,
  start,
  source: 'made up for the test',
  certainty: 'workshop',
})
const anyGrain = fc.tuple(number(0.1, 15), number(15, 35)).map(([s, f]) => grainOf(s, f))
const cedar = grainOf(5, 22)

describe('movement', () => {
  test('is nought at equal moisture, by either form', () => {
    fc.assert(
      fc.property(anyGrain, number(1, 1000), number(0, 40), (grain, width, moisture) => {
        expect(widthChange(width, grain, { from: moisture, to: moisture })).toBe(0)
      }),
      { numRuns: 5000 },
    )
  })

  test('by the coefficient is odd in its sign', () => {
    fc.assert(
      fc.property(
        number(1, 1000),
        number(0.0001, 0.01),
        number(6, 14),
        number(6, 14),
        (width, c, from, to) => {
          const there = coefficientChange(width, c, { from, to })
          const back = coefficientChange(width, c, { from: to, to: from })
          expect(there + back).toBe(0)
          if (from !== to) expect(Math.sign(there)).toBe(Math.sign(to - from))
        },
      ),
      { numRuns: 5000 },
    )
  })

  test('by the shrinkage, there and back, returns the width', () => {
    fc.assert(
      fc.property(anyGrain, number(1, 3000), number(0, 40), number(0, 40), (grain, width, from, to) => {
        const there = width + shrinkageChange(width, grain, { from, to })
        const back = there + shrinkageChange(there, grain, { from: to, to: from })
        expect(Math.abs(back - width)).toBeLessThanOrEqual(1e-9)
      }),
      { numRuns: 5000 },
    )
  })

  test('from the start of shrinking to oven-dry is the whole shrinkage', () => {
    expect(shrinkageChange(100, { shrinkage: 7.6, start: 30 }, { from: 30, to: 0 })).toBeCloseTo(-7.6, 12)
    expect(shrinkageChange(100, cedar, { from: 22, to: 0 })).toBeCloseTo(-5, 12)
  })

  test('stops at the start of shrinking: wetter timber swells no further', () => {
    const to = (moisture: number) => shrinkageChange(100, cedar, { from: 12, to: moisture })
    expect(to(28)).toBe(to(22))
    expect(shrinkageChange(100, cedar, { from: 25, to: 40 })).toBe(0)
  })

  test('takes the coefficient when both ends lie in 6 to 14 %, else the shrinkage for the whole change', () => {
    expect(movementForm({ from: 6, to: 14 })).toBe('coefficient')
    expect(movementForm({ from: 14, to: 6 })).toBe('coefficient')
    expect(movementForm({ from: 5.99, to: 14 })).toBe('shrinkage')
    expect(movementForm({ from: 12, to: 14.01 })).toBe('shrinkage')
    expect(widthChange(112, cedar, { from: 8, to: 13 })).toBe(112 * cedar.coefficient * 5)
    expect(widthChange(112, cedar, { from: 12, to: 18 })).toBeCloseTo((112 * 6) / (440 - 22 + 12), 12)
  })

  test('the two forms agree at 10 % to the first order', () => {
    const change = { from: 10, to: 10.001 }
    const ratio = shrinkageChange(100, cedar, change) / coefficientChange(100, cedar.coefficient, change)
    expect(ratio).toBeCloseTo(1, 9)
  })

  test('refuses a moisture content under 0, and timber that doesn’t shrink doesn’t move', () => {
    expect(() => widthChange(100, cedar, { from: -1, to: 12 })).toThrow(RangeError)
    expect(() => widthChange(Number.NaN, cedar, { from: 8, to: 12 })).toThrow(RangeError)
    expect(shrinkageChange(100, { shrinkage: 0, start: 30 }, { from: 5, to: 20 })).toBe(0)
  })

  test('shrinkage and coefficient turn into one another', () => {
    fc.assert(
      fc.property(number(0.1, 15), number(15, 35), (shrinkage, start) => {
        const back = shrinkageFromCoefficient(coefficientFromShrinkage(shrinkage, start), start)
        expect(back).toBeCloseTo(shrinkage, 9)
      }),
    )
    expect(() => coefficientFromShrinkage(5, 0)).toThrow(RangeError)
  })
})

describe('the gap at a joint', () => {
  test('is what a board swells, rounded up to the next half', () => {
    expect(widthChange(112, cedar, { from: 12, to: 18 })).toBeCloseTo(1.5628, 4)
    expect(autoGap(112, { from: 12, to: 18 }, cedar)).toBe(2)
    expect(autoGap(95, { from: 12, to: 18 }, cedar)).toBe(1.5)
  })

  test('stays as it is when the swelling is a whole half, and is nought for boards that only shrink', () => {
    const grain = { ...cedar, coefficient: 0.0025 }
    expect(autoGap(100, { from: 8, to: 14 }, grain)).toBe(1.5)
    expect(autoGap(100, { from: 14, to: 8 }, grain)).toBe(0)
    expect(autoGap(100, { from: 8, to: 8 }, grain)).toBe(0)
  })

  test('never leaves less than the swelling, nor half a millimetre more', () => {
    fc.assert(
      fc.property(anyGrain, number(40, 250), number(0, 20), number(0, 30), (grain, cover, from, more) => {
        const change = { from, to: from + more }
        const over = autoGap(cover, change, grain) - widthChange(cover, grain, change)
        expect(over).toBeGreaterThanOrEqual(-1e-9)
        expect(over).toBeLessThan(0.5)
      }),
    )
  })

  test('closes as boards swell and opens as they shrink, and the tongue follows', () => {
    const wet = jointGap(2, 112, { grain: cedar, change: { from: 12, to: 18 } })
    const dry = jointGap(2, 112, { grain: cedar, change: { from: 12, to: 9 } })
    expect(wet).toBeCloseTo(2 - 1.5628, 4)
    expect(dry).toBeCloseTo(2 + 112 * cedar.coefficient * 3, 12)
    expect(tongueReach(7, dry)).toBeCloseTo(7 - dry, 12)
  })
})

describe('figures of movement', () => {
  test('name the form that was used, its numbers and the source of the timber’s value', () => {
    const small = changeFigure(112, cedar, { from: 8, to: 13 })
    const large = changeFigure(112, cedar, { from: 12, to: 25 })
    expect(small.source).toContain('eq. 13-2')
    expect(large.source).toContain('eq. 13-3')
    expect(large.source).toContain('made up for the test')
    expect(large.inputs).toEqual({ width: 112, before: 12, after: 22, start: 22, shrinkage: 5 })
    expect(small.inputs['coefficient']).toBe(cedar.coefficient)
  })

  test('a value from memory says so', () => {
    const remembered: CrossGrain = { ...cedar, source: 'trade tables', certainty: 'memory' }
    expect(changeFigure(112, remembered, { from: 8, to: 13 }).source).toContain('from memory')
  })

  test('give the same as the rules', () => {
    const moved = { grain: cedar, change: { from: 12, to: 18 } }
    expect(autoGapFigure(112, moved.change, cedar).value).toBe(2)
    expect(jointGapFigure(2, 112, moved).value).toBe(jointGap(2, 112, moved))
    expect(tongueReachFigure(7, 2.5).value).toBe(4.5)
  })
})
