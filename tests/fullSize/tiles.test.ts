import { describe, expect, it } from 'vitest'
import { placeLeaves } from '../../shared/drawing/placeLeaves.ts'
import type { Point } from '../../shared/geometry/point.ts'
import { truePrinter } from '../../shared/papers/fullSize/printer.ts'
import type { PagePath } from '../../shared/papers/page.ts'
import { fullSizeOf, gateCard, printed, titled, type Printed } from './fullSizeCases.ts'
import { apart, crossing, distance, inkOn, lineNear, ringAt } from './measuring.ts'
import { everySo } from '../fixtures/sample.ts'

const numberIn = (text: string): number => Number(/[\d.]+/.exec(text)?.[0] ?? NaN)

/** Tiles on a sheet from the top down, each by the place of its name. */
const tileNames = ({ texts }: Printed): { tile: number; y: number }[] =>
  texts
    .filter(
      ({ text, size, weight }) => /^tile \d+ of \d+$/.test(text) && size === 11 && weight === 'semibold',
    )
    .map(({ text, y }) => ({ tile: numberIn(text), y }))

/** The tile that a place of a sheet is on. */
const tileAt = (sheet: Printed, y: number): number =>
  tileNames(sheet)
    .filter((name) => name.y < y)
    .reduce((last, name) => Math.max(last, name.tile), 0)

const straight = (paths: PagePath[], of: (from: Point, to: Point) => boolean): [Point, Point][] =>
  paths.flatMap(({ points }) => {
    const [from, to] = points
    return points.length === 2 && from && to && of(from, to) ? [[from, to] as [Point, Point]] : []
  })

/** Register marks of a sheet, measured: the middle of each small square, from the crossing of its cross. */
function crosses({ paths, raster }: Printed): Point[] {
  return paths
    .filter(
      ({ closed, points }) =>
        closed && points.length === 4 && apart(points[0] as Point, points[1] as Point) < 3.5,
    )
    .map(({ points }) => {
      const [a, , c] = points as [Point, Point, Point, Point]
      const middle: Point = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2]
      const over = lineNear(raster, [middle[0] - 3.8, middle[1]], [middle[0] + 3.8, middle[1]])
      const up = lineNear(raster, [middle[0], middle[1] - 3.8], [middle[0], middle[1] + 3.8])
      return crossing(over, up)
    })
}

/** Place of the heavy line where it passes a place across, looked for around a height. */
const heavyAt = (sheet: Printed, x: number, y: number): number | undefined =>
  inkOn(sheet.raster, [x, y - 3], [x, y + 3])?.[1]

/** Height on the sheet of a line through several places, at a place across. */
function onPath(points: readonly Point[], x: number): number | undefined {
  for (const [i, to] of points.entries()) {
    const from = points[i - 1]
    if (from && (from[0] - x) * (to[0] - x) <= 0 && from[0] !== to[0])
      return from[1] + ((to[1] - from[1]) * (x - from[0])) / (to[0] - from[0])
  }
  return undefined
}

/** Heavy lines of a sheet but the rule under its head. */
const heavyPaths = ({ paths }: Printed): PagePath[] => paths.filter(({ width }) => width === 0.5).slice(1)

describe('the shaped top, measured in the dots', () => {
  it.each(everySo(2, ['09', '10', '11', '15', '20', '24']))(
    '%s: where an ordinate says so, the line stands at the design’s height over the level line',
    async (start) => {
      const input = gateCard(start)
      const [placed] = placeLeaves(input.spec, input.design).leaves
      const top = placed?.plan.top
      const sheets = await printed(fullSizeOf(input, ['top']))
      let measured = 0
      for (const sheet of sheets)
        for (const text of sheet.texts.filter((one) => one.text.startsWith('at '))) {
          const tile = tileAt(sheet, text.y)
          const ordinate = straight(
            sheet.paths,
            (from, to) => Math.abs(from[0] - text.x) < 0.01 && Math.abs(to[0] - from[0]) < 0.01,
          )
            .filter(([from, to]) => tileAt(sheet, from[1]) === tile && Math.min(from[1], to[1]) < text.y)
            .sort(([a], [b]) => a[1] - b[1])[0]
          const level = sheet.texts.find(
            (one) => one.text.startsWith('level ') && tileAt(sheet, one.y) === tile,
          )
          const rise = ordinate && Math.min(ordinate[0][1], ordinate[1][1])
          if (!ordinate || !level || rise === undefined) continue
          const line = lineNear(sheet.raster, [level.x - 25, level.y + 1.2], [level.x + 25, level.y + 1.2])
          const [before, after] = [-1.5, 1.5].map((aside) => heavyAt(sheet, text.x + aside, rise))
          expect(before).toBeDefined()
          const curve = ((before ?? 0) + (after ?? 0)) / 2
          const foot = line.at[1] + ((text.x - line.at[0]) * line.along[1]) / line.along[0]
          const wanted = (top?.heightAt(numberIn(text.text)) ?? NaN) - numberIn(level.text)
          expect(Math.abs(foot - curve - wanted)).toBeLessThan(0.2)
          measured++
        }
      expect(measured).toBeGreaterThan(4)
    },
  )

  it('meets itself across every joint: the same distance from the same register mark on both tiles', async () => {
    for (const start of ['09', '11', '24']) {
      const sheets = await printed(fullSizeOf(gateCard(start), ['top']))
      const joints = new Map<string, number[]>()
      for (const sheet of sheets) {
        const marks = crosses(sheet)
        const upper = marks.filter(
          (mark) =>
            !marks.some(
              (other) =>
                other !== mark &&
                Math.abs(other[0] - mark[0]) < 1 &&
                other[1] < mark[1] &&
                tileAt(sheet, other[1]) === tileAt(sheet, mark[1]),
            ),
        )
        for (const mark of upper) {
          const tile = tileAt(sheet, mark[1])
          const path = heavyPaths(sheet)
            .filter(({ points }) => points.some(([, y]) => tileAt(sheet, y) === tile))
            .map(({ points }) => onPath(points, mark[0]))
            .find((y) => y !== undefined)
          const curve = path === undefined ? undefined : heavyAt(sheet, mark[0] + 2.3, path)
          expect(curve).toBeDefined()
          const left = mark[0] < sheet.page.width / 2
          const key = left ? `${tile - 1}-${tile}` : `${tile}-${tile + 1}`
          joints.set(key, [...(joints.get(key) ?? []), mark[1] - (curve ?? NaN)])
        }
      }
      expect(joints.size).toBeGreaterThan(2)
      for (const [one, other, ...more] of joints.values()) {
        expect(more).toEqual([])
        expect(Math.abs((one ?? NaN) - (other ?? NaN))).toBeLessThan(0.1)
      }
    }
  })
})

