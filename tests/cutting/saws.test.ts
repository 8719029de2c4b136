import { describe, expect, it } from 'vitest'
import { guideLine } from '../../shared/cutting/sawSettings.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'

const { sawSettings } = designOf(
  gateWith({ boards: { endTrim: 10 }, ledges: { end: { cut: 'bevelled', angle: 15 } } }),
)
const setting = (saw: string, cut: string) =>
  sawSettings.find((row) => row.saw === saw && row.cut.startsWith(cut))

describe('the guide line', () => {
  // Common practice with a guided saw: cut position + distance from base edge to tooth.
  it('of a 10 mm trim with 40 mm from base edge to tooth is marked 50 mm from the end', () => {
    expect(guideLine(10, 40)).toBe(50)
    expect(setting('hand-held saw', 'square each board end')?.guideLines).toEqual([
      { side: 'left', at: 50 },
      { side: 'right', at: 115 },
    ])
  })

  it('is for guided saws only', () => {
    expect(setting('table saw', 'square each board end')?.guideLines).toEqual([])
  })
})

describe('a saw', () => {
  it('is set one tooth deeper than the part is thick', () => {
    expect(setting('table saw', 'square each board end')?.depth).toBe(26)
    expect(setting('hand-held saw', 'square each board end')?.depth).toBe(25)
    expect(setting('table saw', 'both brace ends')?.depth).toBe(34)
  })

  it('reaches along the bevel of a ledge end: 28 / cos 15° + 6', () => {
    const row = setting('table saw', 'ledge ends')
    expect(row?.angle).toBe(15)
    expect(row?.lean).toBe('bevel')
    expect(row?.depth).toBeCloseTo(34.98773, 5)
  })

  it('has the fence of a board it rips, and of no other', () => {
    expect(setting('table saw', 'rip, closing edge')).toMatchObject({ part: 'board 9', fence: 54, cutAt: 65 })
    expect(setting('table saw', 'take off the groove')).toMatchObject({
      part: 'board 1',
      fence: 111,
      cutAt: 8,
    })
    expect(setting('table saw', 'both brace ends')?.fence).toBeNull()
  })

  it('is set off square by the brace’s angle from the upright', () => {
    const made = designOf(gateWith({}))
    const brace = made.leaves[0]?.braces[0]
    const row = made.sawSettings.find(({ cut }) => cut === 'both brace ends')
    expect(row?.angle).toBe(90 - (brace?.angle ?? 0))
  })
})
