import { describe, expect, it } from 'vitest'
import { soundAngle } from '../../shared/gate/braceChecks.ts'
import { leadHole } from '../../shared/gate/leadHole.ts'
import { gaugeDiameter } from '../../shared/gate/screwGauge.ts'
import { classDensity, ovenDryGravity } from '../../shared/timber/species.ts'
import { mmPerFoot, mmPerInch } from '../../shared/units/inch.ts'
import { checksOf, designOf, gateWith } from '../fixtures/gates.ts'

describe('screw gauges: ASME B18.6.1, D = 0.060 + 0.013 N in, as tabulated by screw makers', () => {
  it.each([
    [0, 0.06, 1.524],
    [4, 0.112, 2.845],
    [6, 0.138, 3.505],
    [8, 0.164, 4.166],
    [10, 0.19, 4.826],
    [12, 0.216, 5.486],
    [14, 0.242, 6.147],
    [20, 0.32, 8.128],
  ])('No. %i is %d in, %d mm', (gauge, inches, mm) => {
    expect(gaugeDiameter(gauge) / mmPerInch).toBeCloseTo(inches, 9)
    expect(gaugeDiameter(gauge)).toBeCloseTo(mm, 3)
  })

  it('are refused outside 0 to 24', () => {
    for (const gauge of [-1, 25, 9.5, Number.NaN]) expect(() => gaugeDiameter(gauge)).toThrow(RangeError)
  })
})

describe('lead holes for wood screws: NDS-2018 §12.1.5, as given in a building design handbook', () => {
  // Root of a No. 10 by the Wood Handbook’s two-thirds. Which side of 0.5 and 0.6 the limits fall is from memory, so gravities
  // just at the limits decide nothing here.
  const shank = gaugeDiameter(10)
  const root = (2 / 3) * shank
  it.each([
    ['withdrawal', 0.42, null],
    ['withdrawal', 0.55, 0.7],
    ['withdrawal', 0.68, 0.9],
    ['lateral', 0.42, 7 / 8],
    ['lateral', 0.55, 7 / 8],
    ['lateral', 0.68, 1],
  ] as const)('against %s in timber of specific gravity %d: %d of the root', (rule, gravity, shareOfRoot) => {
    const { diameter, source } = leadHole(rule, gravity, { root, shank })
    if (shareOfRoot === null) expect(diameter).toBeNull()
    else expect(diameter).toBeCloseTo(shareOfRoot * root, 9)
    expect(source).toContain('NDS')
  })

  it('match the worked No. 10 with its published root of 0.152 in: 90 % in oak is 3.47 mm, 7/8 is 3.38 mm', () => {
    // The root 0.152 in (Appendix L, table L3) is from memory; the shares are the check.
    const published = { root: 0.152 * mmPerInch, shank }
    expect(leadHole('withdrawal', 0.73, published).diameter).toBeCloseTo(3.47, 2)
    expect(leadHole('lateral', 0.5, published).diameter).toBeCloseTo(3.38, 2)
  })

  it('by the share of the shank is 70 %, and says that EN 1995-1-1 §10.4.5 was remembered, not read', () => {
    const made = leadHole('shank-share', 0.42, { root, shank })
    expect(made.diameter).toBeCloseTo(0.7 * 4.826, 9)
    expect(made.source).toContain('from memory')
  })
})

describe('mean densities of strength classes: EN 338:2016 table 1', () => {
  it.each([
    ['C16', 370],
    ['C18', 380],
    ['C24', 420],
    ['D24', 580],
    ['D30', 640],
    ['D40', 660],
  ])('%s is %i kg/m³', (grade, density) => {
    expect(classDensity[grade]).toBe(density)
  })
})

