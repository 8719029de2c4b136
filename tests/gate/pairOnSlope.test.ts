import { describe, expect, it } from 'vitest'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { design } from '../../shared/gate/design.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'

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
