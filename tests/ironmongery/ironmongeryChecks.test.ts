import { describe, expect, it } from 'vitest'
import type { GateSpec, Ironmongery } from '../../shared/gate/spec.ts'
import { checksOf, gateWith } from '../fixtures/gates.ts'
import { ownHinge } from './hungGates.ts'

const hung = (changed: Partial<Ironmongery>, top: Partial<GateSpec> = {}): GateSpec =>
  gateWith({}, { ironmongery: [{ ...ownHinge, ...changed }], ...top })

const piece = (id: string, kind: Ironmongery['kind'], changed: Partial<Ironmongery> = {}): Ironmongery => ({
  id,
  kind,
  name: id,
  quantity: 1,
  ...changed,
})

const withPieces = (...ironmongery: Ironmongery[]): GateSpec => gateWith({}, { ironmongery })

const pair = (...ironmongery: Ironmongery[]): GateSpec =>
  gateWith(
    { boards: { rip: 'both' } },
    { leaves: 2, size: { from: 'leaf', width: 950, height: 1780, meetingGap: 8 }, ironmongery },
  )

const latch = piece('thumb-latch-230-galvanised', 'latch')
const lock = piece('rim-deadlock-100-galvanised', 'lock')
const drop = piece('drop-bolt-450-galvanised', 'bolt')

type Case = { id: string; level: 'caution' | 'note'; found: GateSpec; justNot: GateSpec; says: string }

/** A gate 47 over the ground with a drop bolt of throw 90 so high: 90 − 47 = 43, less what it stands over the foot. */
const shooting = (overFoot: number): GateSpec =>
  gateWith(
    {},
    {
      size: {
        from: 'opening',
        widths: [967, 967, 967],
        heights: [1831, 1831],
        hangingGap: 5,
        closingGap: 12,
        groundGap: 47,
      },
      ironmongery: [piece('drop-bolt-300-galvanised', 'bolt', { heights: [150 + overFoot] })],
    },
  )

const cases: Case[] = [
  {
    id: 'bolt-short',
    level: 'caution',
    found: shooting(24),
    justNot: shooting(23),
    says: 'only 19 mm into the ground',
  },
  {
    id: 'bolt-short',
    level: 'caution',
    found: shooting(44),
    justNot: shooting(20),
    says: 'doesn’t reach the ground',
  },
  // Half of 950 is 475; a strap must be longer.
  {
    id: 'hinge-strap-short',
    level: 'caution',
    found: hung({ strapLength: 475 }),
    justNot: hung({ strapLength: 475.5 }),
    says: '475 mm',
  },
  {
    id: 'hinge-strap-long',
    level: 'caution',
    found: hung({ strapLength: 950.5 }),
    justNot: hung({ strapLength: 950 }),
    says: 'longer than the leaf is wide',
  },
  {
    id: 'hinge-rating',
    level: 'caution',
    found: hung({ maxLeafMassKg: 20 }),
    justNot: hung({ maxLeafMassKg: 40 }),
    says: '20 kg',
  },
  {
    id: 'hinge-no-rating',
    level: 'note',
    found: hung({ maxLeafMassKg: undefined }),
    justNot: hung({}),
    says: 'counts as',
  },
  // The bottom ledge runs from 125 to 270.
  {
    id: 'hinge-off-ledge',
    level: 'caution',
    found: hung({ heights: [271, 1582] }),
    justNot: hung({ heights: [269, 1582] }),
    says: '271 mm',
  },
  {
    id: 'hinge-single',
    level: 'caution',
    found: hung({ quantity: 1 }),
    justNot: hung({}),
    says: 'one hinge',
  },
  {
    id: 'hinges-close',
    level: 'caution',
    found: hung({ heights: [1190, 1582] }),
    justNot: hung({ heights: [1000, 1582] }),
    says: '392 mm apart',
  },
  { id: 'hinge-none', level: 'note', found: withPieces(latch), justNot: hung({}), says: 'No hinge' },
  {
    id: 'latch-none',
    level: 'note',
    found: hung({}),
    justNot: withPieces(latch),
    says: 'hold the gate shut',
  },
  // The brace's head lies under the top ledge at the closing edge.
  {
    id: 'ironmongery-on-brace',
    level: 'caution',
    found: withPieces({ ...lock, heights: [1440] }),
    justNot: withPieces({ ...lock, heights: [930] }),
    says: 'over the brace',
  },
  {
    id: 'ironmongery-off-leaf',
    level: 'caution',
    found: withPieces({ ...latch, heights: [1666] }),
    justNot: withPieces({ ...latch, heights: [1665] }),
    says: 'runs off',
  },
  {
    id: 'ironmongery-meets',
    level: 'caution',
    found: withPieces({ ...latch, heights: [1000] }, { ...lock, heights: [927] }),
    justNot: withPieces({ ...latch, heights: [1080] }, { ...lock, heights: [927] }),
    says: 'over one another',
  },
  {
    id: 'lock-reach',
    level: 'note',
    found: withPieces({ ...lock, heights: [1201] }),
    justNot: withPieces({ ...lock, heights: [1200] }),
    says: '1201 mm',
  },
  {
    id: 'latch-thickness',
    level: 'caution',
    found: gateWith(
      { boardSection: { thickness: 33 } },
      { fixings: { kind: 'screw', diameter: 5, lengths: [50] }, ironmongery: [latch] },
    ),
    justNot: gateWith(
      { boardSection: { thickness: 32 } },
      { fixings: { kind: 'screw', diameter: 5, lengths: [50] }, ironmongery: [latch] },
    ),
    says: '61 mm thick',
  },
  {
    id: 'bolt-missing',
    level: 'caution',
    found: pair(latch),
    justNot: pair(latch, drop),
    says: 'no drop bolt',
  },
  {
    id: 'ironmongery-metal',
    level: 'caution',
    found: withPieces(piece('thumb-latch-230-black-japanned', 'latch')),
    justNot: withPieces(latch),
    says: 'rusts',
  },
]

describe('what is found of ironmongery', () => {
  it.each(cases)('$id is found, and only just not', ({ id, level, found, justNot, says }) => {
    const check = checksOf(found).find((one) => one.id === id)
    expect(check).toMatchObject({ level })
    expect(`${check?.message}`).toContain(says)
    expect(check?.remedy).not.toBe('')
    expect(checksOf(justNot).map((one) => one.id)).not.toContain(id)
  })

  it('is a caution or a note, never a stop', () => {
    for (const { found } of cases)
      for (const check of checksOf(found).filter(({ field }) => field.startsWith('ironmongery')))
        expect(check.level).not.toBe('stop')
  })

  it('says what finish oak wants of a galvanised latch', () => {
    const oak = gateWith({ boardSection: { species: 'European oak' } }, { ironmongery: [latch] })
    expect(checksOf(oak).find(({ id }) => id === 'ironmongery-metal')?.remedy).toContain('stainless')
  })
})
