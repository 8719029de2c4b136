import { describe, expect, it } from 'vitest'
import { bevelsOf } from '../../shared/papers/fullSize/bevels.ts'
import { truePrinter } from '../../shared/papers/fullSize/printer.ts'
import type { PaperDocument } from '../../shared/papers/page.ts'
import type { Point } from '../../shared/geometry/point.ts'
import { fullSizeOf, gateCard, outPrinter, printed, titled, type Printed } from './fullSizeCases.ts'
import { angleOf, apart, checkLine, crossing, lineNear, type Found } from './measuring.ts'
import { everySo } from '../fixtures/sample.ts'

const checkAt = ({ page: { width, height } }: Printed) => ({
  across: { left: 10, right: width - 60, top: height - 24, bottom: height - 15 },
  down: { left: width - 24, right: width - 10, top: 20, bottom: height - 15 },
})

/** A line as it comes out of a printer that is out. Across is the short way of the sheet. */
function asItComesOut(
  { page }: Printed,
  { at, along }: Found,
  { across, along: down }: typeof truePrinter,
): Found {
  const [x, y] = page.width < page.height ? [across / 100, down / 100] : [down / 100, across / 100]
  const [dx, dy] = [along[0] * x, along[1] * y]
  const long = Math.hypot(dx, dy)
  return { at: [at[0] * x, at[1] * y], along: [dx / long, dy / long] }
}

/** The strong lines of a sheet, the rule under its head left out. */
const strong = ({ paths }: Printed): Point[][] =>
  paths
    .filter(({ width }) => width === 0.5)
    .slice(1)
    .map(({ points }) => points)

/** The first sheets of a paper: a bevel upright and a hinge's strap lying across. */
const firstOf = (paper: PaperDocument): PaperDocument => ({ ...paper, pages: paper.pages.slice(0, 3) })

describe('the 100 mm lines, measured in the dots', () => {
  it('are 100 mm both ways on sheets that stand and that lie across', async () => {
    const sheets = await printed(firstOf(fullSizeOf(gateCard('13'), ['bevels', 'drilling'])))
    expect(new Set(sheets.map(({ page }) => page.width > page.height))).toEqual(new Set([true, false]))
    for (const sheet of sheets) {
      expect(Math.abs(checkLine(sheet.raster, checkAt(sheet).across, 'x') - 100)).toBeLessThan(0.1)
      expect(Math.abs(checkLine(sheet.raster, checkAt(sheet).down, 'y') - 100)).toBeLessThan(0.1)
    }
  })

  it('are drawn so much longer or shorter that the workshop’s printer brings out 100', async () => {
    const sheets = await printed(firstOf(fullSizeOf(gateCard('13'), ['bevels', 'drilling'], outPrinter)))
    expect(new Set(sheets.map(({ page }) => page.width > page.height))).toEqual(new Set([true, false]))
    for (const sheet of sheets) {
      const upright = sheet.page.width < sheet.page.height
      const [x, y] = upright ? [outPrinter.across, outPrinter.along] : [outPrinter.along, outPrinter.across]
      expect(Math.abs(checkLine(sheet.raster, checkAt(sheet).across, 'x') - 10000 / x)).toBeLessThan(0.1)
      expect(Math.abs(checkLine(sheet.raster, checkAt(sheet).down, 'y') - 10000 / y)).toBeLessThan(0.1)
    }
  })
})

