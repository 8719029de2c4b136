import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  bearingStress,
  bearingStressFigure,
  designBearing,
  designBearingFigure,
  hankinson,
} from '../../shared/gate/bearing.ts'
import { stepJointDepth, stepJointFigure } from '../../shared/gate/stepJoint.ts'
import { strengthClass } from '../../shared/timber/strengthClasses.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const c24 = strengthClass('C24')
if (!c24) throw new Error('C24 is a class')

describe('bearing', () => {
  test('is the strength along at 0°, across at 90°, and falls between them', () => {
    fc.assert(
      fc.property(number(10, 40), number(1, 9), number(0, 89), (along, across, angle) => {
        const strength = { along, across }
        expect(hankinson(strength, 0)).toBeCloseTo(along, 9)
        expect(hankinson(strength, 90)).toBeCloseTo(across, 9)
        expect(hankinson(strength, angle + 1)).toBeLessThan(hankinson(strength, angle))
      }),
    )
  })

  test('outdoors under the leaf’s own weight is half the strength over 1.3, under a gust nine tenths', () => {
    const at = (duration: 'permanent' | 'instantaneous') =>
      designBearing({ timber: c24, angle: 45, duration })
    expect(at('permanent')).toBeCloseTo((0.5 * 4.468085) / 1.3, 5)
    expect(at('instantaneous') / at('permanent')).toBeCloseTo(0.9 / 0.5, 12)
  })

  test('is refused past a right angle and without strength', () => {
    expect(() => hankinson({ along: 21, across: 2.5 }, 91)).toThrow(RangeError)
    expect(() => hankinson({ along: 21, across: 0 }, 45)).toThrow(RangeError)
  })

  test('stress is force over contact and thickness', () => {
    expect(bearingStress(500, 2000)).toBe(0.25)
    expect(bearingStressFigure(500, 100, 25)).toMatchObject({ value: 0.2, unit: 'N/mm²' })
    expect(() => bearingStress(500, 0)).toThrow(RangeError)
  })

  test('its figure gives the result again and names class and tables', () => {
    const found = designBearingFigure({ timber: c24, angle: 57, duration: 'medium' })
    const { k_mod = NaN, fc0 = NaN, fc90 = NaN, θ = NaN, γM = NaN } = found.inputs
    const sine = Math.sin((θ * Math.PI) / 180)
    expect(found.value).toBeCloseTo((k_mod * fc0) / ((fc0 / fc90) * sine ** 2 + 1 - sine ** 2) / γM, 12)
    expect(found.source).toContain('C24: EN 338:2016 table 1')
  })
})

describe('a step joint', () => {
  test('may be a quarter deep up to 50°, a sixth above 60°, with no jump between', () => {
    expect(stepJointDepth(144, 50)).toBe(36)
    expect(stepJointDepth(144, 50.0001)).toBeCloseTo(36, 3)
    expect(stepJointDepth(144, 60)).toBeCloseTo(24, 9)
    expect(stepJointDepth(144, 60.0001)).toBe(24)
    expect(() => stepJointDepth(0, 45)).toThrow(RangeError)
  })

  test('its figure says which limit was used', () => {
    expect(stepJointFigure(120, 45)).toMatchObject({ value: 30, formula: 'depth / 4, up to 50°' })
    expect(stepJointFigure(120, 55).formula).toContain('from 50 to 60°')
    expect(stepJointFigure(120, 70)).toMatchObject({ value: 20, formula: 'depth / 6, above 60°' })
  })
})
