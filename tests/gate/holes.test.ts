import { describe, expect, it } from 'vitest'
import { clearanceDrill, countersinkDrill, leadDrill } from '../../shared/gate/leadHole.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'

const holes = (parts: Parameters<typeof gateWith>[0]) => designOf(gateWith(parts)).holes

describe('holes for a 5 mm screw in European redwood', () => {
  it('are 5.5 through the ledge, 7/8 of the root in the board, and twice the shank for the head', () => {
    // Root 2/3 × 5 = 3.3333; 7/8 of it 2.9167, for which the set has 3.
    const [ledges, braces] = holes({})
    expect(ledges).toMatchObject({ through: 'ledges', fixing: 'screw 5 × 40', penetration: 14, quantity: 34 })
    expect(ledges?.clearance).toEqual({ exact: 5.5, drill: 5.5 })
    expect(ledges?.lead?.exact).toBeCloseTo(2.9166667, 6)
    expect(ledges?.lead?.drill).toBe(3)
    expect(ledges?.countersink).toEqual({ exact: 10, drill: 10 })
    expect(braces?.through).toBe('braces')
  })

  it('need no lead hole by the withdrawal rule, and 70 % of the shank by the shank’s share', () => {
    expect(holes({ workshop: { leadRule: 'withdrawal' } })[0]?.lead).toBeNull()
    expect(holes({ workshop: { leadRule: 'shank-share' } })[0]?.lead?.exact).toBeCloseTo(3.5, 9)
  })

  it('take the root as entered', () => {
    expect(holes({ fixings: { root: 3.2 } })[0]?.lead?.exact).toBeCloseTo(2.8, 9)
  })
})

describe('holes in heavier boards', () => {
  it('are the whole root in oak sideways, 90 % of it against pulling out', () => {
    const oak = { boardSection: { species: 'European oak' } }
    expect(holes(oak)[0]?.lead?.exact).toBeCloseTo(10 / 3, 9)
    expect(holes({ ...oak, workshop: { leadRule: 'withdrawal' } })[0]?.lead?.exact).toBeCloseTo(3, 9)
  })

  it('are 70 % of the root in larch against pulling out', () => {
    const [hole] = holes({
      boardSection: { species: 'European larch' },
      workshop: { leadRule: 'withdrawal' },
    })
    expect(hole?.lead?.exact).toBeCloseTo(2.3333333, 6)
    expect(hole?.lead?.drill).toBe(2.5)
  })
})

describe('holes through parts of their own thickness', () => {
  it('stand apart for a top ledge of its own section', () => {
    const topSection = { name: 'ex 25 × 100', species: 'oak', thickness: 21, width: 95 }
    const found = holes({ ledges: { topSection }, fixings: { lengths: [30, 35, 40] } })
    expect(found.map(({ through, fixingLength, quantity }) => [through, fixingLength, quantity])).toEqual([
      ['lower ledges', 40, 17],
      ['top ledge', 35, 17],
      ['braces', 40, found[2]?.quantity],
    ])
  })

  it('are none for nails, which go right through and are clenched', () => {
    const [hole] = holes({ fixings: { kind: 'nail', diameter: 3.4, lengths: [50, 60, 65, 75] } })
    expect(hole).toMatchObject({ fixing: 'nail 3.4 × 60', clearance: null, lead: null, countersink: null })
  })
})

describe('the drill to take', () => {
  const set = [2, 3, 4, 5, 6, 8, 10]
  it('is the smallest not under a clearance hole, else the largest that lets the shank through', () => {
    expect(clearanceDrill(5.2, 4.9, set)).toBe(6)
    expect(clearanceDrill(6, 5.5, set)).toBe(6)
    expect(clearanceDrill(10.5, 10, set)).toBe(10)
    expect(clearanceDrill(5.5, 5, [2, 3])).toBeNull()
    expect(clearanceDrill(5.5, 5, [3, 10])).toBeNull()
    expect(clearanceDrill(5.5, 5, [])).toBeNull()
  })
  it('is the nearest to a lead hole, the smaller of two alike, and never as wide as the shank', () => {
    expect(leadDrill(3.4, 5, set)).toBe(3)
    expect(leadDrill(3.5, 5, set)).toBe(3)
    expect(leadDrill(3.6, 5, set)).toBe(4)
    expect(leadDrill(2.9, 5, [10])).toBeNull()
  })
  it('is the nearest to a countersink and wider than the shank', () => {
    expect(countersinkDrill(9.65, 4.8, set)).toBe(10)
    expect(countersinkDrill(10, 5, [3, 4])).toBeNull()
  })
})

describe('a fixing sized in inches', () => {
  it('is said in hundredths at the most: a No. 10 by 1 ¾″', () => {
    // 1.75 × 25.4 in doubles is 44.449999999999996.
    const plain = gateWith({})
    const thick = { ...plain.ledges.section, thickness: 30 }
    const spec = gateWith({ ledges: { section: thick }, braces: { section: thick } })
    const inches = { ...spec, fixings: { kind: 'screw' as const, diameter: 4.826, lengths: [1.75 * 25.4] } }
    expect(designOf(inches).holes[0]?.fixing).toBe('screw 4.83 × 44.45')
  })
})
