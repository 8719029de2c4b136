import { describe, expect, it } from 'vitest'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { designOf, gateWith, leafOf } from '../fixtures/gates.ts'
import { framed } from '../fixtures/caseGates.ts'

const degrees = Math.PI / 180

describe('the load on a brace', () => {
  it('is half the leaf, all that hangs at the closing edge and a person on the end', () => {
    const ironmongery: GateSpec['ironmongery'] = [
      { id: 'l', kind: 'latch', name: 'latch', quantity: 1, massKg: 1.3 },
    ]
    const leaf = leafOf(gateWith({}, { ironmongery, site: { personKg: 80 } }))
    const [load] = leaf.loads
    expect(load?.loadN).toBeCloseTo((leaf.massKg / 2 + 1.3 + 80) * 9.80665, 9)
  })

  it('is never less than moments about the hanging edge ask at the closing edge of a level leaf', () => {
    const ironmongery: GateSpec['ironmongery'] = [
      { id: 'l', kind: 'latch', name: 'latch', quantity: 1, massKg: 2.3 },
    ]
    for (const width of [830, 950, 1060]) {
      const leaf = leafOf(gateWith({ size: { width } }, { ironmongery }))
      const byMoments = (leaf.massKg * 9.80665 * leaf.centre.x) / leaf.width
      const [load] = leaf.loads
      // Half of the latch is counted twice: 1.15 kg, less what it lies in from the edge.
      expect(load?.loadN).toBeGreaterThanOrEqual(byMoments)
      expect((load?.loadN ?? 0) - byMoments).toBeLessThan(1.6 * 9.80665)
    }
  })

  it('runs along it as V / sin θ, with cos θ of that along the ledge', () => {
    const leaf = leafOf(gateWith({}))
    const [load, brace] = [leaf.loads[0], leaf.braces[0]]
    const thrust = (load?.loadN ?? 0) / Math.sin((brace?.angle ?? 0) * degrees)
    expect(load?.thrustN).toBeCloseTo(thrust, 9)
    expect(load?.alongLedgeN).toBeCloseTo(thrust * Math.cos((brace?.angle ?? 0) * degrees), 9)
  })

  it('is the whole of it for each of two braces', () => {
    const { loads } = leafOf(gateWith({ ledges: { count: 3 } }))
    expect(loads.map(({ name }) => name)).toEqual(['lower', 'upper'])
    expect(loads[0]?.loadN).toBe(loads[1]?.loadN)
  })

  it('presses a flush end over its whole contact, a notched one over its shoulder', () => {
    const flush = leafOf(gateWith({}))
    const notched = leafOf(gateWith({ braces: { ends: 'notched', notchDepth: 20 } }))
    const stress = (leaf: typeof flush, face: number) => (leaf.loads[0]?.thrustN ?? 0) / (face * 28)
    expect(flush.loads[0]?.toe?.stress).toBeCloseTo(stress(flush, flush.braces[0]?.contact ?? 0), 12)
    const shoulder = 20 / Math.cos((notched.braces[0]?.angle ?? 0) * degrees)
    expect(notched.loads[0]?.toe?.stress).toBeCloseTo(stress(notched, shoulder), 9)
    expect([flush, notched].map((leaf) => leaf.loads[0]?.heldBy.by)).toEqual(['fixings', 'notch'])
  })

  it('may press as the standard lets it in the weather: k_mod 0.5 for the leaf’s own weight, 0.7 with a person', () => {
    // EN 338 C16: 17 along and 2.2 across; Hankinson at the brace's own slope.
    const allowed = (spec: GateSpec) => {
      const leaf = leafOf(spec)
      const angle = (leaf.braces[0]?.angle ?? 0) * degrees
      return [
        leaf.loads[0]?.toe?.allowed ?? 0,
        (17 * 2.2) / (17 * Math.sin(angle) ** 2 + 2.2 * Math.cos(angle) ** 2) / 1.3,
      ] as const
    }
    const [own, base] = allowed(gateWith({}))
    expect(own).toBeCloseTo(0.5 * base, 9)
    expect(allowed(gateWith({}, { site: { personKg: 75 } }))[0]).toBeCloseTo(0.7 * base, 9)
  })

  it('stands on the rail’s gate too, held by every figure that is shown', () => {
    const made = designOf(framed())
    for (const name of ['load', 'thrust', 'alongLedge', 'toeStress', 'toeAllowed', 'hold'])
      for (const piece of ['lower', 'upper'].filter((one) => `brace.${one}.angle` in made.figures))
        expect(made.figures).toHaveProperty([`brace.${piece}.${name}`])
  })
})
