import { describe, expect, it } from 'vitest'
import { boardWidths, grooveDepth } from '../../shared/gate/boarding.ts'
import { gateWith, leafOf } from '../fixtures/gates.ts'

// Worked by hand on a leaf 950 wide: cover 112, groove 8, tongue 7, gap 1; so an edge board that loses its groove shows
// 104 at most. Each row: edge ripped, way of the tongues, widths, fences.
const full = (count: number): number[] => Array.from({ length: count }, () => 112)
const uncut = (count: number): null[] => Array.from({ length: count }, () => null)

const worked = [
  // 950 − 104 − 7 × 112 − 8 × 1 = 54, which fits in 112; one board fewer would leave 167.
  ['closing', 'to-closing', [104, ...full(7), 54], [111, ...uncut(7), 54]],
  // 950 − 8 × 113 = 46, which fits in 104; one fewer would leave 159.
  ['hanging', 'to-closing', [46, ...full(8)], [53, ...uncut(7), 112]],
  // (950 − 7 × 112 − 8 × 1) / 2 = 79, which fits in 104; one fewer would leave 135.5.
  ['both', 'to-closing', [79, ...full(7), 79], [86, ...uncut(7), 79]],
  ['closing', 'to-hanging', [...full(8), 46], [112, ...uncut(7), 53]],
  ['hanging', 'to-hanging', [54, ...full(7), 104], [54, ...uncut(7), 111]],
  ['both', 'to-hanging', [79, ...full(7), 79], [79, ...uncut(7), 86]],
] as const

describe('boards of a leaf 950 wide', () => {
  it.each(worked)('ripped at %s with tongues %s have the widths and fences worked by hand', (...row) => {
    const [rip, tongues, widths, fences] = row
    const { boards } = leafOf(gateWith({ boards: { rip, tongues } }))
    expect(boards.map((board) => board.width)).toEqual(widths)
    expect(boards.map((board) => board.fence)).toEqual(fences)
  })

  it('start one gap after the board before and are cut 12 longer at each end', () => {
    const { boards } = leafOf(gateWith({}))
    expect(boards.map((board) => board.x)).toEqual([0, 105, 218, 331, 444, 557, 670, 783, 896])
    expect(new Set(boards.map((board) => board.length))).toEqual(new Set([1780]))
    expect(new Set(boards.map((board) => board.blank))).toEqual(new Set([1804]))
  })

  it('say what each edge loses and how wide a strip comes off', () => {
    const { boards } = leafOf(gateWith({}))
    expect(boards[0]?.loses).toEqual({ hanging: 'groove', closing: 'nothing' })
    expect(boards[0]?.strip).toEqual({ hanging: 8, closing: 0 })
    expect(boards[4]?.loses).toEqual({ hanging: 'nothing', closing: 'nothing' })
    expect(boards[8]?.loses).toEqual({ hanging: 'nothing', closing: 'rip' })
    // A full board is 112 and its tongue of 7; 54 of face are kept.
    expect(boards[8]?.strip).toEqual({ hanging: 0, closing: 65 })
    expect(boards.map((board) => board.ripped).indexOf(true)).toBe(8)
  })
})

describe('boardWidths', () => {
  const boarding = { cover: 112, tongue: 7, groove: 8, gap: 0, tongues: 'to-closing' as const }

  it('takes a board that just fits as unripped', () => {
    // 1000 − 104 − 7 × 112 = 112
    expect(boardWidths(1000, boarding, 'closing')).toEqual([104, ...full(8)])
  })

  it('is one board up to cover less groove, whichever edge is ripped', () => {
    for (const rip of ['hanging', 'closing', 'both'] as const) {
      expect(boardWidths(104, boarding, rip)).toEqual([104])
      expect(boardWidths(71, boarding, rip)).toEqual([71])
      expect(boardWidths(105, boarding, rip)).toHaveLength(2)
    }
  })

  it('leaves square-edged boards their whole cover at both edges', () => {
    const plain = { cover: 100, tongue: 0, groove: 0, gap: 5, tongues: 'to-closing' as const }
    // 560 − 4 × 105 = 140 is too wide; 560 − 5 × 105 = 35.
    expect(boardWidths(560, plain, 'hanging')).toEqual([35, 100, 100, 100, 100, 100])
    expect(boardWidths(560, plain, 'both')).toEqual([67.5, 100, 100, 100, 100, 67.5])
  })
})

describe('a leaf of one board', () => {
  it('loses its groove and its tongue when it is as wide as it can be, and the rest at the tongue when narrower', () => {
    const lone = (width: number, tongues: 'to-closing' | 'to-hanging') =>
      leafOf(
        gateWith({
          size: { width, height: 1780 },
          boards: { tongues },
          ledges: { hangingInset: 0, closingInset: 0 },
          braces: {
            footSetback: 0,
            headSetback: 0,
            section: { name: 'b', species: 'oak', thickness: 28, width: 40 },
          },
        }),
      ).boards
    expect(lone(104, 'to-closing')[0]).toMatchObject({
      width: 104,
      fence: 104,
      ripped: false,
      loses: { hanging: 'groove', closing: 'tongue' },
      strip: { hanging: 8, closing: 7 },
    })
    expect(lone(90, 'to-hanging')[0]).toMatchObject({
      width: 90,
      fence: 90,
      ripped: true,
      loses: { hanging: 'rip', closing: 'groove' },
      strip: { hanging: 21, closing: 8 },
    })
  })
})

describe('grooveDepth', () => {
  it('is what the section says, else one more than its tongue, and nothing without a tongue', () => {
    expect(grooveDepth({ tongue: 7, groove: 9.5 })).toBe(9.5)
    expect(grooveDepth({ tongue: 7 })).toBe(8)
    expect(grooveDepth({})).toBe(0)
  })
})
