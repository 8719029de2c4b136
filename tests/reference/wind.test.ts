import { describe, expect, test } from 'vitest'
import { airDensity, windPressure, windPush } from '../../shared/gate/forces.ts'

describe('wind', () => {
  test('EN 1991-1-4 eq. 4.10, worked notes: 26 m/s is 0.422 kN/m²', () => {
    expect(Math.abs(windPressure(26) / 1000 - 0.422)).toBeLessThanOrEqual(0.0005 + 1e-12)
  })

  test('EN 1991-1-4 recommends 1.25 kg/m³', () => {
    expect(airDensity).toBe(1.25)
  })

  test('EN 1991-1-4 eq. 4.10 with the recommended air: 22 m/s is 302.5 N/m²', () => {
    expect(windPressure(22)).toBeCloseTo(302.5, 9)
  })

  test('French national annex, air of 1.225: 22 m/s is 296.5 N/m²', () => {
    expect(windPressure(22, 1.225)).toBeCloseTo(296.5, 1)
  })

  test('26 m/s pushes a leaf of 1.1 by 1.8 m with 836.55 N', () => {
    expect(windPush(26, 1100 * 1800)).toBeCloseTo(836.55, 9)
  })
})
