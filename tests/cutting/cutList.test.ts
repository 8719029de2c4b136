import { describe, expect, it } from 'vitest'
import { toHalf } from '../../shared/cutting/cutList.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'

describe('a length in the cut list', () => {
  it.each([
    [1531.24, 1531],
    [1531.25, 1531.5],
    [1531.5, 1531.5],
    [1531.74, 1531.5],
    [1531.75, 1532],
    [930.275, 930.5],
    [0.1 + 0.2 - 0.05, 0.5],
  ])('%d is cut as %d, a quarter going up', (length, cut) => {
    expect(toHalf(length)).toBe(cut)
  })
})

describe('the cut list', () => {
  const made = designOf(gateWith({ size: { height: 1780.3 } }))

  it('has like pieces in one row: boards finished, ledges on the long edge, the brace long point to long point', () => {
    expect(made.cuts.map(({ part, quantity, length, blank }) => [part, quantity, length, blank])).toEqual([
      ['board', 9, 1780.5, 1804.5],
      ['ledge', 2, 926, 926],
      [
        'brace',
        1,
        toHalf(made.leaves[0]?.braces[0]?.length ?? 0),
        toHalf(made.leaves[0]?.braces[0]?.length ?? 0),
      ],
    ])
  })

  it('answers for its lengths with the length before it was rounded', () => {
    expect(made.figures['cut.1.length']?.value).toBe(1780.5)
    expect(made.figures['cut.1.length']?.inputs).toEqual({ 'worked length': 1780.3 })
  })

  it('has a row for each brace and ledge that differ', () => {
    const topSection = { name: 'ex 32 × 100', species: 'oak', thickness: 28, width: 95 }
    const cuts = designOf(gateWith({ ledges: { count: 3, topSection, heights: [200, 800, 1600] } })).cuts
    expect(cuts.map((row) => row.part)).toEqual([
      'board',
      'bottom ledge, middle ledge',
      'top ledge',
      'lower brace',
      'upper brace',
    ])
  })

  it('says how ends are cut', () => {
    const ends = (angle: number, cut: 'bevelled' | 'splayed') =>
      designOf(gateWith({ boards: { rip: 'both' }, ledges: { end: { cut, angle } } })).cuts[1]?.ends
    expect(ends(15, 'bevelled')).toBe('both ends bevelled 15° through the thickness, back face 911')
    expect(ends(10, 'splayed')).toBe('both ends splayed 10° across the width, upper edge 874.9')
    expect(designOf(gateWith({ ledges: { weather: 8 } })).cuts[1]?.ends).toContain('weathered 8°')
  })
})
