import fc from 'fast-check'
import polygonClipping, { type Ring } from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import type { Brace } from '../../shared/gate/leaf.ts'
import { bracePairs, pairLength, type PairableBraces } from '../../shared/ordering/bracePairs.ts'
import { toRadians } from '../../shared/units/angle.ts'
import { randomWholeGate } from '../fixtures/randomWholeGates.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'

type Spot = [number, number]

/** A brace's outline as it lies along a board: turned level, moved so that it begins at 0 and its lower edge is at 0. */
function laidLevel({ outline, angle }: Brace): Spot[] {
  const [cos, sin] = [Math.cos(-toRadians(angle)), Math.sin(-toRadians(angle))]
  const turned = outline.map(([x, y]): Spot => [x * cos - y * sin, x * sin + y * cos])
  const [left, low] = [0, 1].map((axis) => Math.min(...turned.map((spot) => spot[axis] as number))) as Spot
  return turned.map(([x, y]): Spot => [x - left, y - low])
}

const reachOf = (spots: Spot[]): number => Math.max(...spots.map(([x]) => x))
const moved = (spots: Spot[], by: number): Spot[] => spots.map(([x, y]) => [x + by, y])

/** How far a point is from the line through two others. */
const offLine = ([px, py]: Spot, [ax, ay]: Spot, [bx, by]: Spot): number =>
  Math.abs((bx - ax) * (py - ay) - (by - ay) * (px - ax)) / Math.hypot(bx - ax, by - ay)

const byHeight = (spots: Spot[]): Spot[] => [...spots].sort((a, b) => a[1] - b[1])

/** The two ends of a level parallelogram, lower corner first: its left slant and its right one. */
function slants(spots: Spot[]): { left: [Spot, Spot]; right: [Spot, Spot] } {
  const [a, b, c, d] = byHeight(spots) as [Spot, Spot, Spot, Spot]
  const [lowLeft, lowRight] = a[0] < b[0] ? [a, b] : [b, a]
  const [highLeft, highRight] = c[0] < d[0] ? [c, d] : [d, c]
  return { left: [lowLeft, highLeft], right: [lowRight, highRight] }
}

const wanted = sampleSize('Pairs of braces laid on their piece', { usual: 1500, long: 15_000 })

describe('two braces with one cut between them', () => {
  it('lie within the piece, a kerf apart, by their outlines alone', () => {
    const seen = { pairs: 0 }
    fc.assert(
      fc.property(
        randomWholeGate,
        fc.integer({ min: 20, max: 50 }).map((tenths) => tenths / 10),
        (spec, kerf) => {
          const outcome = design(spec)
          if (!outcome.made) return
          const braces = outcome.design.leaves.flatMap((leaf) => leaf.braces)
          const [first, second = first] = braces
          if (!first || !second || first.notch !== null) return
          if (Math.abs(first.sawSetting - second.sawSetting) > 1e-6) return
          const { width } = first.section
          const lengths: [number, number] = [first.length, second.length]
          const piece = pairLength({ lengths, width, sawSetting: first.sawSetting, kerf })
          const one = laidLevel(first)
          const other = laidLevel(second)
          const atEnd = moved(other, piece - reachOf(other))
          expect(reachOf(one)).toBeLessThanOrEqual(piece)
          const { right } = slants(one)
          const { left } = slants(atEnd)
          const gaps = left.map((spot) => offLine(spot, ...right))
          expect(left[0][0]).toBeGreaterThan(right[0][0])
          expect(Math.min(...gaps)).toBeGreaterThanOrEqual(kerf - 1e-6)
          expect(Math.max(...gaps)).toBeLessThan(kerf + 0.1 + 1e-6)
          const overlap = polygonClipping.intersection([one as Ring], [atEnd as Ring])
          expect(overlap).toEqual([])
          seen.pairs += 1
        },
      ),
      { seed, numRuns: wanted },
    )
    expect(seen.pairs).toBeGreaterThan(wanted / 20)
  })

  it('of 1531.5 mm, 120 wide, 26.99475° off square, take 3006.4 with a kerf of 4', () => {
    const alike = { width: 120, sawSetting: 26.99475, kerf: 4 }
    expect(pairLength({ ...alike, lengths: [1531.5, 1531.5] })).toBe(3006.4)
    expect(pairLength({ ...alike, lengths: [1531.5, 700] })).toBe(2174.9)
    expect(pairLength({ lengths: [1531.5, 700], width: 120, sawSetting: 0, kerf: 3 })).toBe(2234.5)
  })
})

