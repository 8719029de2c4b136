import { describe, expect, it } from 'vitest'
import { figureText } from '../../shared/drawing/figureText.ts'
import { lowerEdge, upperEdge } from '../../shared/gate/ledges.ts'
import type { HangingLeaf } from '../../shared/gate/leaf.ts'
import type { Point } from '../../shared/geometry/point.ts'
import { truePrinter, type Printer } from '../../shared/papers/fullSize/printer.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import { everySo } from '../fixtures/sample.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { readBack } from '../papers/paperReading.ts'
import { fullSizeOf, gateCard, outPrinter, printed, type Printed } from './fullSizeCases.ts'
import { apart, inkOn } from './measuring.ts'

/** Every height of a leaf that the design states: ledges' edges, hinges, ironmongery, notch points, feet and the highest of the top, mm. */
function stated({ design }: JobCardInput, leaf: HangingLeaf): number[] {
  return [
    ...leaf.ledges.flatMap((ledge) => [lowerEdge(ledge), upperEdge(ledge)]),
    ...leaf.hinges.map(({ y }) => y),
    ...design.fittings.filter((one) => one.leaf === leaf.name).map(({ height }) => height),
    ...leaf.braces.flatMap(({ notch, outline }) =>
      notch ? [outline[1]?.[1] ?? NaN, outline[4]?.[1] ?? NaN] : [],
    ),
    ...(leaf.frame.length > 0 ? [] : [leaf.boards[0]?.feet[0] ?? NaN, leaf.boards.at(-1)?.feet[1] ?? NaN]),
    leaf.height,
  ]
}

describe('the setting-out rod of each of forty gates, read back', () => {
  it.each(everySo(3, wholeCards).map(({ name, input }) => [name, input] as const))(
    '%s: says every height of the design',
    async (_, input) => {
      const { write } = figureText(input.unit)
      const words = (await readBack(fullSizeOf(input, ['rod']))).flat()
      for (const leaf of input.design.leaves)
        for (const height of stated(input, leaf)) expect(words).toContain(write(height))
    },
  )

  it('says inches where the job is in inches', async () => {
    const input: JobCardInput = { ...gateCard('39'), unit: 'in', format: 'letter' }
    const words = (await readBack(fullSizeOf(input, ['rod']))).flat().join(' ')
    const [ledge] = input.design.leaves[0]?.ledges ?? []
    if (!ledge) throw new Error('no ledge')
    expect(words).toContain(figureText('in').write(lowerEdge(ledge)).split(' ')[0])
  })
})

/** A strip on its sheet: its working edge across, and what is measured of it, as places down the sheet, mm. */
type Strip = { left: number; crosses: number[]; marks: number[] }

/** The strips of a sheet from the left, their marks and register marks measured in the dots. */
function stripsOn({ paths, raster }: Printed): Strip[] {
  const edges = paths.filter(
    ({ width, points }) =>
      width === 0.5 &&
      points.length === 2 &&
      Math.abs((points[0] as Point)[0] - (points[1] as Point)[0]) < 0.01,
  )
  return edges.map(({ points }) => {
    const left = (points[0] as Point)[0]
    const down = (x: number, y: number): number => {
      const found = inkOn(raster, [x, y - 0.8], [x, y + 0.8])
      if (!found) throw new Error('no mark there')
      return found[1]
    }
    const squares = paths.filter(
      (path) =>
        path.closed &&
        path.points.length === 4 &&
        apart(path.points[0] as Point, path.points[1] as Point) < 4 &&
        Math.abs((path.points[0] as Point)[0] - left) < 9,
    )
    const marks = paths.filter(
      ({ width, points: [from, to, more] }) =>
        width === 0.3 &&
        from &&
        to &&
        !more &&
        Math.abs(from[1] - to[1]) < 0.01 &&
        Math.abs(from[0] - left) < 0.1,
    )
    return {
      left,
      crosses: squares
        .map((square) => ((square.points[0] as Point)[1] + (square.points[2] as Point)[1]) / 2)
        .map((y) => down(left + 3, y))
        .sort((a, b) => b - a),
      marks: marks.map((mark) => down(left + 1.2, (mark.points[0] as Point)[1])).sort((a, b) => b - a),
    }
  })
}

/** Heights of all marks of a rod taped together: each strip's lower cross laid on the upper one of the strip before, the lowest mark at low. */
function taped(sheets: Printed[], { along }: Printer, low: number): number[] {
  const heights: number[] = []
  const strips = sheets.flatMap(stripsOn)
  let lower: number | undefined
  for (const [i, { crosses, marks }] of strips.entries()) {
    const from =
      i === 0 ? { y: marks[0] ?? NaN, height: low } : { y: crosses[0] ?? NaN, height: lower ?? NaN }
    const heightOf = (y: number): number => from.height + ((from.y - y) * along) / 100
    heights.push(...marks.map(heightOf))
    lower = heightOf(crosses.at(-1) ?? NaN)
  }
  return heights
}

describe('a rod taped together, measured in the dots', () => {
  it.each([
    ['01', truePrinter],
    ['06', truePrinter],
    ['13', outPrinter],
    ['09', truePrinter],
    ['39', outPrinter],
  ] as const)(
    '%s: every height within 0.2 mm of the design, and no mark that the design hasn’t',
    async (start, printer) => {
      const input = gateCard(start)
      const [leaf] = input.design.leaves
      if (!leaf) throw new Error('no leaf')
      const sheets = await printed(fullSizeOf(input, ['rod'], printer))
      const found = taped(sheets, printer, 0)
      const wanted = stated(input, leaf)
      for (const height of wanted)
        expect(Math.min(...found.map((one) => Math.abs(one - height)))).toBeLessThan(0.2)
      const { lowest, rail } = {
        lowest: 0,
        rail: leaf.frame.find(({ name }) => name === 'top rail')?.outline[0]?.[1] ?? 0,
      }
      const boardTops = leaf.boards.flatMap(({ heads }) => heads)
      const edges = [boardTops[0] ?? NaN, boardTops.at(-1) ?? NaN]
      for (const one of found)
        expect(
          Math.min(...[...wanted, ...edges, lowest, rail].map((height) => Math.abs(one - height))),
        ).toBeLessThan(0.2)
    },
  )
})
