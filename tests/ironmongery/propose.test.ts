import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import { entryOf } from '../../shared/ironmongery/catalogue.ts'
import { proposeForGate, proposeIronmongery } from '../../shared/ironmongery/propose.ts'
import { designOf, gateWith, leafOf } from '../fixtures/gates.ts'
import { randomWholeGate } from '../fixtures/randomWholeGates.ts'
import { seed } from '../fixtures/sample.ts'
import { framed } from '../fixtures/caseGates.ts'
import { proposed, weighed, withProposal } from './hungGates.ts'

const pair = gateWith(
  { boards: { rip: 'both' } },
  {
    leaves: 2,
    size: {
      from: 'opening',
      widths: [1920, 1926, 1922],
      heights: [1830, 1832],
      hangingGap: 6,
      closingGap: 10,
      meetingGap: 8,
      groundGap: 50,
      headGap: 12,
    },
  },
)
const stable = gateWith({ size: { height: 2040 } }, { stable: { lowerHeight: 1100, gap: 6 } })

describe('the ironmongery proposed', () => {
  // 950 / 2 = 475: the tee of 450 is too short, that of 600 is the next.
  it('hangs the plain leaf of 950 on two tees of 600 on its ledges’ lines', () => {
    expect(proposed(gateWith({}))[0]).toMatchObject({
      id: 'tee-600-galvanised',
      quantity: 2,
      heights: [197.5, 1582.5],
      side: 'hanging',
      strapLength: 600,
      maxLeafMassKg: 55,
    })
  })

  // A leaf of 813 (32 in) takes 18 in by the ironmonger's guide (weak): 450 mm.
  it('takes a strap of 450 for a leaf of 813', () => {
    expect(proposed(gateWith({ size: { width: 813 }, boards: { rip: 'both' } }))[0]).toMatchObject({
      strapLength: 450,
    })
  })

  it('turns to hook-and-band sets where no tee is rated for the mass', () => {
    const leaf = leafOf(gateWith({}))
    const [hinge] = proposeIronmongery(gateWith({}), leaf, { massKg: 72, centreX: 475 })
    // 55 is the most that a tee carries; bands of 600 carry 95.
    expect(hinge).toMatchObject({ id: 'hook-and-band-600-galvanised', maxLeafMassKg: 95 })
  })

  it('puts a third hinge on the middle ledge of a heavy leaf, and none where there is no such line', () => {
    const three = gateWith({ ledges: { count: 3 } })
    const heavy = { massKg: 51, centreX: 475 }
    expect(proposeIronmongery(three, leafOf(three), heavy)[0]?.heights).toEqual([197.5, 890, 1582.5])
    expect(proposeIronmongery(three, leafOf(three), { massKg: 50, centreX: 475 })[0]?.quantity).toBe(2)
    expect(proposeIronmongery(gateWith({}), leafOf(gateWith({})), heavy)[0]?.quantity).toBe(2)
  })

  it('sets the lock on the middle ledge, or its top at 965 where a lock rail’s is', () => {
    const lockOf = (spec: ReturnType<typeof gateWith>) => proposed(spec).find(({ kind }) => kind === 'lock')
    expect(lockOf(gateWith({ ledges: { count: 3 } }))?.heights).toEqual([890])
    // Building Construction 5, 'Panelled doors': 3 ft 2 in, 965; half of the case of 75 below it.
    expect(lockOf(gateWith({}))?.heights).toEqual([927.5])
  })

  it('gives a pair latch and lock on one leaf, drop bolt and top bolt on the other, and hinges for both', () => {
    const pieces = proposed(pair)
    expect(pieces.map(({ kind, quantity }) => [kind, quantity])).toEqual([
      ['hinge', 4],
      ['latch', 1],
      ['lock', 1],
      ['handle', 1],
      ['bolt', 1],
      ['bolt', 1],
    ])
    expect(pieces.filter(({ kind }) => kind === 'bolt').map(({ id }) => entryOf(id, 'bolt')?.form)).toEqual([
      'drop',
      'top',
    ])
  })

  it('proposes no top bolt where there is no head over the gate', () => {
    const open = { ...pair, size: { ...pair.size, headGap: undefined } }
    expect(proposed(open).filter(({ kind }) => kind === 'bolt')).toHaveLength(1)
  })

  // Lower half 1100, gap 6: the upper half's own 197.5 is 1303.5 above the foot of the door.
  it('gives heights of a stable door from the foot of the whole door', () => {
    expect(proposed(stable)[0]?.heights).toEqual([197.5, 902.5, 1303.5, expect.closeTo(1842.5, 9)])
  })

  it('takes stainless for oak and for redcedar, galvanised for redwood', () => {
    const finishes = (species: string) =>
      new Set(proposed(gateWith({ boardSection: { species } })).map(({ id }) => id.split('-').at(-1)))
    expect(finishes('European oak')).toEqual(new Set(['stainless']))
    expect(finishes('western redcedar')).toEqual(new Set(['stainless']))
    expect(finishes('European redwood')).toEqual(new Set(['galvanised']))
  })

  it('of a framed gate hangs it on the bottom ledge and the top rail', () => {
    expect(proposed(framed())[0]?.heights).toEqual([117.5, 1720])
  })

  it.each([
    ['a plain leaf', gateWith({})],
    ['three ledges', gateWith({ ledges: { count: 3 } })],
    ['a low wicket', gateWith({ size: { height: 1000 } })],
    ['a pair', pair],
    ['a stable door', stable],
    ['a framed gate', framed()],
  ])(
    'taken into the spec of %s is accepted, stays where it is and finds nothing to say of itself',
    (_, spec) => {
      const full = withProposal(spec)
      const made = designOf(full)
      expect(made.checks.filter(({ id }) => /^(hinge|hinges|lock|latch|bolt|ironmongery)-/.test(id))).toEqual(
        [],
      )
      const again = proposeForGate(full, weighed(made.leaves))
      expect(again.map(({ id, heights }) => [id, heights])).toEqual(
        full.ironmongery.map(({ id, heights }) => [id, heights]),
      )
    },
  )

  it('of random gates can be read, has one piece a fitting, and straps over half the leaf wherever one suits', () => {
    let tried = 0
    fc.assert(
      fc.property(randomWholeGate, (spec) => {
        const bare = design({ ...spec, ironmongery: [] })
        if (!bare.made) return
        tried += 1
        const ironmongery = proposeForGate(spec, weighed(bare.design.leaves))
        const read = parseSpec({ ...spec, ironmongery })
        if (!read.ok) throw new Error(JSON.stringify(read.problems))
        const full = design(read.value)
        if (!full.made) throw new Error('ironmongery stopped the gate')
        const quantity = ironmongery.reduce((sum, piece) => sum + piece.quantity, 0)
        expect(full.design.fittings).toHaveLength(quantity)
        for (const { maxLeafMassKg = 0, strapLength = 0 } of ironmongery.filter(
          ({ kind }) => kind === 'hinge',
        )) {
          const leaf = bare.design.leaves[0]
          const short = strapLength <= (leaf?.width ?? 0) / 2
          const heavy = maxLeafMassKg < (leaf?.massKg ?? 0)
          const said = full.design.checks.map(({ id }) => id)
          if (short) expect(said).toContain('hinge-strap-short')
          if (heavy) expect(said).toContain('hinge-rating')
        }
      }),
      { seed, numRuns: 300 },
    )
    expect(tried).toBeGreaterThan(150)
  })
})
