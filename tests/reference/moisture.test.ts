import { describe, expect, test } from 'vitest'
import { equilibriumMoisture } from '../../shared/timber/moisture.ts'
import { celsius } from '../../shared/units/imperial.ts'

const humidities = [10, 20, 30, 40, 50, 60, 65, 70, 75, 80, 85, 90, 95]

const rows: [number, number[]][] = [
  [30, [2.6, 4.6, 6.3, 7.9, 9.5, 11.3, 12.4, 13.5, 14.9, 16.5, 18.5, 21.0, 24.3]],
  [40, [2.6, 4.6, 6.3, 7.9, 9.5, 11.3, 12.3, 13.5, 14.9, 16.5, 18.5, 21.0, 24.3]],
  [50, [2.6, 4.6, 6.3, 7.9, 9.5, 11.2, 12.3, 13.4, 14.8, 16.4, 18.4, 20.9, 24.3]],
  [60, [2.5, 4.6, 6.2, 7.8, 9.4, 11.1, 12.1, 13.3, 14.6, 16.2, 18.2, 20.7, 24.1]],
  [70, [2.5, 4.5, 6.2, 7.7, 9.2, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9, 20.5, 23.9]],
  [80, [2.4, 4.4, 6.1, 7.6, 9.1, 10.8, 11.7, 12.9, 14.2, 15.7, 17.7, 20.2, 23.6]],
  [90, [2.3, 4.3, 5.9, 7.4, 8.9, 10.5, 11.5, 12.6, 13.9, 15.4, 17.3, 19.8, 23.3]],
  [100, [2.3, 4.2, 5.8, 7.2, 8.7, 10.3, 11.2, 12.3, 13.6, 15.1, 17.0, 19.5, 22.9]],
  [140, [1.9, 3.6, 5.0, 6.3, 7.7, 9.1, 10.0, 11.0, 12.1, 13.6, 15.3, 17.7, 21.0]],
]

const cells = rows.flatMap(([fahrenheit, values]) =>
  values.map((value, i) => ({ fahrenheit, rh: humidities[i] ?? NaN, value })),
)

describe('equilibrium moisture content', () => {
  test('the table read holds 117 cells', () => {
    expect(cells).toHaveLength(117)
  })

  test.each(cells)(
    'Wood Handbook FPL-GTR-190 table 4-2, p. 4-4: $fahrenheit °F and $rh % give $value %',
    ({ fahrenheit, rh, value }) => {
      const found = equilibriumMoisture({ tempC: celsius(fahrenheit), rhPercent: rh })
      expect(Math.abs(found - value)).toBeLessThanOrEqual(0.07)
    },
  )

  test('an encyclopaedia example worked from the same equation: 140 °F and 55 % give 8.4 %', () => {
    expect(equilibriumMoisture({ tempC: 60, rhPercent: 55 })).toBeCloseTo(8.4, 1)
  })
})
