import { describe, expect, it } from 'vitest'
import type { Drawing, Mark } from '../../shared/drawing/drawing.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { mirror } from '../../shared/drawing/hand.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'
import { hardGates } from '../fixtures/hardGates.ts'

const drawn = (hung: 'left' | 'right', unit: 'mm' | 'in' = 'mm') => {
  const spec = gateWith(
    {
      size: { width: 934, height: 1786 },
      boards: { rip: 'both' },
      ledges: { count: 3, end: { cut: 'bevelled', angle: 15 } },
    },
    { hung },
  )
  const design = designOf(spec)
  return { spec, design, drawings: gateDrawings(spec, design, unit) }
}

const badge = (drawing: Drawing) => drawing.marks.find((mark) => mark.kind === 'badge')
const ofPart = (drawing: Drawing, part: string) => drawing.marks.filter((mark) => mark.part === part)
const words = (drawing: Drawing) =>
  layOut(drawing, { width: 300, height: 400, scale: 10 }).primitives.flatMap((primitive) =>
    primitive.kind === 'text' ? [primitive.text] : [],
  )

describe('the hand', () => {
  it('puts a left-hung gate’s hinges at the left of the face and at the right of the back', () => {
    const { drawings } = drawn('left')
    expect(badge(drawings.face)).toMatchObject({ at: [0, 1786], text: 'H' })
    expect(badge(drawings.back)).toMatchObject({ at: [934, 1786], text: 'H' })
    expect(drawings.back.description).toContain('hinges at the right as it lies on the bench')
    expect(drawings.face.description).toContain('hinges at the left')
  })

  it('puts a right-hung gate’s hinges at the right of the face and at the left of the back', () => {
    const { drawings } = drawn('right')
    expect(badge(drawings.face)).toMatchObject({ at: [934, 1786] })
    expect(badge(drawings.back)).toMatchObject({ at: [0, 1786] })
  })

  it('puts the brace’s foot on the hinge side and its head on the closing side, both hands', () => {
    for (const hung of ['left', 'right'] as const) {
      const { drawings } = drawn(hung)
      const hinge = badge(drawings.back)?.at[0] ?? Number.NaN
      const brace = ofPart(drawings.back, 'lower brace').find((mark) => mark.kind === 'polygon')
      if (brace?.kind !== 'polygon') throw new Error('no brace drawn')
      const sorted = [...brace.points].sort((a, b) => a[1] - b[1])
      const away = sorted.map(([x]) => Math.abs(x - hinge))
      expect(Math.max(away[0] ?? 0, away[1] ?? 0)).toBeLessThan(Math.min(away[2] ?? 0, away[3] ?? 0))
    }
  })

  it('turns the drawing over and touches nothing else: a left-hung gate is the mirror of a right-hung one', () => {
    const [left, right] = [drawn('left').drawings, drawn('right').drawings]
    for (const view of ['back', 'face', 'section'] as const) {
      const { description: _a, ...turned } = mirror(left[view], 934)
      const { description: _b, ...own } = right[view]
      expect(rounded(turned)).toEqual(rounded(own))
      expect(rounded(mirror(mirror(left[view], 934), 934))).toEqual(rounded(left[view]))
    }
  })

  it('never turns words round: both hands carry the same words', () => {
    const sorted = (hung: 'left' | 'right') => words(drawn(hung).drawings.back).sort()
    expect(sorted('left')).toEqual(sorted('right'))
    const turned = drawn('left').drawings.back.marks.flatMap((mark) =>
      mark.kind === 'text' && mark.angle ? [mark.angle] : [],
    )
    expect(turned.every((angle) => angle === 90)).toBe(true)
  })
})

