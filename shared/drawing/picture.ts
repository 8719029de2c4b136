import type { Point } from '../geometry/point.ts'
import type { LengthUnit } from '../job/job.ts'
import type { Drawing } from './drawing.ts'
import { fillingScale, sizeAt } from './fitScale.ts'
import { layOut, noteSpacing } from './layOut.ts'
import { textSizes } from './pens.ts'
import type { Primitive } from './primitives.ts'
import { scaleBar } from './scaleBar.ts'
import { textWidth } from './textWidth.ts'

/** What a picture shows: its width as printed, mm, and whether sizes and names stand in it. */
export type PictureWish = { width: number; sizes: boolean; unit: LengthUnit }

/** Views in rows, laid out on a sheet of their own, mm. */
export type Picture = { width: number; height: number; primitives: Primitive[]; description: string }

/** Air round the picture, between two views, and the room of the scale bar, mm. */
const [air, gap, barRoom] = [5, 8, 7]
/** The least a view needs across, mm: its sizes stand beside it on both sides. */
const [leastSized, leastPlain] = [130, 45]

const saysSomething = new Set(['chain', 'dimension', 'angle', 'text', 'badge', 'arrow'])

/** The gate alone: its lines and tints, nothing written but what the view is called ('Back', without 'as it lies on the bench'). */
const withoutSizes = (drawing: Drawing): Drawing => ({
  ...drawing,
  title: drawing.title.split(',')[0] ?? '',
  notes: [],
  margin: { left: 1, right: 1, top: 9, bottom: 1 },
  marks: drawing.marks.filter(
    (mark) => !saysSomething.has(mark.kind) && !('pen' in mark && mark.pen === 'centre'),
  ),
})

/** Feet in one line: the same room over and under each view, its notes counted in. */
function onOneLine(drawings: readonly Drawing[]): Drawing[] {
  const under = (drawing: Drawing) => drawing.margin.bottom + drawing.notes.length * noteSpacing
  const top = Math.max(...drawings.map(({ margin }) => margin.top))
  const bottom = Math.max(...drawings.map(under))
  return drawings.map((drawing) => ({
    ...drawing,
    margin: { ...drawing.margin, top, bottom: bottom - drawing.notes.length * noteSpacing },
  }))
}

/** Views of the same thing from the same side or its other have the same size, and are drawn at one scale. */
const sizeKey = ({ extent }: Drawing): string =>
  [extent.maxX - extent.minX, extent.maxY - extent.minY].map(Math.round).join(' × ')

function scalesOf(drawings: readonly Drawing[], cell: { width: number; height: number }): number[] {
  const coarsest = new Map<string, number>()
  for (const drawing of drawings) {
    const key = sizeKey(drawing)
    coarsest.set(key, Math.max(fillingScale(drawing, cell), coarsest.get(key) ?? 0))
  }
  return drawings.map((drawing) => coarsest.get(sizeKey(drawing)) ?? 1)
}

function moved(primitive: Primitive, [dx, dy]: Point): Primitive {
  const shift = ([x, y]: Point): Point => [x + dx, y + dy]
  switch (primitive.kind) {
    case 'path':
      return { ...primitive, points: primitive.points.map(shift) }
    case 'strokes':
      return { ...primitive, lines: primitive.lines.map(([a, b]): [Point, Point] => [shift(a), shift(b)]) }
    case 'circle':
      return { ...primitive, centre: shift(primitive.centre) }
    case 'text':
      return { ...primitive, x: primitive.x + dx, y: primitive.y + dy }
  }
}

const titleWidth = ({ title }: Drawing): number => textWidth(title, textSizes.title, 'semibold')

type Row = { drawings: Drawing[]; scales: number[]; cell: number; y: number }

/** A row of views under each other's tops, and how high it is. */
function layRow({ drawings, scales, cell, y }: Row, { sizes, unit }: PictureWish) {
  const height = Math.max(...drawings.map((drawing, place) => sizeAt(drawing, scales[place] ?? 1).height))
  const primitives = drawings.flatMap((drawing, place) => {
    const scale = scales[place] ?? 1
    const at: Point = [air + place * (cell + gap), y]
    const laid = layOut(drawing, { width: cell, height, scale })
    const bar = sizes ? scaleBar(scale, unit, { x: 0, y: height + barRoom - 2 }) : []
    return [...laid.primitives, ...bar].map((primitive) => moved(primitive, at))
  })
  return { primitives, height: height + (sizes ? barRoom : 0) }
}

/**
 * One picture of some views of a gate, just as wide as asked: side by side where there is room for their sizes, else under each other. Views of the
 * same size are drawn at one scale; with sizes a scale bar stands under each. Throws RangeError without a view.
 */
export function pictureOf(views: readonly Drawing[], wish: PictureWish): Picture {
  if (views.length === 0) throw new RangeError('a picture shows at least one view')
  const { width, sizes } = wish
  const inside = width - 2 * air
  const drawings = onOneLine(sizes ? views : views.map(withoutSizes))
  const least = Math.max(sizes ? leastSized : leastPlain, ...drawings.map(titleWidth))
  const fitting = Math.floor((inside + gap) / (least + gap))
  const columns = Math.max(1, Math.min(views.length, fitting))
  const cell = (inside - gap * (columns - 1)) / columns
  const tall = columns === 1 && views.length > 1 ? 0.9 : Math.SQRT2
  const scales = scalesOf(drawings, { width: cell, height: cell * tall })
  const primitives: Primitive[] = []
  let y = air
  for (let from = 0; from < drawings.length; from += columns) {
    const [own, at] = [drawings.slice(from, from + columns), scales.slice(from, from + columns)]
    const row = layRow({ drawings: own, scales: at, cell, y }, wish)
    for (const primitive of row.primitives) primitives.push(primitive)
    y += row.height + gap
  }
  const description = views.map((view) => view.description).join('. ')
  return { width, height: y - gap + air, primitives, description }
}
