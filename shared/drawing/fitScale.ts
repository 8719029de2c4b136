import type { Drawing } from './drawing.ts'
import { noteSpacing } from './layOut.ts'

/** Scales a drawing on paper may have: those of ISO 5455 with the steps between that a folding rule can still be read against. */
export const paperScales = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 8, 10, 12.5, 15, 17.5, 20, 25, 30, 40, 50]

/** The box of paper a drawing takes at a scale, mm. */
export function sizeAt(drawing: Drawing, scale: number): { width: number; height: number } {
  const { extent, margin } = drawing
  return {
    width: (extent.maxX - extent.minX) / scale + margin.left + margin.right,
    height:
      (extent.maxY - extent.minY) / scale + margin.top + margin.bottom + drawing.notes.length * noteSpacing,
  }
}

/** The scale that just fills a box, for the screen: any ratio, never finer than 1 : 0.5. */
export function fillingScale(drawing: Drawing, box: { width: number; height: number }): number {
  const { extent } = drawing
  const none = sizeAt(drawing, Infinity)
  const free = [Math.max(box.width - none.width, 1), Math.max(box.height - none.height, 1)] as const
  return Math.max(0.5, (extent.maxX - extent.minX) / free[0], (extent.maxY - extent.minY) / free[1])
}

/** The largest of the paper scales at which a drawing fits a box, mm; the smallest there is when none fits. */
export function fittingScale(drawing: Drawing, box: { width: number; height: number }): number {
  const fits = paperScales.find((scale) => {
    const size = sizeAt(drawing, scale)
    return size.width <= box.width + 1e-9 && size.height <= box.height + 1e-9
  })
  return fits ?? Math.max(paperScales.at(-1) ?? 50, Math.ceil(fillingScale(drawing, box)))
}
