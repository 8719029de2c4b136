import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'
import { framed } from '../fixtures/caseGates.ts'

/** A pair of leaves 950 wide that meet 6 apart, board cover 112, tongue 7, groove 8. */
const pair = (meeting: GateSpec['meeting'], more: Partial<GateSpec> = {}): GateSpec => {
  const spec = gateWith({}, more)
  return {
    ...spec,
    leaves: 2,
    size: { from: 'leaf', width: 950, height: 1830, meetingGap: 6 },
    ...(meeting ? { meeting } : {}),
  }
}
const ripped = (rip: GateSpec['boards']['rip'], lap: number): Design =>
  designOf(pair({ edge: 'rebated', lap }, { boards: { ...gateWith({}).boards, rip } }))
const last = (made: Design, index: number) => made.leaves[index]?.boards.at(-1)

describe('a rebated meeting', () => {
  it('leaves the first leaf’s closing board wider by the lap, and no other board', () => {
    const made = ripped('both', 13)
    // 950 − 7 × 112 − 8 × 1 = 158, half of it 79 at each edge; with its lap 92, fence the same since its tongue is off.
    expect(last(made, 0)).toMatchObject({ width: 79, lap: 13, fence: 92, strip: { closing: 112 + 7 - 92 } })
    expect(last(made, 1)).toMatchObject({ width: 79, fence: 79, strip: { closing: 112 + 7 - 79 } })
    expect(last(made, 1)).not.toHaveProperty('lap')
    expect(made.leaves.map(({ width }) => width)).toEqual([950, 950])
    expect(made.leaves.flatMap(({ boards }) => boards.filter(({ lap }) => lap !== undefined))).toHaveLength(1)
    expect(made.figures['board.9.widthWithLap']).toMatchObject({ value: 92, inputs: { lap: 13 } })
    expect(made.figures['meeting.widthWithLap']?.value).toBe(963)
  })

  it('stands in the cut list and in the steps', () => {
    const made = ripped('both', 13)
    const lapped = made.cuts.filter(({ ends }) => ends.includes('lap'))
    expect(lapped.map(({ marks, quantity }) => [marks, quantity])).toEqual([[['first leaf board 9'], 1]])
    expect(lapped[0]?.ends).toContain('13 of its width is the lap at the meeting')
    const rip = made.steps.find(({ title }) => title.startsWith('Rip'))?.text
    expect(rip).toContain('79 mm (3 ⅛″) and 13 mm more for its lap; fence at 92 mm')
    expect(rip).toContain('its board 9 is 79 mm wide without a lap, fence at 79 mm')
    const meeting = made.steps.find(({ title }) => title === 'Work the meeting edge')?.text
    expect(meeting).toContain('the first leaf’s board 9 stands 13 mm past its width')
  })

  it('keeps the first leaf’s lap on the side that the gate opens to', () => {
    const said = (opens: 'to-back' | 'to-face') =>
      designOf(pair({ edge: 'rebated', lap: 13 }, { opens })).steps.find(({ title }) =>
        title.includes('meeting edge'),
      )?.text
    expect(said('to-back')).toContain('where its face half is cut away; the second')
    expect(said('to-back')).toContain('keeps its lap on the back')
    expect(said('to-face')).toContain('where its back half is cut away; the second')
    expect(said('to-face')).toContain('keeps its lap on the face')
  })

  it('says where no board is wide enough for face and lap together', () => {
    const made = ripped('hanging', 13)
    // The closing board is a full one without its tongue: 112, and 125 with its lap.
    expect(last(made, 0)).not.toHaveProperty('lap')
    const found = made.checks.find(({ id }) => id === 'lap-over-board')
    expect(found).toMatchObject({ level: 'caution', field: 'meeting.lap' })
    expect(found?.message).toContain('125 mm wide with its lap; the section gives 112 mm')
    expect(ripped('both', 33).checks.map(({ id }) => id)).not.toContain('lap-over-board')
    expect(ripped('both', 34).checks.map(({ id }) => id)).toContain('lap-over-board')
  })

  it('weighs half the boards’ thickness more on the first leaf and as much less on the second', () => {
    const square = designOf(pair(undefined))
    const rebated = designOf(pair({ edge: 'rebated', lap: 13 }))
    const density = square.figures['weight.boards.density']?.value ?? 0
    const half = (13 * 1830 * (square.cuts[0]?.thickness ?? 0) * density) / 2 / 1e9
    const [first, second] = square.leaves.map(({ massKg }) => massKg)
    expect(rebated.leaves[0]?.massKg).toBeCloseTo((first ?? 0) + half, 9)
    expect(rebated.leaves[1]?.massKg).toBeCloseTo((second ?? 0) - half, 9)
  })

  it('of a framed pair leaves the first leaf’s closing stile wider, alone in the cut list', () => {
    const one = framed()
    const made = designOf({
      ...one,
      leaves: 2,
      size: { from: 'leaf', width: 1000, height: 1950, meetingGap: 6 },
      meeting: { edge: 'rebated', lap: 17 },
    })
    const stile = one.frame?.stile.width ?? 0
    const closing = made.leaves.map(({ frame }) => frame.find(({ name }) => name === 'closing stile'))
    expect(closing.map((part) => part?.blankWidth)).toEqual([stile + 17, stile])
    const rows = made.cuts.filter(({ part, width }) => part.includes('stile') && width === stile + 17)
    expect(rows.map(({ marks }) => marks)).toEqual([['first leaf closing stile']])
    expect(made.figures['frame.closing-stile.blankWidth']?.value).toBe(stile + 17)
    expect(made.checks.find(({ id }) => id === 'lap-over-stile')?.level).toBe('note')
  })

  it('laps 20 where nothing is said, common practice', () => {
    const outcome = design(pair({ edge: 'rebated' }))
    const lap = outcome.made ? outcome.design.figures['meeting.lap'] : undefined
    expect(lap).toMatchObject({ value: 20, source: 'common practice' })
  })
})
