import { describe, expect, it } from 'vitest'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { densityFrom } from '../../shared/timber/density.ts'
import { equilibriumMoisture } from '../../shared/timber/moisture.ts'
import { designOf, gate, gateWith, leafOf, withoutBraces } from '../fixtures/gates.ts'

/** A plain leaf of one timber of a round density: 950 × 1780, nine boards with eight gaps of 1, two ledges of 926. */
const even = (top: Partial<GateSpec> = {}): GateSpec =>
  withoutBraces(
    gateWith(
      {
        boardSection: { species: 'even' },
        ledges: { section: { ...gate.ledges.section, species: 'even' } },
      },
      { timbers: { even: { density: 500, strengthClass: 'C16' } }, ...top },
    ),
  )

const boards = (942 * 1780 * 20 * 500) / 1e9
const ledges = (2 * 926 * 145 * 28 * 500) / 1e9

describe('the mass of a leaf', () => {
  it('is that of its boards without their gaps and of its ledges', () => {
    expect(leafOf(even()).massKg).toBeCloseTo(boards + ledges, 9)
  })

  it('of a bevelled ledge is by its mean length, of a splayed one by its trapezoid', () => {
    const withEnd = (cut: 'bevelled' | 'splayed') => {
      const spec = even()
      return leafOf({ ...spec, ledges: { ...spec.ledges, end: { cut, angle: 5 } } }).massKg - boards
    }
    const ledge = (across: number) => (2 * (926 - across * Math.tan(Math.PI / 36)) * 145 * 28 * 500) / 1e9
    expect(withEnd('bevelled')).toBeCloseTo(ledge(28), 9)
    expect(withEnd('splayed')).toBeCloseTo(ledge(145), 9)
  })

  it('is at the moisture midway between wettest and driest when a climate is given', () => {
    const climate = {
      shop: { tempC: 18, rhPercent: 55 },
      wettest: { tempC: 4, rhPercent: 90 },
      driest: { tempC: 19, rhPercent: 62 },
    }
    const moisture = (equilibriumMoisture(climate.wettest) + equilibriumMoisture(climate.driest)) / 2
    const share = densityFrom(500, moisture) / 500
    expect(share).toBeGreaterThan(1.01)
    expect(leafOf(even({ climate })).massKg).toBeCloseTo((boards + ledges) * share, 9)
  })

  it('has the ironmongery in it: hinges on their lines, a latch at the closing edge', () => {
    const ironmongery: GateSpec['ironmongery'] = [
      { id: 'h', kind: 'hinge', name: 'tee hinge', quantity: 2, massKg: 1.5, strapLength: 400 },
      { id: 'l', kind: 'latch', name: 'latch', quantity: 1, massKg: 0.7, heights: [1000] },
    ]
    const bare = leafOf(even())
    const made = designOf(even({ ironmongery }))
    const leaf = made.leaves[0]
    expect(leaf?.massKg).toBeCloseTo(boards + ledges + 3.7, 9)
    // Straps of 400 weigh 200 in; the middle of the latch stands within 50 of the closing edge.
    const latchX = ((leaf?.massKg ?? 0) * (leaf?.centre.x ?? 0) - bare.massKg * bare.centre.x - 3 * 200) / 0.7
    expect(latchX).toBeGreaterThan(900)
    expect(latchX).toBeLessThanOrEqual(950)
    const up = (bare.massKg * bare.centre.y + 1.5 * (197.5 + 1582.5) + 0.7 * 1000) / (bare.massKg + 3.7)
    expect(leaf?.centre.y).toBeCloseTo(up, 9)
    expect(made.figures['leaf.mass']?.inputs['ironmongery at the closing side']).toBeCloseTo(0.7, 12)
  })
})

describe('the hinges of a leaf', () => {
  it('stand on the bottom and top ledge lines when none is listed, and pull by statics', () => {
    const { hinges, massKg, centre } = leafOf(even())
    expect(hinges.map(({ y }) => y)).toEqual([197.5, 1582.5])
    const pull = (massKg * 9.80665 * centre.x) / 1385
    expect(hinges.map(({ pullN }) => pullN)).toEqual([-pull, pull])
    expect(hinges.map(({ shareN }) => shareN)).toEqual([1, 1].map(() => (massKg * 9.80665) / 2))
  })

  it('pull more for a pin beyond the edge', () => {
    const { hinges, massKg, centre } = leafOf(even({ site: { pinInset: -20 } }))
    expect(hinges[1]?.pullN).toBeCloseTo((massKg * 9.80665 * (centre.x + 20)) / 1385, 9)
  })

  it('stand where they are entered, a third between taking no pull', () => {
    const hinge = { id: 'h', kind: 'hinge' as const, name: 'hinge', quantity: 3, heights: [230, 900, 1510] }
    const { hinges } = leafOf(even({ ironmongery: [hinge] }))
    expect(hinges.map(({ y }) => y)).toEqual([230, 900, 1510])
    expect(hinges[1]?.pullN).toBe(0)
    expect(hinges[2]?.pullN).toBeCloseTo(-(hinges[0]?.pullN ?? 0), 12)
  })
})
