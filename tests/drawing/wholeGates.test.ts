import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Drawing, Mark } from '../../shared/drawing/drawing.ts'
import { extraDrawings, type ExtraView } from '../../shared/drawing/extraDrawings.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { mirror } from '../../shared/drawing/hand.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { textSizes } from '../../shared/drawing/pens.ts'
import { textWidth } from '../../shared/drawing/textWidth.ts'
import { design } from '../../shared/gate/design.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { designOf } from '../fixtures/gates.ts'
import { randomWholeGate } from '../fixtures/randomWholeGates.ts'
import { faults } from './faults.ts'
import { wholeGates } from './wholeGates.ts'

const named = (start: string): GateSpec => {
  const found = wholeGates.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no example ${start}`)
  return found.spec
}
const all = (spec: GateSpec, made: Design, unit: 'mm' | 'in' = 'mm') => ({
  ...gateDrawings(spec, made, unit),
  ...extraDrawings(spec, made, unit),
})
const views = (spec: GateSpec) => all(spec, designOf(spec))
const extra = (start: string, view: ExtraView): Drawing => {
  const spec = named(start)
  const drawing = extraDrawings(spec, designOf(spec), 'mm')[view]
  if (!drawing) throw new Error(`${start} has no ${view}`)
  return drawing
}
const texts = (drawing: Drawing): string[] =>
  layOut(drawing, { width: 300, height: 300, scale: 8 }).primitives.flatMap((one) =>
    one.kind === 'text' ? [one.text] : [],
  )

/** Places to the millionth of a millimetre, noughts without a sign. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_key, item: unknown) =>
      typeof item === 'number' ? Math.round(item * 1e6) / 1e6 + 0 : item,
    ),
  )

/** The pieces that a view of a leaf shows, by the words on their filled shapes. */
const pieces = (drawing: Drawing): string[] =>
  drawing.marks.flatMap((mark) =>
    mark.kind === 'polygon' && ['board', 'ledge', 'brace'].includes(mark.fill) && mark.part
      ? [mark.part]
      : [],
  )

/** What every leaf of a design is made of, as the drawing names it. */
function parts({ leaves }: Design, view: 'back' | 'face'): string[] {
  return leaves.flatMap((leaf) => {
    const own = [
      ...leaf.boards.map((_, i) => `board ${i + 1}`),
      ...leaf.frame.map(({ name }) => name),
      ...(view === 'back' ? leaf.ledges.map(({ name }) => `${name} ledge`) : []),
      ...(view === 'back' ? leaf.braces.map(({ name }) => `${name} brace`) : []),
    ]
    return own.map((part) => (leaf.name === 'leaf' ? part : `${leaf.name} ${part}`))
  })
}

describe('every view of every example', () => {
  it.each(wholeGates)('of one hand is the mirror of the other: $name', ({ spec }) => {
    const made = designOf(spec)
    const left = all({ ...spec, hung: 'left' }, made)
    const right = all({ ...spec, hung: 'right' }, made)
    expect(Object.keys(left)).toEqual(Object.keys(right))
    const upright = ['frameSection', 'ledgeSection', 'ground']
    for (const [name, drawing] of Object.entries(left)) {
      const other = right[name as keyof typeof right]
      if (!other) throw new Error(name)
      const width = drawing.extent.minX + other.extent.maxX
      const turned = upright.includes(name) ? drawing : mirror(drawing, width)
      expect(rounded({ ...turned, description: '' })).toEqual(rounded({ ...other, description: '' }))
    }
  })

  it.each(wholeGates)('shows every part once and nothing that isn’t there: $name', ({ spec }) => {
    const made = designOf(spec)
    const { back, face } = gateDrawings(spec, made, 'mm')
    const strip = spec.meeting?.edge === 'strip' ? ['meeting strip'] : []
    expect(pieces(back).sort()).toEqual([...parts(made, 'back'), ...strip].sort())
    expect(pieces(face).sort()).toEqual(parts(made, 'face').sort())
    const fittings = (drawing: Drawing) =>
      drawing.marks.filter((mark) => mark.kind === 'polygon' && mark.fill === 'metal').length
    const metal = made.fittings.flatMap(({ shapes }) =>
      shapes.filter(({ part }) => part !== 'keyhole' && part !== 'pin'),
    )
    expect(fittings(back) + fittings(face)).toBe(metal.length)
  })

  it.each(wholeGates)('has words that never meet nor leave the box, in either unit: $name', ({ spec }) => {
    const made = designOf(spec)
    for (const unit of ['mm', 'in'] as const)
      expect(Object.values(all(spec, made, unit)).flatMap(faults)).toEqual([])
  })

  it.each(wholeGates)('has notes that fit half a sheet: $name', ({ spec }) => {
    const made = designOf(spec)
    for (const unit of ['mm', 'in'] as const) {
      const { back: _back, face: _face, ...details } = all(spec, made, unit)
      for (const note of Object.values(details).flatMap((drawing) => drawing.notes))
        expect([note, textWidth(note, textSizes.normal) <= 92]).toEqual([note, true])
    }
  })

  it.each(wholeGates)('has a number at every place: $name', ({ spec }) => {
    for (const drawing of Object.values(views(spec))) {
      const laid = layOut(drawing, { width: 190, height: 250, scale: 12 })
      expect(JSON.stringify(laid.primitives)).not.toMatch(/null|NaN/)
      expect(drawing.description.length).toBeGreaterThan(20)
    }
  })
})

describe('views of random gates of every kind', () => {
  it('have words that never meet nor leave the box, and show every part once', () => {
    let drawn = 0
    fc.assert(
      fc.property(randomWholeGate, fc.constantFrom('mm' as const, 'in' as const), (spec, unit) => {
        const outcome = design(spec)
        if (!outcome.made) return
        drawn++
        const drawings = all(spec, outcome.design, unit)
        expect(Object.values(drawings).flatMap(faults)).toEqual([])
        const strip = spec.meeting?.edge === 'strip' && spec.opens !== 'to-face' ? ['meeting strip'] : []
        expect(pieces(drawings.back).sort()).toEqual([...parts(outcome.design, 'back'), ...strip].sort())
      }),
      { numRuns: 150, seed: 20263 },
    )
    expect(drawn).toBeGreaterThan(70)
  })
})

describe('a pair', () => {
  it('hangs its leaves at the outer edges, one H each, and says which opens first', () => {
    const { face, back } = views(named('18'))
    const badges = (drawing: Drawing) =>
      drawing.marks.flatMap((mark) => (mark.kind === 'badge' ? [mark.at[0]] : []))
    expect(badges(face)).toEqual([0, 1808])
    expect(badges(back)).toEqual([1808, 0])
    const said = (drawing: Drawing, text: string) =>
      drawing.marks.find((mark) => mark.kind === 'text' && mark.text === text)
    expect(said(face, 'opens first')).toMatchObject({ at: [450, 1800] })
    expect(said(back, 'opens first')).toMatchObject({ at: [1358, 1800] })
  })

  it('is dimensioned leaf, gap, leaf, and over all', () => {
    expect(texts(views(named('18')).face)).toEqual(expect.arrayContaining(['900', '8', '1808']))
  })

  it('has one curve across both: the tops meet the same circle', () => {
    const { back } = views(named('20'))
    const outlines = back.marks.filter(
      (mark) => mark.kind === 'polygon' && mark.fill === 'none' && mark.pen === 'visible',
    )
    // Rise 250 over 2408: radius (2408² / 4 + 250²) / 500 = 3024.232; the middle lies under the crown at 1900.
    const radius = (2408 ** 2 / 4 + 250 ** 2) / 500
    const heads = outlines.flatMap((mark) =>
      mark.kind === 'polygon' ? mark.points.filter(([, y]) => y > 1000) : [],
    )
    expect(heads.length).toBeGreaterThan(20)
    for (const [x, y] of heads) expect(Math.hypot(x - 1204, y - (1900 - radius))).toBeCloseTo(radius, 6)
  })

  it('meets with the gap between its edges, rebated by the lap on the side that it opens to', () => {
    const meeting = extra('19', 'meeting')
    const edge = (leaf: string) =>
      meeting.marks.flatMap((mark) =>
        mark.kind === 'polygon' && mark.part?.startsWith(leaf) && mark.fill === 'cut' ? mark.points : [],
      )
    // Hung right, so the first leaf lies at the right: 6 between the edges, its lap of 15 on the back half.
    const reach = (leaf: string, pick: (...xs: number[]) => number, back: boolean) =>
      pick(
        ...edge(leaf)
          .filter(([, z]) => (back ? z > 10 + 1e-9 : z < 10 - 1e-9))
          .map(([x]) => x),
      )
    expect(reach('first leaf', Math.min, false) - reach('second leaf', Math.max, false)).toBeCloseTo(6, 9)
    expect(reach('first leaf', Math.min, true) - reach('second leaf', Math.max, true)).toBeCloseTo(6, 9)
    expect(reach('first leaf', Math.min, false) - reach('first leaf', Math.min, true)).toBeCloseTo(15, 9)
  })

  it('has no meeting on one leaf, and a strip of twice the lap and the gap', () => {
    expect(views(named('01'))).not.toHaveProperty('meeting')
    const strip = extra('20', 'meeting').marks.find((mark) => mark.part === 'meeting strip')
    const xs = strip?.kind === 'polygon' ? strip.points.map(([x]) => x) : []
    expect(Math.max(...xs) - Math.min(...xs)).toBe(2 * 22 + 8)
  })
})

describe('a framed leaf', () => {
  const hidden = (drawing: Drawing, part: string): Mark[] =>
    drawing.marks.filter((mark) => mark.kind === 'polyline' && mark.pen === 'hidden' && mark.part === part)

  it('shows tenons, horns and rebates as hidden edges', () => {
    const { back } = views(named('13'))
    const [tenon] = hidden(back, 'bottom ledge')
    const xs = tenon?.kind === 'polyline' ? tenon.points.map(([x]) => x) : []
    expect(Math.max(...xs) - Math.min(...xs)).toBe(60)
    const horns = hidden(back, 'hanging stile').flatMap((mark) =>
      mark.kind === 'polyline' ? mark.points.map(([, y]) => y) : [],
    )
    expect([Math.min(...horns), Math.max(...horns)]).toEqual([-40, 2020])
    expect(hidden(back, 'rebate')).toHaveLength(1)
  })

  it('is dimensioned by stiles and shoulders, and cut to show both rebates', () => {
    const drawings = views(named('13'))
    expect(texts(drawings.back)).toEqual(expect.arrayContaining(['95', '760', '950']))
    expect(texts(drawings.section)).toEqual(expect.arrayContaining(['95', '60', '28', '20']))
    expect(texts(extra('13', 'frameSection'))).toEqual(expect.arrayContaining(['48', '20', '28', '12']))
    expect(views(named('01'))).not.toHaveProperty('frameSection')
  })
})

describe('a stable door', () => {
  it('has its halves one above the other with the gap between', () => {
    const { back } = views(named('26'))
    const ys = (leaf: string) =>
      back.marks.flatMap((mark) =>
        mark.kind === 'polygon' && mark.part === `${leaf} board 1` ? mark.points.map(([, y]) => y) : [],
      )
    expect(Math.max(...ys('lower half'))).toBe(1150)
    expect(Math.min(...ys('upper half'))).toBe(1154)
    expect(Math.max(...ys('upper half'))).toBe(2050)
    expect(texts(back)).toContain('Gap between the halves 4')
  })
})

describe('the ground', () => {
  it('lies a ground gap under a level foot at its highest, and rises as surveyed', () => {
    const { back } = views({ ...named('33'), hung: 'right' })
    const line = back.marks.find((mark) => mark.kind === 'polyline' && mark.part === 'ground')
    const [from, to] = line?.kind === 'polyline' ? line.points : []
    if (!from || !to) throw new Error('no ground')
    expect((to[1] - from[1]) / (to[0] - from[0])).toBeCloseTo(0.025, 9)
    const under = from[1] + (1000 - from[0]) * 0.025
    expect(under).toBeCloseTo(-60, 9)
  })

  it('comes nearest to the foot where the swing says', () => {
    // 1000 wide over 0.025 along and 0.03 across: the rise is greatest at atan(30 / 25), 39.051; 60 + 25 − 39.051 = 45.949.
    expect(texts(extra('33', 'ground'))).toEqual(expect.arrayContaining(['46', 'shut', 'open 110°']))
    expect(views(named('01'))).not.toHaveProperty('ground')
  })
})

describe('a weathered ledge', () => {
  it('shows its slope in an upright section, and its arris on the back, broken where a brace stands', () => {
    const spec = named('39')
    const ledge = designOf(spec).leaves[0]?.ledges[0]
    if (!ledge) throw new Error('no ledge')
    const [low, high] = [ledge.y - ledge.section.width / 2, ledge.y + ledge.section.width / 2]
    const cut = extra('39', 'ledgeSection').marks.find(
      (mark) => mark.kind === 'polygon' && mark.part === 'bottom ledge',
    )
    // 28 thick at 10°: 4.937 lower at the back; boards of 22.
    expect(cut?.kind === 'polygon' ? rounded(cut.points) : []).toEqual(
      rounded([
        [22, low],
        [50, low],
        [50, high - 28 * Math.tan(Math.PI / 18)],
        [22, high],
      ]),
    )
    const arrises = views(spec).back.marks.filter(
      (mark) =>
        mark.kind === 'line' &&
        mark.part === 'bottom ledge' &&
        Math.abs(mark.from[1] - (high - 4.937)) < 1e-3,
    )
    expect(arrises).toHaveLength(2)
    expect(views(named('01'))).not.toHaveProperty('ledgeSection')
  })
})

describe('details', () => {
  it('of a notch show its depth, its shoulder square to the brace, and the end grain', () => {
    const spec = named('06')
    const brace = designOf(spec).leaves[0]?.braces[0]
    const notch = extra('06', 'notch')
    const shape = notch.marks.find((mark) => mark.kind === 'polygon' && mark.part === 'single brace')
    const [long, tip, toe] = shape?.kind === 'polygon' ? shape.points : []
    if (!long || !tip || !toe || !brace) throw new Error('no notch')
    expect(long[1] - tip[1]).toBeCloseTo(20, 9)
    const shoulder = Math.hypot(long[0] - tip[0], long[1] - tip[1])
    expect(shoulder).toBeCloseTo(20 / Math.cos((brace.angle * Math.PI) / 180), 9)
    expect(texts(notch)).toContain('40')
    expect(views(named('01'))).not.toHaveProperty('notch')
  })

  it('of a shaped top give its height every 50 mm and at the closing edge', () => {
    const drawing = extra('09', 'settingOut')
    // 950 wide, rise 120: radius 1000.052; the crown at 475, the edges at 1730, and at 50 from the edge 1850 − 1000.052 + √(1000.052² − 425²).
    const ordinates = drawing.marks.filter((mark) => mark.kind === 'line' && mark.pen === 'dimension')
    expect(ordinates).toHaveLength(20)
    expect(texts(drawing)).toEqual(expect.arrayContaining(['1730', '1755', '1849.5', '950']))
    expect(views(named('01'))).not.toHaveProperty('settingOut')
  })

  it('of the swing carry the arc from shut to open about the pin', () => {
    const arc = extra('33', 'swing').marks.find((mark) => mark.kind === 'arc')
    if (arc?.kind !== 'arc') throw new Error('no arc')
    expect(arc.centre).toEqual([-20, 63])
    expect(arc.radius).toBeCloseTo(Math.hypot(1020, 63), 9)
    expect(arc.end - arc.start).toBeCloseTo(110, 9)
  })
})

describe('the layers drawn apart', () => {
  it.each(wholeGates)('show every piece of every leaf once, and all ironmongery: $name', ({ spec }) => {
    const made = designOf(spec)
    const marks = extraDrawings(spec, made, 'mm').exploded?.marks ?? []
    const fronts = marks.flatMap((mark) => (mark.kind === 'polygon' && mark.pen === 'outline' ? [mark] : []))
    const timber = fronts.filter(({ fill }) => fill !== 'metal' && fill !== 'ink').map(({ part }) => part)
    const strip = spec.meeting?.edge === 'strip' && spec.opens !== 'to-face' ? ['meeting strip'] : []
    expect(timber.sort()).toEqual([...parts(made, 'back'), ...strip].sort())
    const shapes = (surface: 'face' | 'back') =>
      made.fittings.filter((one) => one.surface === surface).flatMap((one) => one.shapes).length
    expect(fronts).toHaveLength(timber.length + shapes('back'))
    expect(marks.filter((mark) => mark.kind === 'polyline' && mark.pen === 'hidden')).toHaveLength(
      shapes('face'),
    )
    expect(marks.some((mark) => mark.kind === 'text' || mark.kind === 'chain')).toBe(false)
  })
})
