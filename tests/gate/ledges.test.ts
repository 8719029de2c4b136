import { describe, expect, it } from 'vitest'
import { ledgeCount } from '../../shared/gate/ledges.ts'
import { gateWith, leafOf } from '../fixtures/gates.ts'

const both = { rip: 'both' } as const

describe('ledges', () => {
  it('run from inset to inset: 950 − 10 − 14 = 926', () => {
    for (const ledge of leafOf(gateWith({})).ledges)
      expect(ledge).toMatchObject({ x: 10, length: 926, shortLength: 926 })
  })

  // Ends bevelled at 15° are common practice; tan 15° = 0.26794919.
  it('bevelled at 15° through 28 lose 2 × 28 × tan 15° = 15.005 on the short face', () => {
    const { ledges } = leafOf(gateWith({ ledges: { end: { cut: 'bevelled', angle: 15 } } }))
    for (const ledge of ledges) expect(ledge.shortLength).toBeCloseTo(910.99485, 5)
  })

  it('splayed at 15° across 145 lose 2 × 145 × tan 15° = 77.705 on the upper edge', () => {
    const { ledges } = leafOf(gateWith({ boards: both, ledges: { end: { cut: 'splayed', angle: 15 } } }))
    for (const ledge of ledges) expect(ledge.shortLength).toBeCloseTo(848.29473, 5)
  })

  it('lose by the top ledge’s own section where it has one', () => {
    const topSection = { name: 'ex 32 × 100', species: 'oak', thickness: 33, width: 95 }
    const { ledges } = leafOf(gateWith({ ledges: { topSection, end: { cut: 'bevelled', angle: 15 } } }))
    expect(ledges[1]?.shortLength).toBeCloseTo(926 - 66 * 0.26794919, 5)
    // Its upper edge stays 125 from the top: 1780 − 125 − 47.5.
    expect(ledges[1]?.y).toBe(1607.5)
    expect(ledges[0]?.y).toBe(197.5)
  })

  it('stand 125 in from foot and top with the middle one midway, or where they are told', () => {
    expect(leafOf(gateWith({ ledges: { count: 3 } })).ledges.map((ledge) => ledge.y)).toEqual([
      197.5, 890, 1582.5,
    ])
    expect(leafOf(gateWith({ ledges: { heights: [211, 1502] } })).ledges.map((ledge) => ledge.y)).toEqual([
      211, 1502,
    ])
  })

  it('leave two bays alike where the top ledge is narrower than the others', () => {
    const topSection = { name: 'ex 32 × 100', species: 'oak', thickness: 28, width: 95 }
    const { braces } = leafOf(gateWith({ ledges: { count: 3, topSection } }))
    // 1780 − 2 × 125 − 2 × 145 − 95 = 1145, half each.
    expect(braces.map((brace) => brace.clearHeight)).toEqual([572.5, 572.5])
  })

  it('are two up to a leaf height of 1200 and three above, unless set (common practice)', () => {
    const auto = gateWith({ ledges: { count: 'auto' } })
    expect(ledgeCount(auto, 1200)).toBe(2)
    expect(ledgeCount(auto, 1200.5)).toBe(3)
    expect(ledgeCount(gateWith({ ledges: { count: 2 } }), 1900)).toBe(2)
  })
})
