import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checksOf, gateWith, withoutBraces } from '../fixtures/gates.ts'
import { wholeGateCases, type CheckCase } from '../fixtures/wholeGateCases.ts'

const rooms = new URL('../../shared/gate/', import.meta.url)

const topSection = (thickness: number, width: number) => ({ name: 'top', species: 'oak', thickness, width })
const braceOf = (width: number, thickness = 28) => ({ name: 'brace', species: 'oak', thickness, width })

const plainCases: CheckCase[] = [
  {
    // 936 − 104 − 7 × 112 − 8 × 1 = 40.
    id: 'ripped-board-narrow',
    level: 'stop',
    found: gateWith({ size: { width: 935.9 } }),
    justNot: gateWith({ size: { width: 936 }, ledges: { closingInset: 0 } }),
    says: 'Board 9, ripped at the closing edge, comes to 39.9 mm; 40 mm is the least that can be made.',
  },
  {
    // A third of a cover of 150 is 50: 797 − 142 − 4 × 150 − 5 × 1 = 50.
    id: 'ripped-board-narrow',
    level: 'caution',
    found: gateWith({ size: { width: 797 }, boardSection: { width: 150 }, ledges: { closingInset: 0 } }),
    justNot: gateWith({ size: { width: 798 }, boardSection: { width: 150 }, ledges: { closingInset: 0 } }),
    says: 'Board 6, ripped at the closing edge, comes to 50 mm',
  },
  {
    // 105 − 104 − 1 leaves the second board nothing.
    id: 'part-no-size',
    level: 'stop',
    found: withoutBraces(gateWith({ size: { width: 105 }, ledges: { hangingInset: 0, closingInset: 0 } })),
    justNot: withoutBraces(gateWith({ size: { width: 104 }, ledges: { hangingInset: 0, closingInset: 0 } })),
    says: 'would have to be 0 mm wide',
  },
  {
    id: 'part-no-size',
    level: 'stop',
    found: gateWith({ ledges: { hangingInset: 500, closingInset: 450 } }),
    justNot: gateWith({ ledges: { hangingInset: 499, closingInset: 450 } }),
    says: 'The bottom ledge comes to 0 mm long.',
  },
  {
    // 926 − 2 × 145 × tan 73° = −22.6
    id: 'part-no-size',
    level: 'stop',
    found: gateWith({ ledges: { end: { cut: 'splayed', angle: 73 } } }),
    justNot: gateWith({ ledges: { end: { cut: 'splayed', angle: 72 } } }),
    says: 'on its short edge',
  },
  {
    id: 'tongue-reach',
    level: 'caution',
    found: gateWith({ size: { width: 960 }, boards: { gap: 4.1 } }),
    justNot: gateWith({ size: { width: 960 }, boards: { gap: 4 } }),
    says: 'reaches only 2.9 mm into its groove',
  },
  {
    id: 'tongue-bottoms',
    level: 'caution',
    found: gateWith({ boardSection: { groove: 5.9 } }),
    justNot: gateWith({ boardSection: { groove: 6 } }),
    says: 'the joint can’t close',
  },
  {
    id: 'ledge-off-leaf',
    level: 'stop',
    found: gateWith({ ledges: { heights: [72.4, 1600] } }),
    justNot: gateWith({ ledges: { heights: [72.5, 1707.5] } }),
    says: 'off a leaf 1780 mm high',
  },
  {
    id: 'ledges-overlap',
    level: 'stop',
    found: withoutBraces(gateWith({ ledges: { heights: [600, 744.9] } })),
    justNot: withoutBraces(gateWith({ ledges: { heights: [600, 745] } })),
    says: 'overlap by 0.1 mm',
  },
  {
    id: 'few-ledges',
    level: 'caution',
    found: gateWith({ size: { height: 1200.1 } }),
    justNot: gateWith({ size: { height: 1200 } }),
    says: 'three is usual above 1200',
  },
  {
    id: 'ledge-thin',
    level: 'caution',
    found: gateWith({ ledges: { topSection: topSection(19.9, 95) }, fixings: { lengths: [25, 30, 34, 40] } }),
    justNot: gateWith({ ledges: { topSection: topSection(20, 95) }, fixings: { lengths: [25, 30, 34, 40] } }),
    says: 'thinner than its boards',
  },
  {
    id: 'ledge-narrow',
    level: 'caution',
    found: gateWith({ ledges: { topSection: topSection(28, 29.9) } }),
    justNot: gateWith({ ledges: { topSection: topSection(28, 30) } }),
    says: 'can’t stand three diameters from both its edges',
  },
  {
    id: 'leaf-wide',
    level: 'caution',
    found: gateWith({ size: { width: 1067.1 } }),
    justNot: gateWith({ size: { width: 1067 } }),
    says: '3 ft 6 in',
  },
  {
    // Run 926 − 400 − 400 = 126.
    id: 'brace-no-fit',
    level: 'stop',
    found: gateWith({ braces: { footSetback: 400, headSetback: 400, section: braceOf(126) } }),
    justNot: gateWith({ braces: { footSetback: 400, headSetback: 400, section: braceOf(125) } }),
    says: 'needs a run of more than its own width',
  },
  {
    // 45° needs H + b·√2 = R: run 851 and brace 95 give H = 716.65.
    id: 'brace-angle',
    level: 'caution',
    found: gateWith({ size: { height: 716 + 540 } }),
    justNot: gateWith({ size: { height: 717 + 540 } }),
    says: 'at least 45° is sound',
  },
  {
    id: 'board-off-ledge',
    level: 'stop',
    found: gateWith({ ledges: { closingInset: 54 } }),
    justNot: gateWith({ ledges: { closingInset: 53 } }),
    says: 'Board 9 lies off the bottom ledge.',
  },
  {
    // Board 9 is 54 wide: an inset of 29 leaves 25.
    id: 'overlap-small',
    level: 'stop',
    found: gateWith({ ledges: { closingInset: 29.1 } }),
    justNot: gateWith({ ledges: { closingInset: 29 } }),
    says: '25 mm is the least that can be fixed',
  },
  {
    id: 'board-not-on-brace',
    level: 'note',
    found: gateWith({}),
    justNot: gateWith({
      size: { width: 952 },
      boards: { rip: 'both', gap: 0 },
      boardSection: { width: 190 },
      braces: { footSetback: 0, headSetback: 0 },
      ledges: { closingInset: 0 },
    }),
    says: 'can’t be fixed to a brace',
  },
  {
    id: 'no-fixing-fits',
    level: 'stop',
    found: gateWith({ fixings: { lengths: [26, 43.1] } }),
    justNot: gateWith({ fixings: { lengths: [26, 43] } }),
    says: 'over 26 and up to 43 mm is wanted, 26, 43.1 are kept',
  },
  {
    id: 'no-fixing-fits',
    level: 'stop',
    found: gateWith({ fixings: { kind: 'nail', lengths: [55.9] } }),
    justNot: gateWith({ fixings: { kind: 'nail', lengths: [56] } }),
    says: '56 mm or more is wanted',
  },
  {
    id: 'nail-long',
    level: 'caution',
    found: gateWith({ fixings: { kind: 'nail', lengths: [63.1] } }),
    justNot: gateWith({ fixings: { kind: 'nail', lengths: [63] } }),
    says: 'leaves 15.1 mm to clench',
  },
  {
    // 35.9 + 2 − 28 = 9.9, under half of 20.
    id: 'penetration-small',
    level: 'caution',
    found: gateWith({ fixings: { lengths: [35.9] } }),
    justNot: gateWith({ fixings: { lengths: [36] } }),
    says: 'goes only 9.9 mm into a board 20 mm thick',
  },
  {
    // Six diameters of 2.8 are 16.8; 43 goes 17 in.
    id: 'penetration-structural',
    level: 'note',
    found: gateWith({ fixings: { diameter: 2.9, lengths: [43] } }),
    justNot: gateWith({ fixings: { diameter: 2.8, lengths: [43] } }),
    says: '17.4 mm (6 diameters)',
  },
  {
    id: 'drill-missing',
    level: 'caution',
    found: gateWith({ workshop: { drills: [3, 4.9, 10] } }),
    justNot: gateWith({ workshop: { drills: [3, 5, 10] } }),
    says: 'No drill of the set does for the ledges: clearance 5.5 mm.',
  },
]

