import type { Point } from '../geometry/point.ts'
import type { Arc, Drawing, Line, Mark, Pair, Polygon, Text } from './drawing.ts'
import { layArrow, layBadge, laySymbol } from './laySymbols.ts'
import { hatchLines } from './hatch.ts'
import { layChain, type ToPaper } from './layChain.ts'
import { layAngle, layDimension, patch } from './laySlope.ts'
import { capHeight, textSizes } from './pens.ts'
import type { LaidOut, Primitive } from './primitives.ts'
import { textWidth } from './textWidth.ts'

/** Line spacing of the notes under a drawing, paper mm. */
export const noteSpacing = 5

/** A box of paper to lay a drawing out on, mm; scale 10 is 1 : 10; caption is set after the title ('1 : 10'). */
export type Sheet = { width: number; height: number; scale: number; caption?: string }

/**
 * Turns a drawing into lines, circles and words on a box of paper (mm, origin at the top left, y down): the one place where
 * dimensions, hatching, symbols and words get their places, shared by every painter. The object is centred in what the margins leave.
 */
export function layOut(drawing: Drawing, sheet: Sheet): LaidOut {
  const toPaper = paperOf(drawing, sheet)
  const page = { toPaper, scale: sheet.scale, width: sheet.width, height: sheet.height }
  return {
    width: sheet.width,
    height: sheet.height,
    scale: sheet.scale,
    primitives: [...drawing.marks.flatMap((mark) => layMark(mark, page)), ...surroundings(drawing, sheet)],
  }
}

/** Where each place of a drawing (mm) comes on its box of paper (mm from the top left): the object centred in what the margins leave. */
export function paperOf({ extent, margin, notes }: Drawing, sheet: Sheet): ToPaper {
  const bottom = margin.bottom + notes.length * noteSpacing
  const [width, height] = [extent.maxX - extent.minX, extent.maxY - extent.minY].map(
    (size) => size / sheet.scale,
  ) as [number, number]
  const left = margin.left + (sheet.width - margin.left - margin.right - width) / 2
  const top = margin.top + (sheet.height - margin.top - bottom - height) / 2
  return ([x, y]) => [left + (x - extent.minX) / sheet.scale, top + (extent.maxY - y) / sheet.scale]
}

type Page = { toPaper: ToPaper; scale: number; width: number; height: number }

const openPath = (points: Point[], { pen, part }: Pick<Line, 'pen' | 'part'>): Primitive => ({
  kind: 'path',
  points,
  closed: false,
  fill: 'none',
  pen,
  part,
})

function layMark(mark: Mark, page: Page): Primitive[] {
  const { toPaper, scale } = page
  switch (mark.kind) {
    case 'line':
      return layLine(mark, toPaper)
    case 'polyline':
      return [openPath(mark.points.map(toPaper), mark)]
    case 'polygon':
      return layPolygon(mark, toPaper)
    case 'pair':
      return layPair(mark, page)
    case 'arc':
      return [openPath(arcPoints(mark).map(toPaper), mark)]
    case 'symbol':
      return laySymbol(mark, toPaper)
    case 'arrow':
      return layArrow(mark, toPaper)
    case 'chain':
      return layChain(mark, toPaper, page)
    case 'dimension':
      return layDimension(mark, toPaper, scale)
    case 'angle':
      return layAngle(mark, toPaper, scale)
    case 'text':
      return layText(mark, toPaper, scale)
    case 'badge':
      return layBadge(mark, toPaper)
  }
}

