import type { Drawing } from '../drawing/drawing.ts'
import { fittingScale, sizeAt } from '../drawing/fitScale.ts'
import { textSizes } from '../drawing/pens.ts'
import { textWidth } from '../drawing/textWidth.ts'
import { sideBySide, stacked, type Block } from './flow.ts'
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

/** Space between two columns, mm. */
const between = 4

/** A drawing that may stand in a row, and the most paper that it may take there, mm; headroom is kept free under its title. Without a drawing, or where it would be too small to read, it is passed over. */
export type RowView = { drawing: Drawing | undefined; width: number; height: number; headroom?: number }

type Placed = { drawing: Drawing; scale: number; width: number; height: number }

/** Room that a drawing's title with its scale and its notes take, mm: they may reach further than the drawing itself. */
const wordsWidth = ({ title, notes }: Drawing): number =>
  Math.max(
    textWidth(title, textSizes.title, 'semibold') + 3 + textWidth('1 : 12.5', textSizes.normal, 'regular'),
    ...notes.map((note) => textWidth(note, textSizes.normal, 'regular')),
  ) + 1

/** The coarsest scale at which a drawing still says more than its words. */
export const coarsest = 50

function placed(views: RowView[]): Placed[] {
  return views.flatMap(({ drawing, headroom = 0, ...box }) => {
    if (!drawing) return []
    const scale = fittingScale(drawing, box)
    if (scale > coarsest) return []
    const { width, height } = sizeAt(drawing, scale)
    return [{ drawing, scale, width: Math.max(width, wordsWidth(drawing)), height: height + headroom }]
  })
}

function rowsOf(views: Placed[], width: number): Placed[][] {
  const rows: Placed[][] = []
  for (const view of views) {
    const row = rows.at(-1)
    const used = row?.reduce((sum, one) => sum + one.width + between, 0) ?? Infinity
    if (row && used + view.width <= width + 1e-9) row.push(view)
    else rows.push([view])
  }
  return rows
}

/** Drawings side by side, as many in a row as there is room for, in their order; what is left of the width is shared out between them. */
export const viewRows = (views: RowView[], width: number): Block[] =>
  rowsOf(placed(views), width).map((row): Block => {
    const spare = width - row.reduce((sum, view) => sum + view.width, 0) - (row.length - 1) * between
    const more = spare / row.length
    return {
      height: Math.max(...row.map(({ height }) => height)),
      above: 5,
      marks: (x, y) => {
        const marks: PageMark[] = []
        let at = x
        for (const view of row) {
          marks.push({ kind: 'drawing', x: at, y, ...view, width: view.width + more })
          at += view.width + more + between
        }
        return marks
      },
    }
  })

/** Most height that blocks beside drawings may have: they stay in one piece, and a page must hold them. mm. */
const mostBeside = 135

type Beside = { views: RowView[]; width: number }

/** The width that is left beside drawings, mm. */
const leftOf = (there: Placed[], width: number): number =>
  width - Math.max(...there.map((view) => view.width)) - between

/** Whether blocks are low enough to have drawings standing beside them. */
export function standsBeside(lists: (width: number) => Block[], { views, width }: Beside): boolean {
  const there = placed(views)
  return there.length > 0 && stacked(lists(leftOf(there, width))).height <= mostBeside
}

/**
 * Blocks with drawings standing at their right, one under another. lists makes the blocks for a width. Where they come out too high to stay
 * in one piece they take the whole width, and the drawings follow in rows.
 */
export function besideViews(lists: (width: number) => Block[], { views, width }: Beside): Block[] {
  const there = placed(views)
  if (there.length === 0) return lists(width)
  if (!standsBeside(lists, { views, width })) return [...lists(width), ...viewRows(views, width)]
  const left = leftOf(there, width)
  const drawn = there.map(({ drawing, scale, height }): Block => ({
    height,
    above: 4,
    marks: (x, y) => [{ kind: 'drawing', x, y, width: width - left - between, height, scale, drawing }],
  }))
  return [sideBySide(stacked(lists(left)), stacked(drawn), left + between)]
}
