import * as v from 'valibot'
import { type Page, type PageMark } from '../page.ts'

/**
 * A printer known to be out: what a 100 mm line really measures when it is printed at actual size, mm; across the sheet (its short way) and along
 * it (its long way, as it runs through the printer).
 */
export type Printer = { across: number; along: number }

/** A printer that is true, or whose error nobody has measured yet. */
export const truePrinter: Printer = { across: 100, along: 100 }

/** What a 100 mm line may measure, mm. Further out, the print was scaled to fit the sheet and not by the printer. */
export const printerLimits = { least: 97, most: 103 }

const accepted = `what the 100 mm line measures, from ${printerLimits.least} to ${printerLimits.most} mm`
const measured = v.pipe(
  v.number(accepted),
  v.finite(accepted),
  v.minValue(printerLimits.least, accepted),
  v.maxValue(printerLimits.most, accepted),
)

/** Reads a printer's error as it was measured. */
export const printerShape = v.strictObject({ across: measured, along: measured })

export const isTrue = ({ across, along }: Printer): boolean => across === 100 && along === 100

/** By how much a length is drawn longer so that the printer brings it out right. A printer whose 100 mm comes out at 99.6: 1.004016. */
export const stretch = (measuredLine: number): number => 100 / measuredLine

/** About what, and by how much, everything on a page is stretched. */
export type Stretch = { centre: readonly [number, number]; x: number; y: number }

/** A page laid out in true mm as it is sent to a printer that is out: every place moved, type left at its size. */
export function stretched(page: Page, { centre, x, y }: Stretch): Page {
  if (x === 1 && y === 1) return page
  const over = (at: number) => centre[0] + (at - centre[0]) * x
  const down = (at: number) => centre[1] + (at - centre[1]) * y
  const moved = (mark: PageMark): PageMark => {
    switch (mark.kind) {
      case 'line':
        return { ...mark, x1: over(mark.x1), x2: over(mark.x2), y1: down(mark.y1), y2: down(mark.y2) }
      case 'path':
        return { ...mark, points: mark.points.map(([px, py]) => [over(px), down(py)] as const) }
      case 'text':
        return { ...mark, x: over(mark.x), y: down(mark.y) }
      case 'box':
      case 'drawing':
      case 'picture':
        return {
          ...mark,
          x: over(mark.x),
          y: down(mark.y),
          width: mark.width * x,
          height: mark.height * y,
        }
    }
  }
  return { ...page, marks: page.marks.map(moved) }
}