/** Places to the millionth of a millimetre, noughts without a sign, chains of upright rows as they are. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_key, item: unknown) =>
      typeof item === 'number' ? Math.round(item * 1e6) / 1e6 + 0 : item,
    ),
  )

describe('the back elevation', () => {
  it('says in its title how it lies, and marks both sides in words', () => {
    const { back, face } = drawn('left').drawings
    expect(back.title).toBe('Back, as it lies on the bench')
    expect(face.title).toBe('Face')
    for (const view of [back, face])
      expect(words(view)).toEqual(expect.arrayContaining(['hanging side', 'closing side', 'H']))
  })

  it('is right to scale: ledges, braces and screws stand where the design puts them', () => {
    const { design, drawings } = drawn('right')
    const leaf = design.leaves[0]
    for (const ledge of leaf?.ledges ?? []) {
      const shape = ofPart(drawings.back, `${ledge.name} ledge`).find((mark) => mark.kind === 'polygon')
      const xs = shape?.kind === 'polygon' ? shape.points.map(([x]) => x) : []
      const ys = shape?.kind === 'polygon' ? shape.points.map(([, y]) => y) : []
      expect([Math.min(...xs), Math.max(...xs)]).toEqual([ledge.x, ledge.x + ledge.length])
      expect([Math.min(...ys), Math.max(...ys)]).toEqual([ledge.y - 72.5, ledge.y + 72.5])
    }
    for (const brace of leaf?.braces ?? [])
      expect(ofPart(drawings.back, `${brace.name} brace`)).toContainEqual(
        expect.objectContaining({ kind: 'polygon', points: brace.outline }),
      )
    const screws = drawings.back.marks.filter((mark) => mark.kind === 'symbol')
    expect(screws.map((mark) => (mark as Extract<Mark, { kind: 'symbol' }>).at)).toEqual(
      leaf?.fixings.map(({ x, y }) => [x, y]),
    )
  })

  it('draws the second line of a bevelled end where the bevel comes out on the back', () => {
    const { drawings } = drawn('right')
    const arrises = ofPart(drawings.back, 'bottom ledge').flatMap((mark) =>
      mark.kind === 'line' ? [mark.from[0]] : [],
    )
    const bevel = 28 * Math.tan((15 * Math.PI) / 180)
    expect(arrises).toEqual([10 + bevel, 934 - 14 - bevel])
  })

  it('gives the angle, the length between long points, every height and the overall sizes', () => {
    const { design, drawings } = drawn('left')
    const brace = design.leaves[0]?.braces[0]
    const written = words(drawings.back)
    expect(written).toContain(`${brace?.angle.toFixed(1)}°`)
    expect(
      written.some((text) => text.startsWith(`${Math.floor((brace?.length ?? 0) * 2 + 0.5) / 2} long point`)),
    ).toBe(true)
    for (const figure of ['934', '1786', '910', '125', '145', '10', '14']) expect(written).toContain(figure)
    expect(written).toContain('36 ¾″')
  })

  it('writes inches to a sixteenth when the job is in inches, with millimetres beside the overall sizes', () => {
    const written = words(drawn('left', 'in').drawings.back)
    expect(written).toEqual(expect.arrayContaining(['36 ¾″', '934 mm', '70 ⁵⁄₁₆″', '1786 mm']))
  })
})

describe('the face elevation', () => {
  it('numbers the boards from the hanging edge, gives each one’s face and says which are ripped', () => {
    const { design, drawings } = drawn('right')
    const boards = design.leaves[0]?.boards ?? []
    const numbered = drawings.face.marks.flatMap((mark) =>
      mark.kind === 'text' && /^\d+$/.test(mark.text) ? [mark] : [],
    )
    expect(numbered.map((mark) => mark.text)).toEqual(boards.map((_, i) => String(i + 1)))
    const fromHinge = numbered.map((mark) => 934 - mark.at[0])
    expect(fromHinge).toEqual([...fromHinge].sort((a, b) => a - b))
    expect(words(drawings.face).filter((text) => text === 'ripped')).toHaveLength(
      boards.filter((board) => board.ripped).length,
    )
  })
})

describe('the section', () => {
  it('shows the screw from the back with its head sunk 2 mm and its point short of the face', () => {
    const { design, drawings } = drawn('left')
    const depths = ofPart(drawings.section, 'fixings ledge').flatMap((mark) =>
      mark.kind === 'polygon' ? mark.points.map(([, z]) => z) : [],
    )
    const length = design.holes[0]?.fixingLength ?? 0
    expect(Math.max(...depths)).toBe(48)
    expect(Math.min(...depths)).toBe(48 - 2 - length)
    expect(Math.min(...depths)).toBeGreaterThanOrEqual(3)
  })

  it('hatches the boards at 45° one way and the other, wide enough for a photocopier', () => {
    const hatched = drawn('left').drawings.section.marks.flatMap((mark) =>
      mark.kind === 'polygon' && mark.hatch ? [mark.hatch] : [],
    )
    expect(hatched.map((hatch) => hatch.angle).slice(0, 2)).toEqual([45, 135])
    expect(hatched.every((hatch) => hatch.spacing >= 1.5)).toBe(true)
  })
})

describe('every view', () => {
  it.each(hardGates)(
    'of $name has a part name on each piece and no place that is not a number',
    ({ spec, unit }) => {
      const design = designOf(spec)
      const drawings = gateDrawings(spec, design, unit)
      const leaf = design.leaves[0]
      const named = new Set(
        Object.values(drawings).flatMap((drawing) => drawing.marks.map((mark) => mark.part)),
      )
      const pieces = [
        ...(leaf?.boards.map((_, i) => `board ${i + 1}`) ?? []),
        ...(leaf?.ledges.map((ledge) => `${ledge.name} ledge`) ?? []),
        ...(leaf?.braces.map((brace) => `${brace.name} brace`) ?? []),
        'dimension width',
        'dimension height',
      ]
      for (const piece of pieces) expect(named).toContain(piece)
      for (const drawing of Object.values(drawings))
        for (const number of JSON.stringify(layOut(drawing, { width: 190, height: 250, scale: 12 })).match(
          /null|NaN/g,
        ) ?? [])
          expect(number).toBe('a number')
    },
  )
})
