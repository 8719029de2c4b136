import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  basicGravity,
  densityAt,
  densityFigure,
  densityFrom,
  gravityAt,
} from '../../shared/timber/density.ts'

describe('density', () => {
  // Worked by hand; the change of basis is the handbook's eq. 4-10 from memory.
  test.each([
    [0.45, [543, 550, 558, 562, 585]],
    [0.31, [365, 372, 378, 382, 403]],
    [0.6, [743, 750, 756, 760, 780]],
  ])(
    'of basic gravity %f rises with moisture as worked by hand (relation from memory)',
    (basic, expected) => {
      const found = [12, 15, 18, 20, 30].map((x) => Math.round(densityAt(gravityAt(basic, x), x)))
      expect(found).toEqual(expected)
    },
  )

  test('at 12 % is the listed one', () => {
    fc.assert(
      fc.property(fc.double({ min: 200, max: 1100, noNaN: true }), (density) => {
        expect(densityFrom(density, 12)).toBeCloseTo(density, 9)
      }),
    )
  })

  test('basic gravity goes there and back, and stays itself from 30 % up', () => {
    expect(basicGravity(gravityAt(0.37, 14), 14)).toBeCloseTo(0.37, 12)
    expect(gravityAt(0.37, 30)).toBe(0.37)
    expect(gravityAt(0.37, 55)).toBe(0.37)
    expect(densityFrom(543, 45) / densityFrom(543, 30)).toBeCloseTo(1.45 / 1.3, 12)
  })

  test('refuses a moisture content under 0', () => {
    expect(() => densityAt(0.4, -1)).toThrow(RangeError)
    expect(() => gravityAt(0.4, Number.NaN)).toThrow(RangeError)
    expect(() => basicGravity(0.4, -3)).toThrow(RangeError)
  })

  test('its figure carries where the density comes from', () => {
    const found = densityFigure(510, 18, 'trade tables, from memory')
    expect(found.value).toBe(densityFrom(510, 18))
    expect(found.source).toContain('trade tables, from memory')
    expect(found.unit).toBe('kg/m³')
  })
})