const some = (given: Partial<PairableBraces>): PairableBraces => {
  const { number = '2026-001', part = 'brace', length = 1000 } = given
  return {
    ...{ key: 'braces', mark: `${number} ${part}`, jobId: Number(number.slice(-1)), number, part },
    ...{ length, quantity: 1, slanted: { width: 95, sawSetting: 30, longPoints: length } },
    ...given,
  }
}

const paired = (braces: PairableBraces[], longest = 5000) =>
  bracePairs(braces, { kerf: 4, longest: () => longest })

describe('braces two and two', () => {
  it('say what they are, how long the piece is and what it spares', () => {
    const [pair, ...others] = paired([some({ quantity: 2 })])
    expect(others).toEqual([])
    // 95 · tan 30° = 54.848, 4 / cos 30° = 4.619: 2000 − 54.848 + 4.619 = 1949.771
    expect(pair).toEqual({
      key: 'braces',
      mark: '2026-001 brace + brace',
      of: ['2026-001 brace', '2026-001 brace'],
      lengths: [1000, 1000],
      length: 1949.8,
      saved: 54.2,
    })
  })

  it('are of one section, width and saw setting', () => {
    expect(paired([some({}), some({ key: 'others' })])).toEqual([])
    expect(paired([some({}), some({ slanted: { width: 120, sawSetting: 30, longPoints: 1000 } })])).toEqual(
      [],
    )
    expect(paired([some({}), some({ slanted: { width: 95, sawSetting: 30.1, longPoints: 1000 } })])).toEqual(
      [],
    )
  })

  it('are as many as fit the longest length', () => {
    const lengths = [2600, 2500, 1400, 900, 800]
    const braces = lengths.map((length, place) => some({ part: `brace ${place}`, length }))
    expect(paired(braces, 3500).map(({ of }) => of)).toEqual([
      ['2026-001 brace 0', '2026-001 brace 4'],
      ['2026-001 brace 1', '2026-001 brace 3'],
    ])
    expect(paired(braces, 1000)).toEqual([])
    const exactly = paired([some({ quantity: 2 })], 1949.8)
    expect([exactly.length, paired([some({ quantity: 2 })], 1949.7).length]).toEqual([1, 0])
  })

  it('are of one job before they are of two, and of two before they are left over', () => {
    const two = (number: string, quantity: number) => some({ number, quantity })
    expect(paired([two('2026-001', 3), two('2026-002', 3)]).map(({ mark }) => mark)).toEqual([
      '2026-001 brace + brace',
      '2026-002 brace + brace',
      '2026-001 brace + 2026-002 brace',
    ])
  })

  it('spare nothing where the ends are square, and then are none', () => {
    expect(paired([some({ quantity: 2, slanted: { width: 95, sawSetting: 0, longPoints: 1000 } })])).toEqual(
      [],
    )
  })

  it('are never fewer than a search of every pairing finds', () => {
    const most = (lengths: number[], room: number): number => {
      const [first, ...rest] = lengths
      if (first === undefined) return 0
      const without = most(rest, room)
      return rest.reduce((best, other, at) => {
        if (first + other > room) return best
        return Math.max(best, 1 + most(rest.toSpliced(at, 1), room))
      }, without)
    }
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 6, max: 20 }), { minLength: 2, maxLength: 8 }),
        fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 8, maxLength: 8 }),
        (hundreds, jobs) => {
          const braces = hundreds.map((hundred, place) =>
            some({ number: `2026-00${jobs[place]}`, part: `brace ${place}`, length: hundred * 100 }),
          )
          // Two lengths less 50.229 must fit 2700: their sum is at most 2750.
          expect(paired(braces, 2700)).toHaveLength(
            most(
              hundreds.map((hundred) => hundred * 100),
              2750,
            ),
          )
        },
      ),
      { seed, numRuns: 500 },
    )
  })
})