describe('specific gravity and density: NDS, ρ = 62.4·[G/(1 + 0.009·G·M)]·(1 + M/100) lb/ft³', () => {
  // 62.4 lb/ft³ is 999.552 kg/m³. Gravities from NDS-2018 table 12.3.3A.
  const density = (gravity: number) => ((62.4 * gravity) / (1 + 0.009 * gravity * 12)) * 1.12 * 16.018463374
  it('gives 449.8 kg/m³ (28.08 lb/ft³) for 0.42 at 12 %', () => {
    expect(density(0.42)).toBeCloseTo(449.8, 1)
    expect(ovenDryGravity(449.786)).toBeCloseTo(0.42, 5)
  })
  it.each([
    ['Western cedars', 0.36],
    ['Spruce-pine-fir', 0.42],
    ['Douglas fir-larch', 0.5],
    ['Southern pine', 0.55],
    ['White oak', 0.73],
  ])('is turned round for %s, %d', (_group, gravity) => {
    expect(ovenDryGravity(density(gravity))).toBeCloseTo(gravity, 9)
  })
})

describe('the root of a screw: Wood Handbook FPL-GTR-190 ch. 8, about two-thirds of the shank', () => {
  it('is taken where none is entered', () => {
    const { figures } = designOf(gateWith({ fixings: { diameter: 4.8 } }))
    expect(figures['hole.ledges.root']?.value).toBeCloseTo(3.2, 9)
    expect(figures['hole.ledges.root']?.source).toContain('FPL-GTR-190')
    const entered = designOf(gateWith({ fixings: { diameter: 4.8, root: 3.1 } })).figures['hole.ledges.root']
    expect([entered?.value, entered?.source]).toEqual([3.1, 'this workshop’s setting'])
  })
})

describe('the slope of a brace: L. Goring, Manual of Purpose-Made Woodworking Joinery, p. 85', () => {
  it('is at least 45° to the horizontal', () => {
    expect(soundAngle).toBe(45)
    // 45° needs a clear height of run − width × √2: 851 − 95 × √2 = 716.65.
    const flat = (clear: number) =>
      checksOf(gateWith({ size: { height: clear + 540 } })).some(({ id }) => id === 'brace-angle')
    expect([flat(716.6), flat(716.7)]).toEqual([true, false])
  })
})

describe('two staggered fixings a crossing: L. Goring, as above, p. 86', () => {
  it('are given wherever there is room', () => {
    const leaf = designOf(gateWith({})).leaves[0]
    const inner = leaf?.fixings.filter((fixing) => fixing.member === 'top ledge' && fixing.board === 4) ?? []
    expect(inner).toHaveLength(2)
    expect(inner[0]?.y).not.toBe(inner[1]?.y)
  })
})

describe('units: NIST SP 811 (2008) appendix B', () => {
  it('has an inch of 25.4 mm and a foot of 304.8 mm, both exact', () => {
    expect([mmPerInch, mmPerFoot]).toEqual([25.4, 304.8])
    expect(mmPerInch / 16).toBe(1.5875)
    expect((mmPerInch * 3) / 64).toBeCloseTo(1.190625, 12)
  })
})

describe('common practice, with no document behind it', () => {
  it('puts the outer ledges 125 mm from foot and top, near the 5 in of an old book on doormaking', () => {
    const [bottom, top] = designOf(gateWith({})).leaves[0]?.ledges ?? []
    expect((bottom?.y ?? 0) - 145 / 2).toBe(125)
    expect(1780 - (top?.y ?? 0) - 145 / 2).toBe(125)
  })

  it('clenches 8 to 15 mm of a nail: 50 mm for 20 + 20 is the 2 in nail of a 1 in door', () => {
    const spec = gateWith({
      ledges: { section: { name: 'l', species: 'oak', thickness: 20, width: 145 } },
      braces: { section: { name: 'b', species: 'oak', thickness: 20, width: 95 } },
      fixings: { kind: 'nail', diameter: 3, lengths: [40, 50, 65] },
    })
    expect(designOf(spec).holes[0]?.fixingLength).toBe(50)
  })
})
