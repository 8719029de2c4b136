import { describe, expect, test } from 'vitest'
import { toRadians } from '../../shared/units/angle.ts'
import {
  celsius,
  densityPerPoundCubicFoot,
  kgPerPound,
  mpaPerPsi,
  newtonsPerMmPerPoundInch,
  newtonsPerPoundForce,
  standardGravity,
} from '../../shared/units/imperial.ts'
import { mmPerFoot, mmPerInch } from '../../shared/units/inch.ts'

describe('unit factors (printed in tables after NIST SP 811 appendix B)', () => {
  test.each([
    ['inch to mm', mmPerInch, 25.4, 0],
    ['foot to m', mmPerFoot / 1000, 0.3048, 0],
    ['square inch to mm²', mmPerInch ** 2, 645.16, 1e-9],
    ['cubic inch to mm³', mmPerInch ** 3, 16387.1, 0.05],
    ['square foot to m²', (mmPerFoot / 1000) ** 2, 0.09290304, 1e-12],
    ['cubic foot to m³', (mmPerFoot / 1000) ** 3, 0.028317, 5e-7],
    ['pound to kg', kgPerPound, 0.4535924, 5e-8],
    ['pound-force to N', newtonsPerPoundForce, 4.448222, 5e-7],
    ['psi to Pa', mpaPerPsi * 1e6, 6894.757, 5e-4],
    ['pound-force per square foot to Pa', (mpaPerPsi * 1e6) / 144, 47.88026, 5e-6],
    ['pound per cubic foot to kg/m³', densityPerPoundCubicFoot, 16.01846, 5e-6],
    ['pound-force inch to N·m', (newtonsPerPoundForce * mmPerInch) / 1000, 0.112985, 5e-7],
    ['pound-force per inch to N/mm', newtonsPerMmPerPoundInch, 0.1751268, 5e-8],
    ['mile per hour to m/s', (5280 * mmPerFoot) / 1000 / 3600, 0.44704, 1e-12],
  ])('%s', (_name, ours, printed, slack) => {
    expect(Math.abs(ours - printed)).toBeLessThanOrEqual(slack)
  })

  test('standard gravity is 9.80665 m/s²', () => {
    expect(standardGravity).toBe(9.80665)
  })

  test.each([
    [32, 0],
    [212, 100],
    [-40, -40],
  ])('%i °F is %i °C', (fahrenheit, tempC) => {
    expect(celsius(fahrenheit)).toBeCloseTo(tempC, 12)
  })

  test('a sixteenth is 1.5875 mm and three sixty-fourths 1.190625 mm', () => {
    expect(mmPerInch / 16).toBe(1.5875)
    expect((3 * mmPerInch) / 64).toBeCloseTo(1.190625, 12)
  })

  test('a straight angle is π', () => {
    expect(toRadians(180)).toBe(Math.PI)
  })
})
