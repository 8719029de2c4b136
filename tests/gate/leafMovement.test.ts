import { describe, expect, it } from 'vitest'
import { crossGrain, timberNamed } from '../../shared/timber/species.ts'
import { equilibriumMoisture } from '../../shared/timber/moisture.ts'
import { widthChange } from '../../shared/timber/movement.ts'
import {
  climateOf,
  standardClimate,
  standardMonths,
  standardShop,
} from '../../shared/timber/standardClimate.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'
import { framed } from '../fixtures/caseGates.ts'

const climate = {
  shop: { tempC: 18, rhPercent: 60 },
  wettest: { tempC: 5, rhPercent: 88 },
  driest: { tempC: 25, rhPercent: 35 },
}
const redwood = timberNamed('European redwood')
const grain = redwood && crossGrain(redwood)
const change = (to: { tempC: number; rhPercent: number }) => ({
  from: equilibriumMoisture(climate.shop),
  to: equilibriumMoisture(to),
})
const gains = (width: number, to = climate.wettest) => (grain ? widthChange(width, grain, change(to)) : NaN)

describe('the movement of a leaf', () => {
  it('isn’t worked out without a climate', () => {
    expect(designOf(gateWith({})).movement).toBeNull()
  })

  it('moves its edges by half of each edge board while the joints stay open', () => {
    const made = designOf(gateWith({ boards: { gap: 3, rip: 'both' } }, { climate }))
    const [first, last] = [made.leaves[0]?.boards[0], made.leaves[0]?.boards.at(-1)]
    const wider = (gains(first?.width ?? 0) + gains(last?.width ?? 0)) / 2
    expect(wider).toBeGreaterThan(1)
    expect(made.movement?.wettest.leafWidth).toBeCloseTo(950 + wider, 9)
    expect(made.movement?.wettest.jointGap).toBeCloseTo(3 - gains(112), 12)
    expect(made.movement?.driest.jointGap).toBeCloseTo(3 - gains(112, climate.driest), 12)
    expect(made.movement?.driest.tongueReach).toBeCloseTo(7 - 3 + gains(112, climate.driest), 12)
  })

  it('pushes the edges further once joints are shut: boards laid tight widen the leaf by all they gain', () => {
    const made = designOf(gateWith({ boards: { gap: 0, rip: 'both' } }, { climate }))
    const all = made.movement?.wettest.boards.reduce((sum, one) => sum + one, 0) ?? 0
    expect(made.movement?.wettest.leafWidth).toBeCloseTo(950 + all, 9)
    expect(all).toBeCloseTo(gains(950), 9)
  })

  it('of a framed leaf is that of its two stiles', () => {
    const made = designOf(framed({}, { climate }))
    expect(made.movement?.wettest.leafWidth).toBeCloseTo(950 + 2 * gains(95), 9)
  })

  it('settles a gap left to the climate: what a board gains, up to the next half millimetre', () => {
    const made = designOf(gateWith({ boards: { gap: 'auto', rip: 'both' } }, { climate }))
    // 2.892 up to 3.
    expect(gains(112)).toBeCloseTo(2.892, 3)
    expect(made.movement?.gap).toBe(3)
    expect(made.figures['boards.gap']?.value).toBe(3)
    const [first, second] = made.leaves[0]?.boards ?? []
    expect((second?.x ?? 0) - (first?.x ?? 0) - (first?.width ?? 0)).toBeCloseTo(3, 9)
    expect(made.steps.some(({ text }) => text.includes('3 mm packers'))).toBe(true)
  })

  it('is told month by month when months are given', () => {
    const made = designOf(gateWith({ boards: { gap: 3, rip: 'both' } }, { climate: standardClimate }))
    expect(made.movement?.months).toHaveLength(12)
    const widths = made.movement?.months.map(({ leafWidth }) => leafWidth) ?? []
    expect(Math.max(...widths)).toBeCloseTo(made.movement?.wettest.leafWidth ?? 0, 12)
    expect(Math.min(...widths)).toBeCloseTo(made.movement?.driest.leafWidth ?? 0, 12)
    expect(made.figures).toHaveProperty(['movement.month.12.jointGap'])
  })
})

describe('the climate that a gate starts from', () => {
  it('takes its wettest and driest from its months, by what timber settles at', () => {
    const { wettest, driest } = climateOf(standardShop, standardMonths)
    const all = standardMonths.map(equilibriumMoisture)
    expect(equilibriumMoisture(wettest)).toBe(Math.max(...all))
    expect(equilibriumMoisture(driest)).toBe(Math.min(...all))
  })

  it('needs a month', () => {
    expect(() => climateOf(standardShop, [])).toThrow(RangeError)
  })
})
