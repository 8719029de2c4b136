import { describe, expect, it } from 'vitest'
import { embedding, heldTogetherFigure, lateralHold, yieldMoment } from '../../shared/gate/lateral.ts'

// EN 1995-1-1 eq. 8.6, 8.14 to 8.16, from memory: worked here by hand, so they bind the sums and not the standard.
describe('what a fixing holds across two timbers', () => {
  it('bears on the timber round it', () => {
    // 0.082 × (1 − 0.05) × 310 and 0.082 × 310 × 5^−0.3
    expect(embedding(5, 310, true)).toBeCloseTo(24.149, 3)
    expect(embedding(5, 310, false)).toBeCloseTo(15.685, 3)
  })

  it('bends at 0.3 × 600 × d^2.6', () => {
    expect(yieldMoment(4)).toBeCloseTo(180 * 4 ** 2.6, 9)
    expect(yieldMoment(4)).toBeCloseTo(6616.5, 0)
  })

  it('is by the timber alone when the fixing is thick beside it: the thinner part crushes', () => {
    // 24.149 × 4 × 5: far under what bending would take of a 5 mm fixing.
    const held = lateralHold({
      diameter: 5,
      predrilled: true,
      head: { depth: 4, densityLow: 310 },
      point: { depth: 400, densityLow: 310 },
    })
    expect(held).toBeLessThanOrEqual(24.149 * 4 * 5 + 1e-3)
    expect(held).toBeGreaterThan(0)
  })

  it('in deep timber is by bending alone: 1.15 × √(2 × M × f × d)', () => {
    const deep = { depth: 300, densityLow: 310 }
    const held = lateralHold({ diameter: 5, predrilled: true, head: deep, point: deep })
    expect(held).toBeCloseTo(1.15 * Math.sqrt(2 * 180 * 5 ** 2.6 * embedding(5, 310, true) * 5), 6)
  })

  it('is the same whichever of two alike timbers the head is in, and more in denser timber', () => {
    const of = (head: number, point: number, densityLow = 310) =>
      lateralHold({
        diameter: 4,
        predrilled: true,
        head: { depth: head, densityLow },
        point: { depth: point, densityLow },
      })
    expect(of(28, 14)).toBeCloseTo(of(14, 28), 9)
    expect(of(28, 14, 350)).toBeGreaterThan(of(28, 14))
  })

  it('adds up over fixings under a load that stays on', () => {
    const sheared = {
      diameter: 3.7,
      predrilled: true,
      head: { depth: 26, densityLow: 310 },
      point: { depth: 14, densityLow: 350 },
    }
    const figure = heldTogetherFigure(sheared, { count: 7, loadFactor: 0.5, materialFactor: 1.3 })
    expect(figure.value).toBeCloseTo((7 * 0.5 * lateralHold(sheared)) / 1.3, 9)
  })

  it('refuses a fixing without depth', () => {
    const none = { depth: 0, densityLow: 310 }
    expect(() => lateralHold({ diameter: 5, predrilled: true, head: none, point: none })).toThrow(RangeError)
  })
})
