import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  braceLoad,
  braceLoadFigure,
  braceThrust,
  braceThrustFigure,
  hingeCouple,
  hingeCoupleFigure,
  hingeShareFigure,
  ledgeShare,
  ledgeShareFigure,
  weightOf,
  windPressure,
  windPush,
  windPushFigure,
} from '../../shared/gate/forces.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const leaf = { weight: 392.266, centreX: 470, pinInset: -20, spacing: 1350 }

describe('hinges', () => {
  test('pull as the centre stands off the pin, a pin beyond the edge adding to it', () => {
    expect(hingeCouple(leaf)).toBeCloseTo((392.266 * 490) / 1350, 9)
    expect(hingeCouple({ ...leaf, pinInset: 20 })).toBeCloseTo((392.266 * 450) / 1350, 9)
  })

  test('pull half as hard at twice the spacing and twice as hard under twice the weight', () => {
    fc.assert(
      fc.property(
        number(10, 3000),
        number(50, 1500),
        number(-80, 80),
        number(200, 2500),
        (weight, centreX, pinInset, spacing) => {
          const once = { weight, centreX, pinInset, spacing }
          expect(hingeCouple({ ...once, spacing: 2 * spacing })).toBeCloseTo(hingeCouple(once) / 2, 9)
          expect(hingeCouple({ ...once, weight: 2 * weight })).toBeCloseTo(2 * hingeCouple(once), 9)
        },
      ),
    )
  })

  test('need some spacing', () => {
    expect(() => hingeCouple({ ...leaf, spacing: 0 })).toThrow(RangeError)
  })
})

describe('a brace', () => {
  test('bears half the leaf, the ironmongery at the closing edge and the person', () => {
    expect(braceLoad({ leafKg: 40, closingKg: 1.5, personKg: 0 })).toBeCloseTo(210.843, 3)
    expect(braceLoad({ leafKg: 40, closingKg: 1.5, personKg: 75 })).toBeCloseTo(946.342, 3)
    expect(weightOf(40)).toBeCloseTo(392.266, 9)
  })

  test('thrusts so that its upright part is the load and its level part the ledge’s share', () => {
    fc.assert(
      fc.property(number(1, 2000), number(5, 85), (load, angle) => {
        const thrust = braceThrust(load, angle)
        expect(Math.hypot(load, ledgeShare(thrust, angle))).toBeCloseTo(thrust, 6)
        expect(thrust).toBeGreaterThan(load)
      }),
    )
  })

  test('can be neither level nor upright', () => {
    for (const angle of [0, 90, -10, Number.NaN]) {
      expect(() => braceThrust(100, angle)).toThrow(RangeError)
      expect(() => ledgeShare(100, angle)).toThrow(RangeError)
    }
  })
})

describe('wind', () => {
  test('pushes four times as hard at twice the speed', () => {
    expect(windPressure(32)).toBeCloseTo(4 * windPressure(16), 9)
    expect(windPush(26, 2e6)).toBeCloseTo(845, 9)
    expect(() => windPressure(-1)).toThrow(RangeError)
  })
})

describe('figures of forces', () => {
  test('give the same as the rules, with unit, formula and source', () => {
    const burden = { leafKg: 40, closingKg: 1.5, personKg: 75 }
    const pairs = [
      [braceLoadFigure(burden), braceLoad(burden)],
      [braceThrustFigure(211, 57), braceThrust(211, 57)],
      [ledgeShareFigure(252, 57), ledgeShare(252, 57)],
      [hingeCoupleFigure(leaf), hingeCouple(leaf)],
      [hingeShareFigure(40), weightOf(40)],
      [windPushFigure(26, 1.98e6), windPush(26, 1.98e6)],
    ] as const
    for (const [figure, value] of pairs) {
      expect(figure.value).toBe(value)
      expect(figure.unit).toBe('N')
      expect(figure.formula).not.toBe('')
      expect(figure.source).not.toBe('')
      expect(Object.values(figure.inputs).every(Number.isFinite)).toBe(true)
    }
  })
})
