import { describe, expect, it } from 'vitest'
import { stagger } from '../../shared/gate/fixingPlaces.ts'
import { nailLength, screwLength } from '../../shared/gate/fixingLength.ts'
import { gateWith, leafOf } from '../fixtures/gates.ts'

const { fixings, boards } = leafOf(gateWith({}))
const on = (member: string, board: number) =>
  fixings.filter((fixing) => fixing.member === member && fixing.board === board).map(({ x, y }) => [x, y])

describe('fixings of a board on a ledge', () => {
  // Bottom ledge: centre 197.5, from 10 to 936, 145 wide; 5 mm screws, so two need room of 20.
  it('are two, 15 from the ledge’s end and 20 from the joint, a quarter of its width above and below the middle', () => {
    // Board 1 is 0 to 104, over the ledge 10 to 104.
    expect(on('bottom ledge', 0)).toEqual([
      [25, 233.75],
      [84, 161.25],
    ])
  })

  it('are two, 20 from both joints, on an inner board', () => {
    expect(on('bottom ledge', 1)).toEqual([
      [125, 233.75],
      [197, 161.25],
    ])
  })

  it('are one in the middle of the overlap where there is no room for two', () => {
    // Board 9 is 896 to 950, over the ledge 896 to 936; 40 − 20 − 15 = 5 is less than 20.
    expect(on('bottom ledge', 8)).toEqual([[916, 197.5]])
  })

  it('change over from one to two at a room of just four diameters', () => {
    // A closing inset of 1 leaves board 9 an overlap of 53 and a room of 18; one less than 20 needed, 4.5 × 4 = 18 fits.
    const count = (diameter: number) =>
      leafOf(gateWith({ ledges: { closingInset: 1 }, fixings: { diameter } })).fixings.filter(
        (fixing) => fixing.member === 'top ledge' && fixing.board === 8,
      ).length
    expect(count(4.5)).toBe(2)
    expect(count(4.6)).toBe(1)
  })

  it('keep three diameters from the ledge’s edges', () => {
    expect(stagger(145, 5)).toBe(36.25)
    expect(stagger(60, 8)).toBe(6)
    expect(stagger(40, 8)).toBe(0)
  })

  it('are counted by their places, 17 on each ledge', () => {
    expect(boards).toHaveLength(9)
    expect(fixings.filter((fixing) => fixing.member === 'bottom ledge')).toHaveLength(17)
  })
})

describe('fixings of a board on a brace', () => {
  // A brace leaning 4 up for 3 along from (110, 270), contact 120, head at 1070; kept 15 in from its edges, that is 18.75
  // along the level, 20 in from the joints.
  const leaf = leafOf(
    gateWith({
      size: { height: 1340 },
      braces: {
        footSetback: 100,
        headSetback: 106,
        section: { name: 'b', species: 'redwood', thickness: 28, width: 96 },
      },
    }),
  )
  const onBrace = (board: number) =>
    leaf.fixings.filter(({ joins, board: own }) => joins === 'brace' && own === board)
  const near = (board: number, places: [number, number][]) => {
    const own = onBrace(board)
    expect(own).toHaveLength(places.length)
    places.forEach(([x, y], i) => {
      expect(own[i]?.x).toBeCloseTo(x, 9)
      expect(own[i]?.y).toBeCloseTo(y, 9)
    })
  }

  it('are the two ends of the room at the foot', () => {
    // Board 2, 125 to 197: a triangle (140, 285), (197, 285), (197, 361), 95 long along the brace.
    near(1, [
      [140, 285],
      [197, 361],
    ])
  })

  it('are the two ends of the room at the head', () => {
    // Board 7, 690 to 762: lowest (690, 270 + 478.75 / 0.75), highest (762, 1055).
    near(6, [
      [690, 908.3333333333],
      [762, 1055],
    ])
  })

  it('are none on boards that the brace doesn’t reach', () => {
    for (const board of [0, 7, 8]) expect(onBrace(board)).toEqual([])
  })
})

describe('the length of a fixing', () => {
  it('is the longest screw 3 behind the face with its head sunk 2: 28 + 20 − 5 = 43', () => {
    expect(screwLength([30, 40, 45, 50], 28, 20)).toEqual({ length: 40, penetration: 14 })
    expect(screwLength([50, 43, 30], 28, 20)).toEqual({ length: 43, penetration: 17 })
    expect(screwLength([43.1, 50], 28, 20)).toBeUndefined()
    expect(screwLength([20, 26], 28, 20)).toBeUndefined()
  })

  it('is the nail nearest to 28 + 20 and 8 to 15 to clench', () => {
    expect(nailLength([50, 60, 75], 28, 20)?.length).toBe(60)
    expect(nailLength([50, 56, 75], 28, 20)?.length).toBe(56)
    expect(nailLength([50, 75, 100], 28, 20)?.length).toBe(75)
    expect(nailLength([40, 55], 28, 20)).toBeUndefined()
  })
})