const cases: CheckCase[] = [...plainCases, ...wholeGateCases]

describe('a check', () => {
  it.each(cases)('$id ($level) is found: $says', ({ id, level, found, says }) => {
    const check = checksOf(found).find(
      (one) => one.id === id && one.level === level && one.message.includes(says),
    )
    expect(
      check,
      checksOf(found)
        .map((one) => `${one.level} ${one.id}: ${one.message}`)
        .join('\n'),
    ).toBeDefined()
    expect(check?.remedy).not.toBe('')
    expect(check?.field).not.toBe('')
  })

  it.each(cases)('$id ($level) is not found where it only just isn’t so: $says', ({ id, level, justNot }) => {
    const ids = checksOf(justNot)
      .filter((one) => one.level === level)
      .map((one) => one.id)
    expect(ids).not.toContain(id)
  })

  it('of every kind that the rules can find is tried here', () => {
    const written = readdirSync(rooms)
      .filter((name) => name.endsWith('.ts'))
      .flatMap((name) => [...readFileSync(new URL(name, rooms), 'utf8').matchAll(/^\s*id: (.*),$/gm)])
      .flatMap(([, says = '']) => [...says.matchAll(/'([a-z-]+)'/g)].map(([, id]) => id))
    expect(new Set(written).size).toBeGreaterThan(15)
    expect([...new Set(cases.map(({ id }) => id))].sort()).toEqual([...new Set(written)].sort())
  })
})

