import type { Drawing } from '../drawing/drawing.ts'
import { fittingScale, sizeAt } from '../drawing/fitScale.ts'
import type { Block } from './flow.ts'
import type { PageMark } from './page.ts'

/** One drawing in a box as a block, at the largest scale that fits; as high as it comes out. mm. */
export function viewBlock(drawing: Drawing, box: { width: number; height: number }): Block {
  const scale = fittingScale(drawing, box)
  const { height } = sizeAt(drawing, scale)
  return {
    height,
    above: 6,
    marks: (x, y) => [{ kind: 'drawing', x, y, width: box.width, height, scale, drawing }],
  }
}

/** Space between two drawings side by side, mm. */
const between = 4

/** Drawings in their order that still find room in a row of this width at the scale each has, greedily. */
function rowsOf(views: { drawing: Drawing; width: number; height: number; scale: number }[], width: number) {
  const rows: (typeof views)[] = []
  for (const view of views) {
    const row = rows.at(-1)
    const used = row?.reduce((sum, one) => sum + one.width + between, 0) ?? Infinity
    if (row && used + view.width <= width + 1e-9) row.push(view)
    else rows.push([view])
  }
  return rows
}

/**
 * Drawings side by side, as many in a row as there is room for, each at the largest scale that a row of this height allows; what is left of
 * the width is shared out between them. What isn't there is passed over.
 */
export function viewRows(
  drawings: (Drawing | undefined)[],
  room: { width: number; height: number; across?: number },
): Block[] {
  const there = drawings.filter((drawing) => drawing !== undefined)
  const most =
    room.across === undefined ? room.width : (room.width - (room.across - 1) * between) / room.across
  const views = there.map((drawing) => {
    const scale = fittingScale(drawing, { width: most, height: room.height })
    return { drawing, scale, ...sizeAt(drawing, scale) }
  })
  return rowsOf(views, room.width).map((row): Block => {
    const spare = room.width - row.reduce((sum, { width }) => sum + width, 0) - (row.length - 1) * between
    const more = spare / row.length
    return {
      height: Math.max(...row.map(({ height }) => height)),
      above: 5,
      marks: (x, y) => {
        const marks: PageMark[] = []
        let at = x
        for (const { drawing, scale, width, height } of row) {
          marks.push({ kind: 'drawing', x: at, y, width: width + more, height, scale, drawing })
          at += width + more + between
        }
        return marks
      },
    }
  })
}
