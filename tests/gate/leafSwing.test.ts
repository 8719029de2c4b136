import { describe, expect, it } from 'vitest'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'

const pair = (top: Partial<GateSpec> = {}): GateSpec =>
  gateWith(
    { boards: { rip: 'both' } },
    { leaves: 2, size: { from: 'leaf', width: 950, height: 1780, meetingGap: 8 }, ...top },
  )

describe('the swing of a leaf', () => {
  it('needs √((W − p)² + (D + a)²) − (W − p) at the closing edge, less once its edge is bevelled', () => {
    const { swing } = designOf(gateWith({}, { site: { pinInset: -12, pinProud: 15 } }))
    expect(swing).toHaveLength(1)
    expect(swing[0]?.closingGap).toBeCloseTo(Math.hypot(962, 63) - 962, 9)
    const takesOff = 962 - Math.sqrt(962 ** 2 + 15 ** 2 - 63 ** 2)
    expect(swing[0]?.bevel?.angle).toBeCloseTo((Math.atan2(takesOff, 48) * 180) / Math.PI, 9)
    expect(swing[0]?.bevel?.closingGap).toBeCloseTo(Math.hypot(962, 15) - 962, 9)
    expect(swing[0]?.ground).toBeNull()
  })

  it('opening to the face is by boards at the edge or ledges at their ends, whichever is worse', () => {
    const { swing } = designOf(gateWith({}, { opens: 'to-face' }))
    const [atEdge, atLedge] = [Math.hypot(950, 20) - 950, Math.hypot(936, 48) - 950]
    expect(swing[0]?.closingGap).toBeCloseTo(Math.max(atEdge, atLedge), 9)
  })

  it('over rising ground is worst where the slopes together are steepest', () => {
    const { swing } = designOf(gateWith({}, { site: { slopeAlong: 0.03, slopeAcross: 0.04 } }))
    // 950 × 0.05 + 10, at atan(4 / 3).
    expect(swing[0]?.ground?.clearance).toBeCloseTo(57.5, 9)
    expect(swing[0]?.ground?.angle).toBeCloseTo(53.13, 2)
  })

  it('is reckoned from the foot’s own slope where that follows the ground', () => {
    const site = { slopeAlong: 0.03, slopeAcross: 0.04 }
    const { swing } = designOf(gateWith({}, { site, foot: 'follows-ground' }))
    expect(swing[0]?.ground?.clearance).toBeCloseTo(950 * 0.05 - 950 * 0.03 + 10, 9)
  })

  it('of the second leaf of a pair meets the slope along the other way round', () => {
    const { swing } = designOf(pair({ site: { slopeAlong: 0.03 } }))
    expect(swing.map(({ leaf }) => leaf)).toEqual(['first leaf', 'second leaf'])
    expect(swing.map(({ ground }) => ground?.clearance)).toEqual(
      [38.5, 10].map((mm) => expect.closeTo(mm, 9)),
    )
  })

  it('isn’t given for a pin past the closing edge', () => {
    expect(designOf(gateWith({ size: { width: 500 } }, { site: { pinInset: 500 } })).swing).toEqual([])
  })
})
