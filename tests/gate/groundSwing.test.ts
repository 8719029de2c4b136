import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  greatestRise,
  groundClearance,
  groundRiseAt,
  secondLeafSlope,
  type GroundSwing,
} from '../../shared/gate/groundSwing.ts'
import { groundFigures } from '../../shared/gate/swingFigures.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const anySwing: fc.Arbitrary<GroundSwing> = fc.record({
  width: number(400, 2400),
  openTo: number(1, 270),
  slope: fc.record({ along: number(-0.3, 0.3), across: number(-0.3, 0.3) }),
  followsGround: fc.boolean(),
})

/** The closing edge carried over sloping ground, its height above the foot's own line found from the place it stands at. */
function sweptRise({ width, openTo, slope, followsGround }: GroundSwing): number {
  const steps = 3000
  let worst = 0
  for (let i = 0; i <= steps; i++) {
    const turned = ((openTo * i) / steps / 180) * Math.PI
    const [alongIt, acrossIt] = [width * Math.cos(turned), width * Math.sin(turned)]
    const ground = slope.along * alongIt + slope.across * acrossIt
    worst = Math.max(worst, ground - (followsGround ? slope.along * width : 0))
  }
  return worst
}

describe('the gap over the ground', () => {
  test('of a leaf 1000 wide over 3 in 100 along and 4 in 100 across is worst at 53.130°, 50 up', () => {
    const swing = { width: 1000, openTo: 90, slope: { along: 0.03, across: 0.04 }, followsGround: false }
    expect(greatestRise(swing).rise).toBeCloseTo(50, 9)
    expect(greatestRise(swing).angle).toBeCloseTo(53.1301, 4)
    expect(groundClearance(swing, 45)).toBeCloseTo(95, 9)
    expect(greatestRise({ ...swing, followsGround: true }).rise).toBeCloseTo(20, 9)
  })

  test('is worst at the end of the opening where the leaf stops short of the steepest', () => {
    const swing = { width: 1000, openTo: 40, slope: { along: 0.03, across: 0.04 }, followsGround: false }
    expect(greatestRise(swing)).toEqual({ rise: groundRiseAt(swing, 40), angle: 40 })
  })

  test('is worst shut where the ground falls away, and no more than the least gap on level or falling ground', () => {
    const swing = { width: 1200, openTo: 95, slope: { along: 0.05, across: -0.02 }, followsGround: false }
    expect(greatestRise(swing)).toEqual({ rise: 60, angle: 0 })
    const falling = { ...swing, slope: { along: -0.05, across: -0.02 } }
    expect(greatestRise(falling)).toEqual({ rise: 0, angle: 0 })
    expect(groundClearance({ ...swing, slope: { along: 0, across: 0 } }, 50)).toBe(50)
  })

  test('with a foot that follows the ground a leaf that opens uphill from falling ground still lifts', () => {
    const swing = { width: 1000, openTo: 90, slope: { along: -0.05, across: 0 }, followsGround: true }
    expect(greatestRise(swing).rise).toBeCloseTo(50, 9)
    expect(greatestRise(swing).angle).toBe(90)
  })

  test('equals a sweep to 0.01 mm over 5000 leaves', () => {
    fc.assert(
      fc.property(anySwing, (swing) => {
        const { rise, angle } = greatestRise(swing)
        expect(Math.abs(rise - sweptRise(swing))).toBeLessThanOrEqual(0.01)
        expect(angle).toBeGreaterThanOrEqual(0)
        expect(angle).toBeLessThanOrEqual(swing.openTo)
        expect(Math.max(0, groundRiseAt(swing, angle))).toBeCloseTo(rise, 9)
      }),
      { numRuns: 5000 },
    )
  }, 60_000)

  test('turns its slope along round for the second leaf of a pair', () => {
    expect(secondLeafSlope({ along: 0.03, across: 0.02 })).toEqual({ along: -0.03, across: 0.02 })
    expect(Object.is(secondLeafSlope({ along: 0, across: 0.02 }).along, 0)).toBe(true)
  })

  test('refuses a leaf without width and an opening past a full turn', () => {
    const swing = { width: 1000, openTo: 90, slope: { along: 0, across: 0 }, followsGround: false }
    expect(() => greatestRise({ ...swing, width: 0 })).toThrow(RangeError)
    expect(() => greatestRise({ ...swing, openTo: 361 })).toThrow(RangeError)
  })

  test('its figures hold the clearance, the angle and every number behind them', () => {
    const swing = { width: 1100, openTo: 90, slope: { along: 0.02, across: 0.06 }, followsGround: true }
    const figures = groundFigures(swing, 40)
    expect(figures['swing.ground']?.value).toBe(groundClearance(swing, 40))
    expect(figures['swing.ground']?.formula).toContain('− slope along')
    expect(figures['swing.groundAngle']?.value).toBe(greatestRise(swing).angle)
    expect(figures['swing.ground']?.inputs).toMatchObject({
      width: 1100,
      'slope along': 0.02,
      'least gap': 40,
    })
  })
})