function layLine(mark: Line, toPaper: ToPaper): Primitive[] {
  const [a, b] = [toPaper(mark.from), toPaper(mark.to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
  const [before, after] = mark.extend ?? [0, 0]
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const shift = mark.dx ?? 0
  const points: Point[] = [
    [a[0] - ux * before + shift, a[1] - uy * before],
    [b[0] + ux * after + shift, b[1] + uy * after],
  ]
  return [openPath(points, mark)]
}

function layPolygon(mark: Polygon, toPaper: ToPaper): Primitive[] {
  const points = mark.points.map(toPaper)
  const { part, fill, pen } = mark
  const shape: Primitive = { kind: 'path', points, closed: true, fill, pen, part }
  if (!mark.hatch) return [shape]
  const lines = hatchLines(points, mark.hatch.angle, mark.hatch.spacing)
  return [
    { ...shape, pen: undefined },
    { kind: 'strokes', lines, pen: 'hatch', part },
    { ...shape, fill: 'none' },
  ]
}

function layPair(mark: Pair, page: Page): Primitive[] {
  const [a, b] = [page.toPaper(mark.from), page.toPaper(mark.to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
  const half = Math.max(mark.apart / page.scale, mark.least) / 2
  const [nx, ny] = [((b[1] - a[1]) / length) * half, ((a[0] - b[0]) / length) * half]
  const shifted = (side: number): [Point, Point] => [
    [a[0] + side * nx, a[1] + side * ny],
    [b[0] + side * nx, b[1] + side * ny],
  ]
  return [{ kind: 'strokes', lines: [shifted(-1), shifted(1)], pen: mark.pen, part: mark.part }]
}

function arcPoints(mark: Arc): Point[] {
  const steps = Math.max(4, Math.ceil(Math.abs(mark.end - mark.start) / 4))
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const turn = ((mark.start + ((mark.end - mark.start) * i) / steps) * Math.PI) / 180
    return [mark.centre[0] + mark.radius * Math.cos(turn), mark.centre[1] + mark.radius * Math.sin(turn)]
  })
}

function layText(mark: Text, toPaper: ToPaper, scale: number): Primitive[] {
  const at = toPaper(mark.at)
  const [x, y] = [at[0] + (mark.dx ?? 0), at[1] - (mark.dy ?? 0)]
  const size = textSizes[mark.size]
  const weight = mark.weight ?? 'regular'
  const angle = mark.angle ?? 0
  const breadth = angle === 0 ? textWidth(mark.text, size, weight) : capHeight * size
  if (mark.height && mark.height.model / scale < mark.height.least) return []
  if (mark.within !== undefined && breadth + 1.4 > mark.within / scale) return []
  const words: Primitive = {
    kind: 'text',
    x,
    y,
    text: mark.text,
    size,
    weight,
    anchor: mark.anchor,
    angle,
    tone: 'ink',
    part: mark.part,
  }
  if (mark.over === undefined) return [words]
  const width = textWidth(mark.text, size, weight)
  const shift = { start: 0.5, middle: 0, end: -0.5 }[mark.anchor] * width
  const turn = (-angle * Math.PI) / 180
  const rise = (capHeight * size) / 2
  const centre: Point = [
    x + shift * Math.cos(turn) + rise * Math.sin(turn),
    y + shift * Math.sin(turn) - rise * Math.cos(turn),
  ]
  return [patch({ centre, width, size, angle }, mark.over), words]
}

/** The title over the drawing with its caption, the notes under it. */
function surroundings(drawing: Drawing, sheet: Sheet): Primitive[] {
  const line = ([x, y]: Point, text: string, weight: 'regular' | 'semibold'): Primitive => ({
    kind: 'text',
    x,
    y,
    text,
    size: weight === 'semibold' ? textSizes.title : textSizes.normal,
    weight,
    anchor: 'start',
    angle: 0,
    tone: 'ink',
  })
  const out: Primitive[] = []
  if (drawing.title !== '') out.push(line([0, 4.8], drawing.title, 'semibold'))
  if (sheet.caption !== undefined)
    out.push(line([textWidth(drawing.title, textSizes.title, 'semibold') + 3, 4.8], sheet.caption, 'regular'))
  const lowest = sheet.height - 1.2
  drawing.notes.forEach((note, i) =>
    out.push(line([0, lowest - (drawing.notes.length - 1 - i) * noteSpacing], note, 'regular')),
  )
  return out
}
