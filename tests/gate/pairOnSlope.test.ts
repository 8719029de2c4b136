import { describe, expect, it } from 'vitest'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { design } from '../../shared/gate/design.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { checksOf, designOf, gateWith } from '../fixtures/gates.ts'

const pair = (slopeAlong: number, top: GateSpec['top']): GateSpec => ({
  ...gateWith({ boards: { rip: 'both' } }),
  leaves: 2,
  size: { from: 'leaf', width: 950, height: 1780, meetingGap: 6 },
  top,
  foot: 'follows-ground',
  site: { slopeAlong },
})

/** Height of the top at the meeting on either side of the gap, from the face. */
function atMeeting(spec: GateSpec): number[] {
  const { face } = gateDrawings({ ...spec, hung: 'left' }, designOf(spec), 'mm')
  return face.marks.flatMap((mark) =>
    mark.kind === 'polygon' && mark.fill === 'none' && mark.pen === 'visible'
      ? mark.points.filter(([x, y]) => (x === 950 || x === 956) && y > 1000).map(([, y]) => y)
      : [],
  )
}

describe('a pair whose feet follow the ground', () => {
  it.each([0.03, -0.025])('has its tops in one level line over a slope of %f', (slope) => {
    const spec = pair(slope, { shape: 'level' })
    const heights = designOf(spec).leaves.map(({ height }) => height)
    expect(heights[0]).toBe(1780)
    expect(heights[1]).toBeCloseTo(1780 - slope * 1906, 9)
    expect(atMeeting(spec)).toHaveLength(2)
    for (const y of atMeeting(spec)) expect(y).toBeCloseTo(1780, 9)
  })

  it('has one curve across both, the feet in one line as well', () => {
    const spec = pair(0.03, { shape: 'bowed', rise: 140 })
    // Radius (1906² / 4 + 140²) / 280; 3 from the crown on either side.
    const radius = (1906 ** 2 / 4 + 140 ** 2) / 280
    const height = 1780 - radius + Math.sqrt(radius ** 2 - 9)
    for (const y of atMeeting(spec)) expect(y).toBeCloseTo(height, 9)
    const [first, second] = designOf(spec).leaves
    expect(first?.boards.at(-1)?.feet[1]).toBeCloseTo(0.03 * 950, 9)
    expect(second?.boards.at(-1)?.feet[1]).toBeCloseTo(-0.03 * 950, 9)
  })

  it('is stopped where the ground leaves the second leaf no height', () => {
    const outcome = design(pair(0.95, { shape: 'level' }))
    if (outcome.made) throw new Error('made')
    expect(outcome.stopped.checks.map(({ id }) => id)).toContain('part-no-size')
  })
})

/** The pair in an opening of 1924: 950 each, 6 at the hanging edges and 12 where they meet; 50 under it, 9 wanted over it. */
const inOpening = (slopeAlong: number, heights: [number, number], leaves: 1 | 2 = 2): GateSpec => ({
  ...pair(slopeAlong, { shape: 'level' }),
  leaves,
  size: {
    from: 'opening',
    widths: leaves === 2 ? [1924, 1924, 1924] : [970, 970, 970],
    heights,
    hangingGap: 6,
    closingGap: 14,
    ...(leaves === 2 ? { meetingGap: 12 } : {}),
    groundGap: 50,
    headGap: 9,
  },
})

const headChecks = (spec: GateSpec) => checksOf(spec).filter(({ id }) => id.startsWith('opening-head'))
const roomsOf = (spec: GateSpec) =>
  ['hanging', 'closing'].map((post) => designOf(spec).figures[`opening.headRoom.${post}`]?.value)

describe('a gate whose feet follow the ground, in an opening', () => {
  // Falls 0.02 × (2 × 950 + 12) = 38.24 to the other post, where a level head is so much further over the ground.
  it('has the room that is wanted at both posts where the heights differ as the ground falls', () => {
    const spec = inOpening(-0.02, [1839, 1877.24])
    expect(headChecks(spec)).toEqual([])
    const [hanging, closing] = roomsOf(spec)
    expect(hanging).toBe(9)
    expect(closing).toBeCloseTo(9, 9)
  })

  it('is cautioned where the second leaf grows past the height at its own post, with the height that fits', () => {
    // 1780 + 38.24 + 50 = 1868.24 in 1850: 18.24 too high, and 9 wanted over it: 1780 − 27.24 = 1752.76.
    const [check, ...more] = headChecks(inOpening(-0.02, [1839, 1850]))
    expect(more).toEqual([])
    expect(check).toMatchObject({ id: 'opening-head-room', level: 'caution', field: 'size.heights' })
    expect(check?.message).toBe(
      'At the closing post the gate comes out 18.2 mm higher than the height measured there.',
    )
    expect(check?.remedy).toContain('1752.8 mm high fits')
    // 4.76 left of the 9.
    expect(headChecks(inOpening(-0.02, [1839, 1873]))[0]?.message).toMatch(
      /4\.8 mm are left.*9 mm are wanted/,
    )
  })

  it('is told of a wide gap over it under a head, which the least height leaves on ground that rises', () => {
    const found = headChecks(inOpening(0.02, [1877.24, 1839]))
    expect(found.map(({ id, level }) => [id, level])).toEqual([
      ['opening-head-wide', 'note'],
      ['opening-head-wide', 'note'],
    ])
    expect(found[1]?.message).toContain('47.2 mm are left over the gate, 38.2 mm more than wanted')
  })

  it('is looked at the same way with one leaf, whose top is level while its foot falls', () => {
    // 0.02 × 950 = 19.
    expect(headChecks(inOpening(-0.02, [1839, 1858], 1))).toEqual([])
    expect(headChecks(inOpening(-0.02, [1839, 1857], 1))[0]?.id).toBe('opening-head-room')
    expect(designOf({ ...inOpening(-0.02, [1839, 1858], 1), foot: 'level' }).figures).not.toHaveProperty(
      'opening.headRoom.closing',
    )
  })
})