describe('a ripped board that is too narrow', () => {
  it('comes with the widths that the other two choices give', () => {
    const check = checksOf(gateWith({ size: { width: 930 } })).find(({ id }) => id === 'ripped-board-narrow')
    // 930 − 8 × 113 = 26; (930 − 7 × 112 − 8) / 2 = 69.
    expect(check?.message).toContain('34 mm')
    expect(check?.remedy).toContain('ripping at the hanging edge gives 26 mm')
    expect(check?.remedy).toContain('ripping at both edges gives 69 mm each')
  })
})

describe('a list of heights that a stable door’s halves share', () => {
  it('comes with the heights that the half which it doesn’t suit would take', () => {
    const spec = gateWith({ ledges: { heights: [180, 800] } }, { stable: { lowerHeight: 1000, gap: 6 } })
    const [check, ...more] = checksOf(spec).filter(({ level }) => level === 'stop')
    expect(more).toEqual([])
    expect(check).toMatchObject({ id: 'ledge-off-leaf', field: 'ledges.heights' })
    // The upper half is 774 high and its ledges 145 wide.
    expect(check?.remedy).toBe(
      'The heights entered hold for both halves, each from its own foot; this half takes centres from 72.5 to 701.5 mm. Enter heights that suit both, or take the usual ones.',
    )
  })
})

describe('a brace flatter than 45°', () => {
  const remedy = (parts: Parameters<typeof gateWith>[0]) =>
    checksOf(gateWith(parts)).find(({ id }) => id === 'brace-angle')?.remedy

  it('names braces in line, fewer ledges and a pair of narrower leaves', () => {
    expect(remedy({ ledges: { count: 3 } })).toBe(
      'To steepen it, put the braces in line, use fewer ledges or make a pair of narrower leaves.',
    )
  })

  it('names only what would help where the braces are in line already', () => {
    expect(remedy({ size: { height: 1200 }, ledges: { count: 3 }, braces: { run: 'in-line' } })).toBe(
      'To steepen it, make a pair of narrower leaves.',
    )
  })
})
