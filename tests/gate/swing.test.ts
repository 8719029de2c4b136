import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  bevelledClosingGap,
  farCorners,
  leadEdgeBevel,
  leastClosingGap,
  type Corner,
  type Swing,
} from '../../shared/gate/swing.ts'
import { swingFigures } from '../../shared/gate/swingFigures.ts'

const worked: Swing = {
  width: 950,
  pinInset: 0,
  pinProud: 15,
  boards: 20,
  ledges: 27,
  closingInset: 12,
  opens: 'to-back',
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const anySwing: fc.Arbitrary<Swing> = fc.record({
  width: number(400, 2400),
  pinInset: number(-60, 80),
  pinProud: number(-60, 60),
  boards: number(12, 45),
  ledges: number(15, 60),
  closingInset: fc.oneof(fc.constant(0), number(1, 120)),
  opens: fc.constantFrom<Swing['opens']>('to-back', 'to-face'),
})

/** How far a corner gets past the shut leaf's edge, by turning it little by little through a right angle: finer near the start. */
function sweptPast({ out, behind }: Corner, reach: number): number {
  let worst = -Infinity
  const steps = 4000
  for (let i = 0; i <= steps; i++) {
    const turned = (Math.PI / 2) * (i / steps) ** 2
    worst = Math.max(worst, out * Math.cos(turned) + behind * Math.sin(turned))
  }
  return Math.max(0, worst - reach)
}

/** The section of a bevelled leaf at its closing edge, as places along the bevel. */
function bevelledCorners(swing: Swing): Corner[] {
  const bevel = leadEdgeBevel(swing)
  if (!bevel) return []
  const reach = swing.width - swing.pinInset
  return Array.from({ length: 21 }, (_, i) => ({
    out: reach - (bevel.takesOff * i) / 20,
    behind: swing.pinProud + (bevel.over * i) / 20,
  }))
}

describe('the closing gap', () => {
  test('of a leaf reaching 950, 47 thick, pin 15 proud, is 2.021 square-edged, 0.118 with a bevel of 2.323°', () => {
    expect(leastClosingGap(worked)).toBeCloseTo(2.021, 3)
    expect(leadEdgeBevel(worked)?.angle).toBeCloseTo(2.323, 3)
    expect(bevelledClosingGap(worked)).toBeCloseTo(0.118, 3)
  })

  test('counts the pin’s inset out of the reach', () => {
    expect(leastClosingGap({ ...worked, width: 1000, pinInset: 50 })).toBe(leastClosingGap(worked))
    expect(leastClosingGap({ ...worked, width: 910, pinInset: -40 })).toBe(leastClosingGap(worked))
  })

  test('opening to the face is the worse of the boards’ back and the ledges’ end', () => {
    const face: Swing = { ...worked, opens: 'to-face' }
    expect(farCorners(face)).toEqual([
      { out: 950, behind: 35 },
      { out: 938, behind: 62 },
    ])
    expect(leastClosingGap(face)).toBeCloseTo(Math.hypot(950, 35) - 950, 12)
    const flush = { ...face, closingInset: 0.5 }
    expect(leastClosingGap(flush)).toBeCloseTo(Math.hypot(949.5, 62) - 950, 12)
  })

  test('equals a sweep of every far corner, square-edged', () => {
    fc.assert(
      fc.property(anySwing, (swing) => {
        const reach = swing.width - swing.pinInset
        const swept = Math.max(...farCorners(swing).map((corner) => sweptPast(corner, reach)))
        expect(Math.abs(leastClosingGap(swing) - swept)).toBeLessThanOrEqual(0.01)
      }),
      { numRuns: 5000 },
    )
  }, 60_000)

  test('with the bevel planed equals a sweep of the bevel and the ledges’ ends', () => {
    fc.assert(
      fc.property(anySwing, (swing) => {
        const reach = swing.width - swing.pinInset
        const ledges = swing.opens === 'to-face' && swing.closingInset > 0 ? farCorners(swing).slice(1) : []
        const swept = Math.max(...[...bevelledCorners(swing), ...ledges].map((at) => sweptPast(at, reach)))
        expect(Math.abs(bevelledClosingGap(swing) - swept)).toBeLessThanOrEqual(0.01)
        expect(bevelledClosingGap(swing)).toBeLessThanOrEqual(leastClosingGap(swing) + 1e-9)
      }),
      { numRuns: 400 },
    )
  })

  test('is nought, with no bevel, where the pin stands behind the whole leaf', () => {
    const sunk: Swing = { ...worked, pinProud: -50 }
    expect(leastClosingGap(sunk)).toBe(0)
    expect(leadEdgeBevel(sunk)).toEqual({ angle: 0, over: 47, takesOff: 0 })
    expect(bevelledClosingGap(sunk)).toBe(0)
  })

  test('has no bevel for a leaf thicker than it is wide, and a pin past the closing edge is refused', () => {
    expect(leadEdgeBevel({ ...worked, width: 40 })).toBeUndefined()
    expect(() => leastClosingGap({ ...worked, pinInset: 950 })).toThrow(RangeError)
  })

  test('its figures agree with the rules, and those shown give the result again', () => {
    fc.assert(
      fc.property(anySwing, (swing) => {
        const figures = swingFigures(swing)
        const gap = figures['swing.gap']
        const inputs = gap?.inputs ?? {}
        const again =
          Math.hypot(inputs['corner out'] ?? NaN, inputs['corner behind'] ?? NaN) - (inputs['reach'] ?? NaN)
        expect(gap?.value).toBeCloseTo(Math.max(0, again), 9)
        const bevel = figures['swing.bevel']
        const { reach = NaN, proud = NaN, behind = NaN, thickness = NaN } = bevel?.inputs ?? {}
        const angle = Math.atan((reach - Math.sqrt(reach ** 2 + proud ** 2 - behind ** 2)) / thickness)
        expect(bevel?.value).toBeCloseTo((angle * 180) / Math.PI, 9)
        expect(figures['swing.bevelledGap']?.value).toBe(bevelledClosingGap(swing))
      }),
      { numRuns: 500 },
    )
  })
})
