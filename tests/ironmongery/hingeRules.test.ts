import { describe, expect, it } from 'vitest'
import { reckonedFigure, reckonedMass, strapWanted } from '../../shared/ironmongery/hingeRules.ts'
import { hingeLines, lineAt, standardHingePlaces } from '../../shared/ironmongery/hingeLines.ts'
import { gateWith, leafOf } from '../fixtures/gates.ts'
import { framed } from '../fixtures/caseGates.ts'

describe('the rules of hinges', () => {
  // An ironmonger's guide (weak): a leaf of 26 to 32 in takes a hinge of 18 in.
  it('want a strap over half the leaf: 18 in does for 26 to 32 in, 12 in does not', () => {
    for (const inches of [26, 32]) {
      expect(18 * 25.4).toBeGreaterThan(strapWanted(inches * 25.4))
      expect(12 * 25.4).toBeLessThan(strapWanted(inches * 25.4))
    }
  })

  // 40 × (475 / 760) / 0.5 = 50.
  it('count a leaf heavier where its hinges are close: 40 kg, 475 out, 760 apart is 50 kg', () => {
    expect(reckonedMass({ massKg: 40, centreOut: 475, spacing: 760 })).toBeCloseTo(50, 9)
    expect(reckonedFigure({ massKg: 40, centreOut: 475, spacing: 760 })).toMatchObject({
      unit: 'kg',
      value: 50,
    })
  })

  it('count a leaf as it is where its hinges are farther apart than it is wide', () => {
    expect(reckonedMass({ massKg: 40, centreOut: 475, spacing: 1385 })).toBe(40)
    expect(() => reckonedMass({ massKg: 40, centreOut: 475, spacing: 0 })).toThrow(RangeError)
  })
})

describe('the lines hinges stand on', () => {
  it('are the ledges’ own', () => {
    const leaf = leafOf(gateWith({ ledges: { count: 3 } }))
    expect(hingeLines(leaf).map(({ name, y }) => [name, y])).toEqual([
      ['bottom ledge', 197.5],
      ['middle ledge', 890],
      ['top ledge', 1582.5],
    ])
  })

  // Rail 120 wide under a top at 1780: 1780 − 60 = 1720; bottom ledge 45 + 72.5.
  it('of a framed gate end with the top rail', () => {
    expect(hingeLines(leafOf(framed())).map(({ name, y }) => [name, y])).toEqual([
      ['bottom ledge', 117.5],
      ['top rail', 1720],
    ])
  })

  it('hold a height from edge to edge and none between', () => {
    const lines = hingeLines(leafOf(gateWith({})))
    expect(lineAt(lines, 270)?.name).toBe('bottom ledge')
    expect(lineAt(lines, 270.5)).toBeNull()
  })

  it('are left for even spacing where more hinges are wanted than there are lines', () => {
    const leaf = leafOf(gateWith({}))
    expect(standardHingePlaces(leaf, 3).map(({ y, line }) => [y, line?.name])).toEqual([
      [197.5, 'bottom ledge'],
      [890, undefined],
      [1582.5, 'top ledge'],
    ])
    expect(standardHingePlaces(leaf, 1).map(({ y }) => y)).toEqual([1582.5])
    expect(standardHingePlaces(leaf, 0)).toEqual([])
  })
})
