import type { LengthUnit } from '../job/job.ts'
import type { Drawing } from './drawing.ts'
import { sizeAt } from './fitScale.ts'
import { layOut, noteSpacing } from './layOut.ts'
import { textSizes } from './pens.ts'
import type { Point } from '../geometry/point.ts'
import type { Primitive } from './primitives.ts'
import { scaleBar } from './scaleBar.ts'
import { textWidth } from './textWidth.ts'

/** What a picture shows: its width as printed, mm, and whether sizes and names stand in it. */
export type PictureWish = { width: number; sizes: boolean; unit: LengthUnit }

/** Views side by side at one scale, laid out on a sheet of their own, mm. */
export type Picture = {
  width: number
  height: number
  scale: number
  primitives: Primitive[]
  description: string
}

/** Air round the picture, between two views, and the room of the scale bar, mm. */
const [air, gap, barRoom] = [5, 8, 7]
/** No taller than a sheet of A4 stands beside its width. */
const tallest = Math.SQRT2

const saysSomething = new Set(['chain', 'dimension', 'angle', 'text', 'badge', 'arrow'])

/** The gate alone: its lines and tints, nothing written but the view's title. */
const withoutSizes = (drawing: Drawing): Drawing => ({
  ...drawing,
  notes: [],
  margin: { left: 1, right: 1, top: 9, bottom: 1 },
  marks: drawing.marks.filter(({ kind }) => !saysSomething.has(kind)),
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

const titleWidth = ({ title }: Drawing): number => textWidth(title, textSizes.title, 'semibold') + 2
const widthAt = (drawing: Drawing, scale: number): number =>
  Math.max(sizeAt(drawing, scale).width, titleWidth(drawing))

/** The finest scale at which the views stand side by side in a width; widths only grow as the scale gets finer, so halving finds it. */
function scaleFor(drawings: readonly Drawing[], room: { width: number; height: number }): number {
  const fits = (scale: number): boolean =>
    drawings.reduce((sum, drawing) => sum + widthAt(drawing, scale), gap * (drawings.length - 1)) <=
      room.width && drawings.every((drawing) => sizeAt(drawing, scale).height <= room.height)
  let [fine, coarse] = [0.5, 500]
  if (fits(fine)) return fine
  for (let step = 0; step < 40; step += 1) {
    const middle = Math.sqrt(fine * coarse)
    if (fits(middle)) coarse = middle
    else fine = middle
  }
  return coarse
}

function moved(primitive: Primitive, dx: number, dy: number): Primitive {
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

/**
 * One picture of some views of a gate, side by side at one scale, just as wide as asked and no taller than √2 times that; with sizes a scale bar
 * stands under them. Where the words leave too little room, the drawing gets small, never the words. Throws RangeError without a view.
 */
export function pictureOf(views: readonly Drawing[], { width, sizes, unit }: PictureWish): Picture {
  if (views.length === 0) throw new RangeError('a picture shows at least one view')
  const drawings = onOneLine(sizes ? views : views.map(withoutSizes))
  const foot = sizes ? barRoom : 0
  const scale = scaleFor(drawings, { width: width - 2 * air, height: width * tallest - 2 * air - foot })
  const widths = drawings.map((drawing) => widthAt(drawing, scale))
  const row = Math.max(...drawings.map((drawing) => sizeAt(drawing, scale).height))
  const taken = widths.reduce((sum, one) => sum + one, gap * (widths.length - 1))
  let x = (width - taken) / 2
  const primitives = drawings.flatMap((drawing, place) => {
    const own = widths[place] ?? 0
    const laid = layOut(drawing, { width: own, height: row, scale })
    const at = x
    x += own + gap
    return laid.primitives.map((primitive) => moved(primitive, at, air))
  })
  const height = row + 2 * air + foot
  const bar = sizes ? scaleBar(scale, unit, { x: air, y: height - air }) : []
  return {
    ...{ width, height, scale },
    primitives: [...primitives, ...bar],
    description: views.map(({ description }) => description).join(' '),
  }
}
