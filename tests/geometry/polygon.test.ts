import { describe, expect, it } from 'vitest'
import type { Point } from '../../shared/geometry/point.ts'
import { clipToStrip, extremesAlong, inset, middleOf, signedArea } from '../../shared/geometry/polygon.ts'

const oblong: Point[] = [
  [10, 20],
  [70, 20],
  [70, 60],
  [10, 60],
]
/** Leans 4 up for 3 along: 120 level, 800 high, so 96 across and 1000 along. */
const leaning: Point[] = [
  [0, 0],
  [120, 0],
  [720, 800],
  [600, 800],
]

describe('signedArea', () => {
  it('is positive anticlockwise, negative clockwise', () => {
    expect(signedArea(oblong)).toBe(2400)
    expect(signedArea([...oblong].reverse())).toBe(-2400)
    expect(signedArea(leaning)).toBe(96000)
  })
})

describe('inset', () => {
  it('draws every edge in by as much', () => {
    const left = inset(oblong, 5)
    expect(signedArea(left)).toBeCloseTo(50 * 30, 9)
    // 96 across less 30 is 66; 800 high less 30 is 770 high, so 962.5 along.
    expect(signedArea(inset(leaning, 15))).toBeCloseTo(66 * 962.5, 6)
  })

  it('leaves nothing when it is drawn in past its middle', () => {
    expect(inset(oblong, 20.1)).toEqual([])
    expect(inset(leaning, 48.1)).toEqual([])
  })
})

describe('clipToStrip', () => {
  it('keeps what lies between two uprights', () => {
    expect(signedArea(clipToStrip(oblong, 30, 45))).toBeCloseTo(600, 9)
    expect(signedArea(clipToStrip(oblong, 60, 200))).toBeCloseTo(400, 9)
  })

  it('keeps nothing outside, or between uprights the wrong way round', () => {
    expect(clipToStrip(oblong, 71, 90)).toEqual([])
    expect(clipToStrip(oblong, 45, 30)).toEqual([])
  })
})

describe('extremesAlong', () => {
  it('finds both ends along a slope and how far apart they are', () => {
    const { first, last, reach } = extremesAlong(leaning, [0.6, 0.8])
    expect([first, last]).toEqual([
      [0, 0],
      [720, 800],
    ])
    expect(reach).toBeCloseTo(1072, 9)
  })
})

describe('middleOf', () => {
  it('is the mean of the corners', () => {
    expect(middleOf(leaning)).toEqual([360, 400])
  })
})
