import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { coldestInTable, equilibriumMoisture, moistureFigure } from '../../shared/timber/moisture.ts'

describe('moisture content', () => {
  // Worked by hand from the equation in °C.
  test.each([
    [0, 80, 16.533],
    [5, 85, 18.47],
    [10, 50, 9.466],
    [10, 80, 16.382],
    [15, 65, 12.149],
    [20, 50, 9.271],
    [20, 65, 11.996],
    [20, 80, 16.037],
    [20, 90, 20.531],
    [25, 60, 10.832],
    [30, 40, 7.473],
  ])('of timber in air of %i °C and %i %% settles at %f %%', (tempC, rhPercent, moisture) => {
    expect(Math.abs(equilibriumMoisture({ tempC, rhPercent }) - moisture)).toBeLessThan(0.00051)
  })

  test('is nought in dry air and rises with humidity all the way', () => {
    expect(equilibriumMoisture({ tempC: 17, rhPercent: 0 })).toBe(0)
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 99, noNaN: true }),
        (tempC, rhPercent) => {
          const here = equilibriumMoisture({ tempC, rhPercent })
          expect(equilibriumMoisture({ tempC, rhPercent: rhPercent + 1 })).toBeGreaterThan(here)
          expect(here).toBeLessThan(31)
        },
      ),
    )
  })

  test('air colder than the published table counts as its coldest', () => {
    const cold = equilibriumMoisture({ tempC: -15, rhPercent: 83 })
    expect(cold).toBe(equilibriumMoisture({ tempC: coldestInTable, rhPercent: 83 }))
    expect(moistureFigure({ tempC: -15, rhPercent: 83 }).inputs['temperature used °C']).toBe(coldestInTable)
  })

  test('is refused for air that can’t be', () => {
    expect(() => equilibriumMoisture({ tempC: 20, rhPercent: 100.1 })).toThrow(RangeError)
    expect(() => equilibriumMoisture({ tempC: 20, rhPercent: -0.1 })).toThrow(RangeError)
    expect(() => equilibriumMoisture({ tempC: Number.NaN, rhPercent: 50 })).toThrow(RangeError)
    expect(() => equilibriumMoisture({ tempC: -41, rhPercent: 50 })).toThrow(RangeError)
  })

  test('its figure can be worked again from the numbers shown', () => {
    const { value, inputs, formula, source } = moistureFigure({ tempC: 12, rhPercent: 77 })
    const [w, k, k1, k2, h] = ['W', 'K', 'K1', 'K2', 'h'].map((name) => inputs[name] ?? NaN) as [
      number,
      number,
      number,
      number,
      number,
    ]
    const kh = k * h
    const again =
      (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh))
    expect(again).toBeCloseTo(value, 12)
    expect(formula).not.toBe('')
    expect(source).toContain('table 4-2')
  })
})