describe('bevels, measured in the dots', () => {
  const cases = [
    ['01', 'plain', truePrinter],
    ['04', 'splayed ledges', truePrinter],
    ['08', 'notched in each bay, splayed', truePrinter],
    ['13', 'framed', outPrinter],
    ['15', 'framed, notched', truePrinter],
    ['18', 'a pair', outPrinter],
    ['11', 'raked', truePrinter],
  ] as const

  it.each(everySo(2, cases))(
    '%s, %s: every angle within 0.05° of the design, on legs over 120 mm',
    async (start, _, printer) => {
      const input = gateCard(start)
      const sheets = await printed(fullSizeOf(input, ['bevels'], printer))
      const measured = sheets.map((sheet) => {
        const legs = strong(sheet).find((points) => points.length === 3)
        const [one, apex, other] = legs as [Point, Point, Point]
        expect(Math.min(apart(one, apex), apart(other, apex))).toBeGreaterThan(120)
        const [base, slant] = [lineNear(sheet.raster, apex, one), lineNear(sheet.raster, apex, other)]
        return angleOf(asItComesOut(sheet, base, printer), asItComesOut(sheet, slant, printer))
      })
      const { spec, design } = input
      for (const brace of design.leaves.flatMap(({ braces }) => braces))
        expect(Math.min(...measured.map((angle) => Math.abs(angle - brace.angle)))).toBeLessThan(0.05)
      for (const { angle, notch } of design.leaves.flatMap(({ braces }) => braces)) {
        if (!notch) continue
        // Between the brace's edge and the slope, which falls from the ledge's edge by asin(depth / slope).
        const wanted = angle - (Math.asin(notch.depth / notch.slope) * 180) / Math.PI
        expect(Math.min(...measured.map((one) => Math.abs(one - wanted)))).toBeLessThan(0.05)
      }
      const { end } = spec.ledges
      if (end.cut !== 'square')
        expect(Math.min(...measured.map((angle) => Math.abs(angle - (90 - end.angle))))).toBeLessThan(0.05)
      expect(measured).toHaveLength(bevelsOf(spec, design).length)
    },
  )

  it('lie the way round that the foot of the brace has on the bench, by the hand', async () => {
    for (const [start, rightwards] of [
      ['01', false],
      ['10', true],
    ] as const) {
      const [sheet] = await printed(fullSizeOf(gateCard(start), ['bevels']))
      const [end, apex] = strong(sheet as Printed).find((points) => points.length === 3) as [Point, Point]
      expect(end[0] > apex[0]).toBe(rightwards)
    }
  })
})

describe('the notch, measured in the dots', () => {
  it.each(['06', '08', '15', '21', '24'])(
    '%s: faces within 0.2 mm and 0.05° of the design',
    async (start) => {
      const { spec, design } = gateCard(start)
      const sheets = await printed(titled(fullSizeOf(gateCard(start), ['notch']), 'Notch'))
      const braces = design.leaves.flatMap(({ braces }) => braces)
      const measured = sheets.map((sheet) => {
        const outline = strong(sheet).find((points) => points.length === 5) as [
          Point,
          Point,
          Point,
          Point,
          Point,
        ]
        const [near, shoulder, slope, far] = outline
          .slice(1)
          .map((to, i) => lineNear(sheet.raster, outline[i] as Point, to)) as [Found, Found, Found, Found]
        const [long, tip, toe] = [crossing(near, shoulder), crossing(shoulder, slope), crossing(slope, far)]
        return {
          shoulder: apart(long, tip),
          slope: apart(tip, toe),
          depth: tip[1] - (long[1] + toe[1]) / 2,
          contact: apart(long, toe),
          angle: angleOf(near, {
            at: long,
            along: [(toe[0] - long[0]) / apart(long, toe), (toe[1] - long[1]) / apart(long, toe)],
          }),
          square: angleOf(near, shoulder),
        }
      })
      expect(spec.braces?.ends).toBe('notched')
      for (const { notch, contact, angle } of braces) {
        const found = measured.find((one) => Math.abs(one.angle - angle) < 0.05)
        expect(found).toBeDefined()
        expect(Math.abs((found?.shoulder ?? 0) - (notch?.shoulder ?? NaN))).toBeLessThan(0.2)
        expect(Math.abs((found?.slope ?? 0) - (notch?.slope ?? NaN))).toBeLessThan(0.2)
        expect(Math.abs((found?.depth ?? 0) - (notch?.depth ?? NaN))).toBeLessThan(0.2)
        expect(Math.abs((found?.contact ?? 0) - contact)).toBeLessThan(0.2)
        expect(Math.abs((found?.square ?? 0) - 90)).toBeLessThan(0.1)
      }
    },
  )
})
