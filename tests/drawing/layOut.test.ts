import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Drawing } from '../../shared/drawing/drawing.ts'
import { fillingScale, fittingScale, paperScales, sizeAt } from '../../shared/drawing/fitScale.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { hatchLines } from '../../shared/drawing/hatch.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { pens } from '../../shared/drawing/pens.ts'
import { placeLabels } from '../../shared/drawing/placeLabels.ts'
import { scaleBar } from '../../shared/drawing/scaleBar.ts'
import { design } from '../../shared/gate/design.ts'
import { designOf } from '../fixtures/gates.ts'
import { hardGates } from '../fixtures/hardGates.ts'
import { randomGate } from '../fixtures/randomGates.ts'
import { outside, overlaps, wordBoxes } from './wordBoxes.ts'

const label = (text: string, group?: string) => ({ text, group })

describe('figures of a chain', () => {
  const free = { before: 20, after: 20 }

  it('stand over their own length where they fit', () => {
    const placed = placeLabels([0, 30, 70], [label('300'), label('400')], free)
    expect(placed.map(({ at, row, size }) => ({ at, row, size }))).toEqual([
      { at: 15, row: 'above', size: 'normal' },
      { at: 50, row: 'above', size: 'normal' },
    ])
  })

  it('stand past the end when the first or last length is too short, and beyond the line in between', () => {
    const placed = placeLabels(
      [0, 1, 40, 42, 80, 81],
      ['10', '390', '20', '380', '11'].map((text) => label(text)),
      free,
    )
    expect(placed.map(({ text, row, outside }) => [text, row, outside])).toEqual([
      ['10', 'above', true],
      ['390', 'above', false],
      ['20', 'beyond', false],
      ['380', 'above', false],
      ['11', 'above', true],
    ])
  })

  it('are written once for equal neighbours that have no room each', () => {
    const five = [0, 5, 10, 15, 20, 25]
    const placed = placeLabels(
      five,
      ['112', '112', '112', '112', '54'].map((text) => label(text, text)),
      free,
    )
    expect(placed.map(({ text }) => text)).toEqual(['4 × 112', '54'])
  })

  it('with a built fraction are never set smaller', () => {
    expect(placeLabels([0, 10], [label('5 ¹¹⁄₁₆″')], free)[0]).toMatchObject({
      size: 'normal',
      outside: true,
    })
  })
})

describe('hatching', () => {
  it('covers a square with parallel lines at its spacing and stays within it', () => {
    const lines = hatchLines(
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      45,
      2,
    )
    // The diagonal of 10√2 = 14.14 holds 7 spacings of 2; both corners lie on it.
    expect(lines.length).toBe(7)
    for (const point of lines.flat()) for (const value of point) expect(value).toBeGreaterThanOrEqual(-1e-9)
    for (const point of lines.flat()) for (const value of point) expect(value).toBeLessThanOrEqual(10 + 1e-9)
  })

  it('leaves a groove open', () => {
    const notched = hatchLines(
      [
        [0, 0],
        [10, 0],
        [10, 4],
        [6, 4],
        [6, 6],
        [10, 6],
        [10, 10],
        [0, 10],
      ],
      0,
      1,
    )
    const inGroove = notched.filter(
      ([from, to]) => from[1] > 4.01 && from[1] < 5.99 && Math.max(from[0], to[0]) > 6.01,
    )
    expect(inGroove).toEqual([])
  })

  it('and every other pen is at least 0.18 mm, so that a copier keeps it', () => {
    for (const pen of Object.values(pens)) expect(pen.width).toBeGreaterThanOrEqual(0.18)
  })
})

describe('scale', () => {
  const [gate] = hardGates
  const back = gate ? gateDrawings(gate.spec, designOf(gate.spec), 'mm').back : undefined
  if (!back) throw new Error('no gate')

  it('on paper is the largest of the usual ones at which the drawing fits', () => {
    const box = { width: 145, height: 240 }
    const scale = fittingScale(back, box)
    expect(paperScales).toContain(scale)
    expect(sizeAt(back, scale).height).toBeLessThanOrEqual(240)
    const finer = paperScales[paperScales.indexOf(scale) - 1] ?? 0
    const tooBig = sizeAt(back, finer)
    expect(tooBig.width > 145 || tooBig.height > 240).toBe(true)
  })

  it('on screen fills the box, and a millimetre is the same across and up', () => {
    const box = { width: 200, height: 180 }
    const laid = layOut(back, { ...box, scale: fillingScale(back, box) })
    const leaf = laid.primitives.find(
      (primitive) =>
        primitive.kind === 'path' &&
        primitive.pen === 'visible' &&
        primitive.fill === 'none' &&
        primitive.closed,
    )
    const points = leaf?.kind === 'path' ? leaf.points : []
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
    const [width, height] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)]
    expect(width / height).toBeCloseTo(900 / 1800, 9)
    expect(height).toBeCloseTo(180 - back.margin.top - back.margin.bottom, 9)
  })

  it('has a bar whose length is what is written beside it', () => {
    const [ink, paper, words] = scaleBar(12.5, 'mm', { x: 3, y: 7 })
    const xs = [ink, paper].flatMap((half) => (half?.kind === 'path' ? half.points.map(([x]) => x) : []))
    expect(words).toMatchObject({ text: '200 mm' })
    expect((Math.max(...xs) - Math.min(...xs)) * 12.5).toBeCloseTo(200, 9)
    expect(scaleBar(16, 'in', { x: 0, y: 0 }).at(-1)).toMatchObject({ text: '1′' })
  })
})

/** A drawing on the box it is given on a card, on a large screen and on a small one: words that collide or leave the box. */
function faults(drawing: Drawing): string[] {
  return [
    { width: 145, height: 250 },
    { width: 240, height: 190 },
    { width: 130, height: 120 },
  ].flatMap((box) => {
    const { primitives } = layOut(drawing, { ...box, scale: fillingScale(drawing, box) })
    const boxes = wordBoxes(primitives)
    const found = [
      ...overlaps(boxes),
      ...outside(boxes, { left: 0, top: 0, right: box.width, bottom: box.height }).map(
        (text) => `${text} leaves the box`,
      ),
    ]
    return found.map((fault) => `${drawing.title} ${box.width} × ${box.height}: ${fault}`)
  })
}

describe('words on a drawing', () => {
  it.each(hardGates)('never meet nor leave the box: $name', ({ spec, unit }) => {
    const drawings = gateDrawings(spec, designOf(spec), unit)
    expect(Object.values(drawings).flatMap(faults)).toEqual([])
  })

  it('never meet nor leave the box on 150 random gates', () => {
    let drawn = 0
    fc.assert(
      fc.property(randomGate, fc.constantFrom('mm' as const, 'in' as const), (spec, unit) => {
        const outcome = design(spec)
        if (!outcome.made) return
        drawn++
        expect(Object.values(gateDrawings(spec, outcome.design, unit)).flatMap(faults)).toEqual([])
      }),
      { numRuns: 150, seed: 20261 },
    )
    expect(drawn).toBeGreaterThan(60)
  })
})
