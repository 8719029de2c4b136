import { describe, expect, test } from 'vitest'
import {
  allowableHold,
  characteristicWithdrawal,
  coachScrewHoldPerInch,
  nailHoldPerInch,
  nailPullOut,
  screwHoldPerInch,
  screwPullOut,
  withdrawalStrength,
} from '../../shared/gate/withdrawal.ts'
import { mpaPerPsi, newtonsPerMmPerPoundInch } from '../../shared/units/imperial.ts'

describe('allowable hold', () => {
  test('NDS withdrawal of wood screws, published check: no. 10 in 0.45 holds 109 lb an inch', () => {
    expect(Math.floor(screwHoldPerInch(0.45, 0.19))).toBe(109)
  })

  test('NDS withdrawal of nails, published check: 0.203 in in 0.45 holds 38 lb an inch', () => {
    expect(Math.round(nailHoldPerInch(0.45, 0.203))).toBe(38)
  })

  test('NDS eq. 12.2-1 (table value from memory): a 3/8 in coach screw in 0.50 holds 305 lb an inch', () => {
    expect(Math.round(coachScrewHoldPerInch(0.5, 0.375))).toBe(305)
  })

  test('25.4 mm of no. 10 thread in 0.45 hold 109.65 lb, in newtons', () => {
    const held = allowableHold('screw', { gravity: 0.45, diameter: 4.826, depth: 25.4 })
    expect(held / newtonsPerMmPerPoundInch / 25.4).toBeCloseTo(109.65, 2)
  })
})

describe('pull at which it comes out', () => {
  test('Wood Handbook FPL-GTR-190 eq. 8-1: the metric and the inch-pound constants of nails agree', () => {
    const metric = nailPullOut({ gravity: 0.48, diameter: 3.35, depth: 40 })
    expect(Math.abs(metric - 7850 * mpaPerPsi * 0.48 ** 2.5 * 3.35 * 40)).toBeLessThan(0.2)
    expect(metric).toBeCloseTo(1157.6, 0)
  })

  test('Wood Handbook FPL-GTR-190 eq. 8-10: the metric and the inch-pound constants of screws agree', () => {
    expect(15700 * mpaPerPsi).toBeCloseTo(108.25, 2)
    expect(screwPullOut({ gravity: 0.48, diameter: 4.826, depth: 25 })).toBeCloseTo(3009, 0)
  })

  test('Wood Handbook FPL-GTR-190 eq. 8-10, worked by hand: no. 8 in 0.70 gives 1261.7 lb an inch', () => {
    const perMm = screwPullOut({ gravity: 0.7, diameter: 0.164 * 25.4, depth: 1 })
    expect(Math.abs(perMm / newtonsPerMmPerPoundInch - 1261.7)).toBeLessThan(0.1)
  })

  test('Wood Handbook FPL-GTR-190 eq. 8-10, worked by hand: no. 8 in 0.37 gives 61.7 N a mm', () => {
    expect(screwPullOut({ gravity: 0.37, diameter: 4.166, depth: 1 })).toBeCloseTo(61.7, 1)
  })
})

describe('characteristic withdrawal', () => {
  test.each([
    [6, 350, 15.92, 2866],
    [6, 310, 14.45, 2601],
    [8, 350, 13.79, 4412],
  ])(
    'EN 1995-1-1 eq. 8.38 to 8.40: %i mm, 40 deep, %i kg/m³ is %f N/mm² and %i N',
    (d, density, strength, force) => {
      const screws = { diameter: d, depth: 40, densityLow: density, angle: 90, count: 1 }
      expect(withdrawalStrength(screws)).toBeCloseTo(strength, 2)
      expect(Math.abs((characteristicWithdrawal(screws) ?? NaN) - force)).toBeLessThan(1)
    },
  )

  test('EN 1995-1-1 eq. 8.38: along the grain it is a sixth less, and ten screws act as ten to the 0.9', () => {
    const one = { diameter: 8, depth: 40, densityLow: 350, angle: 90, count: 1 }
    const across = characteristicWithdrawal(one) ?? NaN
    expect(characteristicWithdrawal({ ...one, angle: 0 })).toBeCloseTo(across / 1.2, 9)
    expect(characteristicWithdrawal({ ...one, count: 10 })).toBeCloseTo(across * 10 ** 0.9, 6)
  })

  test('EN 1995-1-1 §8.7.2: the rule runs from 6 to 12 mm', () => {
    const at = (diameter: number) =>
      characteristicWithdrawal({ diameter, depth: 40, densityLow: 350, angle: 90, count: 1 })
    expect([at(5.9), at(12.1)]).toEqual([undefined, undefined])
    expect(at(12)).toBeGreaterThan(at(6) ?? Infinity)
  })
})
