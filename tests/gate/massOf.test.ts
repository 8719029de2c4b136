import { Polygon } from '@flatten-js/core'
import fc from 'fast-check'
import polygonClipping from 'polygon-clipping'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../shared/geometry/point.ts'
import { centroid, massFigures, massOf, type FlatPart } from '../../shared/gate/massOf.ts'

const board = (x: number, width: number, height: number): Point[] => [
  [x, 0],
  [x + width, 0],
  [x + width, height],
  [x, height],
]

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A star-shaped polygon round a hub, mostly hollow-sided: simple, and as odd as a notched brace. */
type Star = { hub: Point; outline: Point[] }

const anyStar: fc.Arbitrary<Star> = fc
  .tuple(fc.array(number(20, 400), { minLength: 3, maxLength: 12 }), number(-2000, 2000), number(-2000, 2000))
  .map(([radii, cx, cy]) => ({
    hub: [cx, cy],
    outline: radii.map((radius, i): Point => {
      const turned = (2 * Math.PI * i) / radii.length
      return [cx + radius * Math.cos(turned), cy + radius * Math.sin(turned)]
    }),
  }))

const areaByLibrary = (points: readonly Point[]): number =>
  new Polygon(points.map(([x, y]): [number, number] => [x, y])).area()

/** First moments of a star about the axes, from areas that the library measures: triangles round its hub, each at its middle. */
function momentsByLibrary({ hub, outline }: Star): Point {
  let [aboutX, aboutY] = [0, 0]
  outline.forEach((corner, i) => {
    const next = outline[(i + 1) % outline.length] as Point
    const area = areaByLibrary([hub, corner, next])
    aboutX += (area * (hub[0] + corner[0] + next[0])) / 3
    aboutY += (area * (hub[1] + corner[1] + next[1])) / 3
  })
  return [aboutX, aboutY]
}

describe('mass and its centre', () => {
  test('of one board is its volume by its density, at its middle', () => {
    const found = massOf([{ outline: board(30, 100, 2000), thickness: 20, density: 500 }])
    expect(found.massKg).toBeCloseTo(2, 12)
    expect(found.centre.x).toBeCloseTo(80, 9)
    expect(found.centre.y).toBeCloseTo(1000, 9)
  })

  test('of a board and a lock lies between them by their masses', () => {
    const found = massOf(
      [{ outline: board(0, 100, 2000), thickness: 20, density: 500 }],
      [{ at: [90, 1100], massKg: 0.5 }],
    )
    expect(found.massKg).toBeCloseTo(2.5, 12)
    expect(found.centre.x).toBeCloseTo((2 * 50 + 0.5 * 90) / 2.5, 9)
    expect(found.centre.y).toBeCloseTo((2 * 1000 + 0.5 * 1100) / 2.5, 9)
  })

  test('of point masses alone needs no part, and of nothing at all is refused', () => {
    expect(massOf([], [{ at: [3, 4], massKg: 2 }])).toEqual({ massKg: 2, centre: { x: 3, y: 4 } })
    expect(() => massOf([])).toThrow(RangeError)
    expect(centroid([])).toBeUndefined()
    expect(
      centroid([
        [1, 1],
        [2, 2],
      ]),
    ).toBeUndefined()
  })

  test('doesn’t mind which way round an outline runs', () => {
    const outline = board(7, 95, 1830)
    const part = (points: Point[]): FlatPart => ({ outline: points, thickness: 19, density: 470 })
    const [there, back] = [massOf([part(outline)]), massOf([part([...outline].reverse())])]
    expect(back.massKg).toBeCloseTo(there.massKg, 12)
    expect(back.centre.x).toBeCloseTo(there.centre.x, 9)
  })

  test('equal sums over polygons measured by an independent library', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(anyStar, number(10, 60), number(300, 900)), { minLength: 1, maxLength: 6 }),
        (given) => {
          const found = massOf(
            given.map(([{ outline }, thickness, density]) => ({ outline, thickness, density })),
          )
          let [mass, aboutX, aboutY] = [0, 0, 0]
          for (const [star, thickness, density] of given) {
            const perArea = (thickness * density) / 1e9
            const [x, y] = momentsByLibrary(star)
            mass += areaByLibrary(star.outline) * perArea
            aboutX += x * perArea
            aboutY += y * perArea
          }
          expect(found.massKg / mass).toBeCloseTo(1, 9)
          expect(found.centre.x).toBeCloseTo(aboutX / mass, 6)
          expect(found.centre.y).toBeCloseTo(aboutY / mass, 6)
        },
      ),
      { numRuns: 1000 },
    )
  })

  test('stay the same when a brace is cut by a board’s edge into pieces by an independent library', () => {
    const brace: [number, number][] = [
      [60, 200],
      [165, 200],
      [860, 1500],
      [755, 1500],
    ]
    const left: [number, number][] = [
      [0, 0],
      [431, 0],
      [431, 2000],
      [0, 2000],
    ]
    const pieces = [
      polygonClipping.intersection([brace], [left]),
      polygonClipping.difference([brace], [left]),
    ]
    const outlines = pieces.flatMap((piece) => piece.map((rings) => (rings[0] ?? []).slice(0, -1)))
    const part = (outline: readonly Point[]): FlatPart => ({ outline, thickness: 27, density: 510 })
    const [whole, cut] = [massOf([part(brace)]), massOf(outlines.map(part))]
    expect(outlines).toHaveLength(2)
    expect(cut.massKg).toBeCloseTo(whole.massKg, 9)
    expect(cut.centre.x).toBeCloseTo(whole.centre.x, 6)
    expect(cut.centre.y).toBeCloseTo(whole.centre.y, 6)
  })

  test('of a part cut in two is that of the whole', () => {
    fc.assert(
      fc.property(number(10, 90), number(1, 20), (cut, thickness) => {
        const part = (outline: Point[]): FlatPart => ({ outline, thickness, density: 600 })
        const whole = massOf([part(board(0, 100, 1500))])
        const halves = massOf([part(board(0, cut, 1500)), part(board(cut, 100 - cut, 1500))])
        expect(halves.massKg).toBeCloseTo(whole.massKg, 9)
        expect(halves.centre.x).toBeCloseTo(whole.centre.x, 9)
        expect(halves.centre.y).toBeCloseTo(whole.centre.y, 9)
      }),
    )
  })

  test('its figures name the parts', () => {
    const figures = massFigures({ massKg: 31, centre: { x: 480, y: 905 } }, { boards: 22, ledges: 9 })
    expect(figures.mass.inputs).toEqual({ boards: 22, ledges: 9 })
    expect([figures.mass.value, figures.x.value, figures.y.value]).toEqual([31, 480, 905])
  })
})