/** Holes of a sheet, measured: middles and diameters. */
function holes({ paths, raster }: Printed) {
  return paths
    .filter(({ closed, points }) => closed && points.length === 72)
    .map(({ points }) => {
      const n = points.length
      const near: Point = [
        points.reduce((sum, [x]) => sum + x, 0) / n,
        points.reduce((sum, [, y]) => sum + y, 0) / n,
      ]
      return ringAt(raster, near, apart(near, points[0] as Point))
    })
}

describe('drilling templates, measured in the dots', () => {
  const pieces = [
    ['01', 'lock'],
    ['13', 'lock'],
    ['13', 'handle'],
    ['18', 'lock'],
    ['39', 'lock'],
  ] as const

  it.each(everySo(2, pieces))(
    '%s, %s: every hole within 0.2 mm of the design, from the edge and from the height line',
    async (start, kind) => {
      const input = gateCard(start)
      const fitting = input.design.fittings.find((one) => one.kind === kind && one.drillings.length > 0)
      if (!fitting) throw new Error('no such piece')
      const leaf = input.design.leaves.find(({ name }) => name === fitting.leaf)
      const [sheet] = await printed(
        titled(fullSizeOf(input, ['drilling'], truePrinter), `Drilling: ${fitting.name}`),
      )
      if (!sheet || !leaf) throw new Error('no sheet')
      const [edge] = straight(heavyPaths(sheet), (from, to) => Math.abs(from[0] - to[0]) < 0.01)
      const height = straight(
        sheet.paths.filter(({ dash }) => dash?.length === 4),
        () => true,
      )[0]
      if (!edge || !height) throw new Error('nothing to lay it to')
      const [atEdge, atHeight] = [lineNear(sheet.raster, ...edge), lineNear(sheet.raster, ...height)]
      const wanted = fitting.drillings.flatMap(({ places, size }) =>
        places.map(([x, y]) => ({
          across: fitting.side === 'hanging' ? x : leaf.width - x,
          up: y - fitting.height,
          diameter: size.drill ?? size.exact,
        })),
      )
      const found = holes(sheet).map(({ middle, diameter }) => ({
        across: distance(atEdge, middle),
        up: (middle[1] < atHeight.at[1] ? 1 : -1) * distance(atHeight, middle),
        diameter,
      }))
      expect(found).toHaveLength(wanted.length)
      for (const { across, up, diameter } of wanted)
        expect(
          found.some(
            (one) =>
              Math.abs(one.across - across) < 0.2 &&
              Math.abs(one.up - up) < 0.2 &&
              Math.abs(one.diameter - diameter) < 0.2,
          ),
        ).toBe(true)
    },
  )

  it('carry a long strap over its joints: holes of all tiles within 0.2 mm of the design when the crosses are laid on each other', async () => {
    const input = gateCard('01')
    const fitting = input.design.fittings.find(({ kind }) => kind === 'hinge')
    const sheets = await printed(
      titled(fullSizeOf(input, ['drilling'], truePrinter), `Drilling: ${fitting?.name ?? ''}`),
    )
    expect(sheets.length).toBeGreaterThan(1)
    // A left-hung gate from the back has its hanging edge on the last tile, at the right: distances run back from there, tile by tile.
    const across: number[] = []
    let edge = NaN
    for (const sheet of [...sheets].reverse()) {
      const marks = crosses(sheet).map(([x]) => x)
      const heavy = straight(heavyPaths(sheet), (from, to) => Math.abs(from[0] - to[0]) < 0.01)[0]
      if (heavy) edge = lineNear(sheet.raster, ...heavy).at[0]
      else edge = Math.max(...marks) + edge
      across.push(...holes(sheet).map(({ middle }) => edge - middle[0]))
      edge -= Math.min(...marks)
    }
    const wanted = (fitting?.drillings ?? []).flatMap(({ places }) => places.map(([x]) => x))
    expect(wanted.length).toBeGreaterThan(3)
    for (const x of wanted) expect(Math.min(...across.map((one) => Math.abs(one - x)))).toBeLessThan(0.2)
    for (const x of across) expect(Math.min(...wanted.map((one) => Math.abs(one - x)))).toBeLessThan(0.2)
  })
})
