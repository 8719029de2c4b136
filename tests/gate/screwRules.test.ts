import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { leastPenetrationFigure, leastSpacings, spacingFigures } from '../../shared/gate/screwRules.ts'
import { allowableHold, allowableHoldFigure, characteristicWithdrawal } from '../../shared/gate/withdrawal.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('spacings', () => {
  test('are never closer without a lead hole than with one', () => {
    fc.assert(
      fc.property(number(2.5, 6), number(290, 500), number(0, 90), (diameter, densityLow, angle) => {
        const drilled = leastSpacings({ diameter, densityLow, predrilled: true, angle })
        const driven = leastSpacings({ diameter, densityLow, predrilled: false, angle })
        if (!drilled || !driven) throw new Error('the table gives both')
        for (const name of Object.keys(drilled) as (keyof typeof drilled)[])
          expect(driven[name]).toBeGreaterThanOrEqual(drilled[name] - 1e-9)
      }),
    )
  })

  test('need a lead hole past 6 mm, and an angle no more than square to the grain', () => {
    const spaced = { diameter: 6.5, densityLow: 350, predrilled: false, angle: 30 }
    expect(leastSpacings(spaced)).toBeUndefined()
    expect(spacingFigures(spaced)).toEqual({})
    expect(leastSpacings({ ...spaced, predrilled: true })?.unloadedEnd).toBe(45.5)
    expect(() => leastSpacings({ ...spaced, angle: 120 })).toThrow(RangeError)
  })

  test('come as six figures, diameters by diameter', () => {
    const figures = spacingFigures({ diameter: 5, densityLow: 310, predrilled: true, angle: 90 })
    expect(Object.keys(figures)).toHaveLength(6)
    expect(figures['spacing.loadedEdge']).toMatchObject({
      value: 35,
      unit: 'mm',
      source: 'EN 1995-1-1 table 8.2',
    })
    expect(figures['spacing.loadedEdge']?.inputs).toMatchObject({ diameter: 5, diameters: 7 })
  })
})

describe('penetration', () => {
  test('as a figure says how many diameters and by which rule', () => {
    expect(leastPenetrationFigure('screw', 5)).toMatchObject({ value: 30, formula: '6 × diameter' })
    expect(leastPenetrationFigure('smooth nail', 3)).toMatchObject({ value: 24, formula: '8 × diameter' })
  })
})

describe('hold', () => {
  test('grows with the depth alike and with the gravity faster', () => {
    const pulled = { gravity: 0.45, diameter: 4.826, depth: 25 }
    expect(allowableHold('screw', pulled)).toBeCloseTo(480.1, 1)
    expect(allowableHold('screw', { ...pulled, depth: 50 })).toBeCloseTo(960.2, 1)
    expect(allowableHold('screw', { ...pulled, gravity: 0.9 })).toBeCloseTo(4 * 480.08, 0)
    expect(allowableHold('nail', { ...pulled, diameter: 3 })).toBeLessThan(480)
    expect(allowableHoldFigure('nail', pulled).value).toBe(allowableHold('nail', pulled))
    expect(() => allowableHold('nail', { ...pulled, gravity: 0 })).toThrow(RangeError)
  })

  test('of thick screws is refused without a depth or a number of them', () => {
    const screws = { diameter: 8, depth: 40, densityLow: 350, angle: 90, count: 1 }
    expect(() => characteristicWithdrawal({ ...screws, depth: 0 })).toThrow(RangeError)
    expect(() => characteristicWithdrawal({ ...screws, count: 0 })).toThrow(RangeError)
  })
})
